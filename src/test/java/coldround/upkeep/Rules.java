package coldround.upkeep;

import coldround.refrigerant.LeakInspections;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.UnitCategories;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import java.nio.file.Path;

/** The packaged rule tables, read once for the tests of this package. */
final class Rules {

  static final Upkeep UPKEEP = load(null);

  private Rules() {}

  /** The tables with those of a folder in their place. */
  static Upkeep load(Path override) {
    RuleTables tables = new RuleTables("scoring", override);
    Upkeep upkeep =
        Upkeep.load(
            tables,
            ScoringRules.load(tables),
            Refrigerants.load(tables),
            LeakInspections.load(tables),
            UnitCategories.load(tables));
    tables.check();
    return upkeep;
  }
}

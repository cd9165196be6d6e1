package coldround.upkeep;

import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import java.nio.file.Path;

/** The packaged rule tables, read once for the tests of this package. */
final class Rules {

  static final Upkeep UPKEEP = load(null);
  static final Scoring SCORING = scoring();

  private Rules() {}

  /** The tables with those of a folder in their place. */
  static Upkeep load(Path override) {
    RuleTables tables = new RuleTables("scoring", override);
    RefrigerantRules gases = RefrigerantRules.load(tables);
    Upkeep upkeep =
        Upkeep.load(
            tables,
            ScoringRules.load(tables),
            gases.refrigerants(),
            gases.leakInspections(),
            gases.categories());
    tables.check();
    return upkeep;
  }

  private static Scoring scoring() {
    RuleTables tables = new RuleTables("scoring", null);
    Scoring scoring = new Scoring(ScoringRules.load(tables), RefrigerantRules.load(tables));
    tables.check();
    return scoring;
  }
}

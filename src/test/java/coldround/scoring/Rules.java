package coldround.scoring;

import coldround.refrigerant.RefrigerantRules;
import coldround.table.RuleTables;

/** The packaged rule tables, read once for the tests of scoring. */
final class Rules {

  static final ScoringRules SCORING;
  static final RefrigerantRules GASES;
  static final Scoring SCORER;

  static {
    RuleTables tables = new RuleTables("scoring", null);
    SCORING = ScoringRules.load(tables);
    GASES = RefrigerantRules.load(tables);
    tables.check();
    SCORER = new Scoring(SCORING, GASES);
  }

  private Rules() {}
}

package coldround.scoring;

import coldround.table.RuleTables;

/** All rule tables that scoring reads, checked against each other. */
public record ScoringRules(
    Weights weights,
    Limits limits,
    Kinds kinds,
    LifeClasses lives,
    GradeShares grades,
    PartGrades parts,
    FoulingPriors fouling,
    FaultPriors faultPriors,
    FailureModes modes,
    DesignAmbients ambients,
    ReadingHabits habits,
    LeakMethods leakMethods,
    Cautions cautions,
    RoofChecks roofChecks) {

  /** Reads them; problems are left with the tables. */
  public static ScoringRules load(RuleTables tables) {
    ScoringRules rules =
        new ScoringRules(
            Weights.load(tables),
            Limits.load(tables),
            Kinds.load(tables),
            LifeClasses.load(tables),
            GradeShares.load(tables),
            PartGrades.load(tables),
            FoulingPriors.load(tables),
            FaultPriors.load(tables),
            FailureModes.load(tables),
            DesignAmbients.load(tables),
            ReadingHabits.load(tables),
            LeakMethods.load(tables),
            Cautions.load(tables),
            RoofChecks.load(tables));
    rules.kinds.all().forEach(kind -> rules.check(tables, kind));
    return rules;
  }

  private void check(RuleTables tables, KindRule kind) {
    check(tables, lives.has(kind.lifeClass()), kind, "life_class", LifeClasses.FILE);
    check(tables, faultPriors.has(kind.faultClass()), kind, "fault_class", FaultPriors.FILE);
    check(
        tables, ambients.has(kind.condenserPlace()), kind, "condenser_place", DesignAmbients.FILE);
  }

  private static void check(
      RuleTables tables, boolean there, KindRule kind, String column, String file) {
    if (!there) {
      String message = kind.kind() + " names a row that " + file + " does not have";
      tables.problem(Kinds.FILE, 0, column, message);
    }
  }

  /** The same rules under other weights. */
  public ScoringRules with(Weights other) {
    return with(other, faultPriors);
  }

  /** The same rules with priors estimated from the fleet. */
  public ScoringRules with(FaultPriors other) {
    return with(weights, other);
  }

  private ScoringRules with(Weights itsWeights, FaultPriors itsPriors) {
    return new ScoringRules(
        itsWeights,
        limits,
        kinds,
        lives,
        grades,
        parts,
        fouling,
        itsPriors,
        modes,
        ambients,
        habits,
        leakMethods,
        cautions,
        roofChecks);
  }
}

package coldround.scoring;

import coldround.fleet.UnitHistory;
import coldround.refrigerant.RefrigerantRules;
import coldround.scoring.statistics.FaultTally;
import java.time.LocalDate;
import java.util.List;

/**
 * Scores units under one set of rules. Safe for many threads; the same history, rules and day give
 * the same result to the last digit, in whatever order units are scored.
 */
public final class Scoring {

  private final ScoringRules rules;
  private final RefrigerantRules gases;
  private final EvidenceGathering gathering;
  private final AgeRule ageRule;
  private final FaultRule faultRule;
  private final Electrics electrics;
  private final ColdSide coldSide;
  private final CoilRule coilRule;
  private final TripRule tripRule;
  private final Leaks leaks;
  private final SupplyRule supplyRule;
  private final AgeFactor ageFactor;
  private final RefrigerantFactor refrigerantFactor;
  private final CoilFactor coilFactor;
  private final RepeatFaultsFactor repeatFaultsFactor;
  private final Completeness completeness;
  private final Situations situations;

  public Scoring(ScoringRules rules, RefrigerantRules gases) {
    this.rules = rules;
    this.gases = gases;
    Splits splits = new Splits(rules);
    this.gathering = new EvidenceGathering(rules, gases.refrigerants());
    this.ageRule = new AgeRule(rules);
    this.faultRule = new FaultRule(rules);
    this.electrics = new Electrics(rules);
    this.coldSide = new ColdSide(rules);
    this.coilRule = new CoilRule(rules, splits);
    this.tripRule = new TripRule(rules, splits);
    this.leaks = new Leaks(rules, gases);
    this.supplyRule = new SupplyRule(rules, gases, splits);
    this.ageFactor = new AgeFactor(rules);
    this.refrigerantFactor = new RefrigerantFactor(rules);
    this.coilFactor = new CoilFactor(rules);
    this.repeatFaultsFactor = new RepeatFaultsFactor(rules, faultRule);
    this.completeness = new Completeness(rules);
    this.situations = new Situations(rules.cautions());
  }

  /** The same scoring under other weights. */
  public Scoring with(Weights weights) {
    return new Scoring(rules.with(weights), gases);
  }

  /**
   * The unit as it could be known at the end of that day.
   *
   * @param history all that is on record, later things included
   */
  public Assessment assess(UnitHistory history, LocalDate asOf) {
    Evidence evidence = gathering.of(history, asOf);
    AgeState age = ageRule.state(evidence);
    SupplyState supply = supplyRule.state(evidence, age);
    FaultState faults = faultRule.state(evidence);
    ElectricalState electrical = electrics.state(evidence);
    EvaporatorState evaporator = coldSide.state(evidence);
    CoilState coil = coilRule.state(evidence, electrical, evaporator);
    TripState trip = tripRule.state(evidence, coil);
    LeakState leak = leaks.state(evidence, faults);
    List<FactorScore> factors =
        List.of(
            ageFactor.score(evidence, age),
            refrigerantFactor.score(supply, leak),
            coilFactor.score(evidence, coil, evaporator),
            repeatFaultsFactor.score(evidence, faults));
    Condition condition =
        Condition.of(
            asOf,
            completeness.of(evidence, age, supply, coil, faults),
            factors,
            Diagnosis.of(evidence, coil, trip, faults, electrical, leak),
            situations.cautions(evidence));
    return new Assessment(
        evidence.history(),
        asOf,
        condition,
        age,
        supply,
        coil,
        trip,
        faults,
        electrical,
        evaporator,
        leak);
  }

  /** What the fault record of a unit adds to the estimate of its class's prior. */
  public FaultTally tally(UnitHistory history, LocalDate asOf) {
    FaultState faults = faultRule.state(gathering.of(history, asOf));
    return faults.known()
        ? FaultTally.of(
            faults.events().size(), Math.round(faults.observedYears() * FaultTally.DAYS_A_YEAR))
        : FaultTally.NONE;
  }

  /** Class of the unit in fault-priors.csv, by which tallies are added up. */
  public String faultClass(UnitHistory history) {
    return gathering.kind(history).faultClass();
  }
}

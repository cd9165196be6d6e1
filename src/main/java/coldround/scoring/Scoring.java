package coldround.scoring;

import coldround.fleet.UnitHistory;
import coldround.refrigerant.RefrigerantRules;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Scores units under one set of rules. Safe for many threads; the same history, rules, priors and
 * day give the same result to the last digit, in whatever order units are scored.
 */
public final class Scoring {

  private final ScoringRules rules;
  private final RefrigerantRules gases;
  private final EvidenceGathering gathering;
  private final AgeRule ageRule;
  private final Electrics electrics;
  private final ColdSide coldSide;
  private final CoilRule coilRule;
  private final TripRule tripRule;
  private final Leaks leaks;
  private final SupplyRule supplyRule;
  private final AgeFactor ageFactor;
  private final RefrigerantFactor refrigerantFactor;
  private final CoilFactor coilFactor;
  private final Completeness completeness;
  // the one thing that changes: priors are estimated anew as the fleet goes on
  private volatile Faults faults;
  private final Situations situations;

  public Scoring(ScoringRules rules, RefrigerantRules gases) {
    this.rules = rules;
    this.gases = gases;
    Splits splits = new Splits(rules);
    this.gathering = new EvidenceGathering(rules, gases.refrigerants());
    this.ageRule = new AgeRule(rules);
    this.electrics = new Electrics(rules);
    this.coldSide = new ColdSide(rules);
    this.coilRule = new CoilRule(rules, splits);
    this.tripRule = new TripRule(rules, splits);
    this.leaks = new Leaks(rules, gases);
    this.supplyRule = new SupplyRule(rules, gases, splits);
    this.ageFactor = new AgeFactor(rules);
    this.refrigerantFactor = new RefrigerantFactor(rules);
    this.coilFactor = new CoilFactor(rules);
    this.completeness = new Completeness(rules);
    this.situations = new Situations(rules.cautions());
    this.faults = Faults.under(rules);
  }

  /** What depends on the priors of the fault rates. */
  private record Faults(FaultPriors priors, FaultRule rule, RepeatFaultsFactor factor) {
    static Faults under(ScoringRules rules) {
      FaultRule rule = new FaultRule(rules);
      return new Faults(rules.faultPriors(), rule, new RepeatFaultsFactor(rules, rule));
    }
  }

  /** From now on scores with these priors, for all who share this object. */
  public void use(FaultPriors priors) {
    faults = Faults.under(rules.with(priors));
  }

  /** The priors that it scores with now. */
  public FaultPriors priors() {
    return faults.priors;
  }

  /** The same scoring with other priors. */
  public Scoring with(FaultPriors priors) {
    return new Scoring(rules.with(priors), gases);
  }

  /** The same scoring under other weights. */
  public Scoring with(Weights weights) {
    return new Scoring(rules.with(priors()).with(weights), gases);
  }

  /**
   * The unit as it could be known at the end of that day.
   *
   * @param history all that is on record, later things included
   */
  public Assessment assess(UnitHistory history, LocalDate asOf) {
    Faults itsFaults = this.faults;
    Evidence evidence = gathering.of(history, asOf);
    AgeState age = ageRule.state(evidence);
    SupplyState supply = supplyRule.state(evidence, age);
    FaultState faults = itsFaults.rule.state(evidence);
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
            itsFaults.factor.score(evidence, faults));
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

  /** The fault record of a unit as it could be known on a day; empty where there is none. */
  public Optional<FaultRecord> faultRecord(UnitHistory history, LocalDate asOf) {
    Evidence evidence = gathering.of(history, asOf);
    String faultClass = evidence.kind().faultClass();
    List<FaultEvent> events = faults.rule.state(evidence).events();
    return evidence.firstSeen().map(seen -> new FaultRecord(faultClass, seen, asOf, events));
  }
}

package coldround.scoring;

import coldround.reason.Source;
import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.GammaPoisson;
import coldround.table.RuleTables;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Rate of faults to be expected of a unit of a class before its own record is looked at: a row of
 * scoring/fault-priors.csv, or estimated from the fleet.
 */
public final class FaultPriors {

  static final String FILE = "fault-priors.csv";

  /** Prior of one class. */
  public record FaultPrior(String faultClass, GammaPoisson rate, Source source) {}

  private final Map<String, FaultPrior> byClass;

  private FaultPriors(Map<String, FaultPrior> byClass) {
    this.byClass = Collections.unmodifiableMap(byClass);
  }

  /** As in the table. */
  public static FaultPriors load(RuleTables tables) {
    Map<String, FaultPrior> priors = new LinkedHashMap<>();
    tables
        .read(
            FILE,
            "class",
            row ->
                new FaultPrior(
                    row.required("class"),
                    new GammaPoisson(
                        row.number("shape", 0.01, 100), row.number("years", 0.01, 100)),
                    row.source()))
        .forEach(prior -> priors.put(prior.faultClass, prior));
    return new FaultPriors(priors);
  }

  /**
   * Priors of the fleet where it is large enough, those of the table elsewhere. The same tallies
   * give the same priors to the last digit, in whatever order they were added up.
   */
  public FaultPriors estimated(Map<String, FaultTally> tallies, Limits limits) {
    Map<String, FaultPrior> priors = new LinkedHashMap<>(byClass);
    byClass.forEach(
        (code, prior) ->
            fromFleet(prior, tallies.getOrDefault(code, FaultTally.NONE), limits)
                .ifPresent(estimate -> priors.put(code, estimate)));
    return new FaultPriors(priors);
  }

  private static Optional<FaultPrior> fromFleet(FaultPrior own, FaultTally tally, Limits limits) {
    if (tally.units() < limits.value(LimitName.PRIOR_LEAST_UNITS)) {
      return Optional.empty();
    }
    double least = limits.value(LimitName.PRIOR_LEAST_YEARS) / FaultTally.DAYS_A_YEAR;
    double most = limits.value(LimitName.PRIOR_MOST_YEARS) / FaultTally.DAYS_A_YEAR;
    String citation =
        "estimated from " + tally.units() + " units and " + tally.faults() + " faults of the fleet";
    Source source = new Source(FILE, own.faultClass, citation);
    return tally.prior(least, most).map(rate -> new FaultPrior(own.faultClass, rate, source));
  }

  FaultPrior of(String faultClass) {
    return byClass.get(faultClass);
  }

  boolean has(String faultClass) {
    return byClass.containsKey(faultClass);
  }

  /** By class, in the order of the table. */
  public Map<String, FaultPrior> byClass() {
    return byClass;
  }

  /** Answers are kept for as long as the priors are equal, however often they are taken up. */
  @Override
  public boolean equals(Object other) {
    return other instanceof FaultPriors priors && byClass.equals(priors.byClass);
  }

  @Override
  public int hashCode() {
    return byClass.hashCode();
  }
}

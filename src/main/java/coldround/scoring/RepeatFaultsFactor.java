package coldround.scoring;

import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.scoring.FaultPriors.FaultPrior;
import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.GammaPoisson;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Points lost to faults that keep coming back. */
final class RepeatFaultsFactor {

  private static final String CAME_BACK =
      "{mode}: again on {date}, {after} after the time before ({previous})";
  private static final String DID_NOT_HOLD =
      "{mode}: again on {date}, {after} after the repair of {repair}. That repair did not hold: look"
          + " for what causes it";
  private static final String CHANCE =
      "{faults} of modes that came back in {years} of record: chance {chance} of at least one more"
          + " in the next 12 months";
  private static final String NONE =
      "No failure mode came back within {window} in {years} of record";
  private static final String SHORT =
      "The record covers only {record} of the {window} in which a fault counts as a repeat: the rest"
          + " is scored as the average of its class";
  private static final String UNKNOWN =
      "No visit and no fault on record: scored as the average of its class, chance {chance} of a"
          + " fault that came back";
  private static final String FASTER =
      "Faults come faster: power-law exponent {shape}, {rate} faults a year by now, of which"
          + " {expected} are expected to go on; a constant rate would look like this with a chance of"
          + " {significance}";

  private record Range(double low, double high) {}

  private final double weight;
  private final Limits limits;
  private final FailureModes modes;
  private final FaultPriors priors;
  private final FaultRule rule;
  private final Map<String, Double> expected = new HashMap<>();
  // quantiles of a gamma distribution take a search; few different shapes occur
  private final Map<Double, Range> ranges = new ConcurrentHashMap<>();

  RepeatFaultsFactor(ScoringRules rules, FaultRule rule) {
    this.weight = rules.weights().of(Weights.REPEAT_FAULTS);
    this.limits = rules.limits();
    this.modes = rules.modes();
    this.priors = rules.faultPriors();
    this.rule = rule;
    priors
        .byClass()
        .forEach((code, prior) -> expected.put(code, RepeatExpectation.of(prior.rate(), modes)));
  }

  FactorScore score(Evidence evidence, FaultState faults) {
    FaultPrior prior = priors.of(evidence.kind().faultClass());
    double unseen = unseen(faults);
    double unwatched = unseen * expected.get(prior.faultClass());
    double growth = FaultRule.growth(faults.posterior(), faults.trend());
    Optional<GammaPoisson> rate =
        rule.repeatRate(
            prior.rate(), faults.events(), faults.repeatedModes(), faults.observedYears());
    double least = rate.map(r -> chance(range(r.shape()).low, r, growth)).orElse(0.0);
    double most = rate.map(r -> chance(range(r.shape()).high, r, growth)).orElse(0.0);
    double lost = either(faults.repeatProbability(), unwatched);
    return FactorScore.of(
        Weights.REPEAT_FAULTS,
        weight,
        lost,
        Math.min(least, lost),
        Math.max(lost, either(most, unseen)),
        faults.known(),
        reasons(faults, prior, unseen, lost));
  }

  /** Part of the repeat window before the record begins, 0 to 1. */
  private double unseen(FaultState faults) {
    double window = limits.value(LimitName.REPEAT_WINDOW) / FaultTally.DAYS_A_YEAR;
    return Math.max(0, 1 - faults.observedYears() / window);
  }

  private static double either(double one, double other) {
    return 1 - (1 - one) * (1 - other);
  }

  private Range range(double shape) {
    return ranges.computeIfAbsent(
        shape,
        s -> {
          GammaPoisson unit = new GammaPoisson(s, 1);
          return new Range(unit.rateQuantile(0.1), unit.rateQuantile(0.9));
        });
  }

  private static double chance(double unitRate, GammaPoisson rate, double growth) {
    return -Math.expm1(-unitRate / rate.years() * growth);
  }

  private List<Reason> reasons(FaultState faults, FaultPrior prior, double unseen, double lost) {
    List<Reason> reasons = new ArrayList<>();
    if (!faults.known()) {
      reasons.add(
          new Reason("no-record", UNKNOWN, Facts.of("chance", Facts.share(lost)), prior.source()));
      return reasons;
    }
    for (String mode : faults.repeatedModes()) {
      latest(faults, mode).ifPresent(reasons::add);
    }
    reasons.add(faults.repeatedModes().isEmpty() ? none(faults) : chance(faults, prior));
    if (unseen > 0) {
      reasons.add(shortRecord(faults));
    }
    faults.trend().filter(FaultTrend::worsening).ifPresent(t -> reasons.add(faster(t)));
    return reasons;
  }

  private Optional<Reason> latest(FaultState faults, String mode) {
    for (int i = faults.events().size() - 1; i >= 0; i--) {
      FaultEvent event = faults.events().get(i);
      if (event.mode().equals(mode) && (event.didNotHold() || event.repeat())) {
        return Optional.of(event.didNotHold() ? didNotHold(event) : cameBack(event));
      }
    }
    return Optional.empty();
  }

  private Reason cameBack(FaultEvent event) {
    long after = ChronoUnit.DAYS.between(event.previous().orElseThrow(), event.date());
    return new Reason(
        "fault-came-back",
        CAME_BACK,
        Facts.of(
            "mode",
            modes.name(event.mode()),
            "date",
            event.date(),
            "after",
            Facts.days(after),
            "previous",
            event.previous().orElseThrow()),
        limits.source(LimitName.REPEAT_WINDOW));
  }

  private Reason didNotHold(FaultEvent event) {
    long after = ChronoUnit.DAYS.between(event.repairThatDidNotHold().orElseThrow(), event.date());
    return new Reason(
        "repair-did-not-hold",
        DID_NOT_HOLD,
        Facts.of(
            "mode",
            modes.name(event.mode()),
            "date",
            event.date(),
            "after",
            Facts.days(after),
            "repair",
            event.repairThatDidNotHold().orElseThrow()),
        limits.source(LimitName.DID_NOT_HOLD));
  }

  private static Reason chance(FaultState faults, FaultPrior prior) {
    int count = 0;
    for (FaultEvent event : faults.events()) {
      count += faults.repeatedModes().contains(event.mode()) ? 1 : 0;
    }
    return new Reason(
        "chance-of-repeat",
        CHANCE,
        Facts.of(
            "faults",
            count + (count == 1 ? " fault" : " faults"),
            "years",
            Facts.years(faults.observedYears()),
            "chance",
            Facts.share(faults.repeatProbability())),
        prior.source());
  }

  private Reason none(FaultState faults) {
    return new Reason(
        "no-repeats",
        NONE,
        Facts.of(
            "window",
            limits.shown(LimitName.REPEAT_WINDOW),
            "years",
            Facts.years(faults.observedYears())),
        limits.source(LimitName.REPEAT_WINDOW));
  }

  private Reason shortRecord(FaultState faults) {
    return new Reason(
        "short-record",
        SHORT,
        Facts.of(
            "record",
            Facts.days(faults.observedYears() * FaultTally.DAYS_A_YEAR),
            "window",
            limits.shown(LimitName.REPEAT_WINDOW)),
        limits.source(LimitName.REPEAT_WINDOW));
  }

  private Reason faster(FaultTrend trend) {
    Source source = limits.source(LimitName.TREND_SIGNIFICANCE);
    return new Reason(
        "faults-come-faster",
        FASTER,
        Facts.of(
            "shape",
            twoDecimals(trend.shape()),
            "rate",
            twoDecimals(trend.intensityPerYear()),
            "expected",
            twoDecimals(trend.expectedPerYear()),
            "significance",
            Facts.share(trend.significance())),
        source);
  }

  private static String twoDecimals(double value) {
    return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).toPlainString();
  }
}

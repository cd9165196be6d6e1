package coldround.scoring;

import coldround.scoring.FaultPriors.FaultPrior;
import coldround.scoring.statistics.EventTrend;
import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.GammaPoisson;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What the faults of a unit let expect for the next 12 months. */
final class FaultRule {

  private static final double LOW = 0.1;
  private static final double HIGH = 0.9;

  private final FaultEvents events;
  private final FaultPriors priors;
  private final FailureModes modes;
  private final double memoryDays;
  private final double trendEvents;
  private final double significance;
  private final double trendMost;

  FaultRule(ScoringRules rules) {
    Limits limits = rules.limits();
    this.events = new FaultEvents(limits);
    this.priors = rules.faultPriors();
    this.modes = rules.modes();
    this.memoryDays = limits.value(LimitName.REPEAT_MEMORY);
    this.trendEvents = limits.value(LimitName.TREND_LEAST_EVENTS);
    this.significance = limits.value(LimitName.TREND_SIGNIFICANCE);
    this.trendMost = limits.value(LimitName.TREND_MOST);
  }

  FaultState state(Evidence evidence) {
    List<FaultEvent> its = events.of(evidence.history());
    Optional<LocalDate> seen = evidence.firstSeen();
    double days = seen.map(evidence::daysSince).orElse(0.0);
    double years = days / FaultTally.DAYS_A_YEAR;
    FaultPrior prior = priors.of(evidence.kind().faultClass());
    GammaPoisson posterior = prior.rate().after(its.size(), years);
    Optional<FaultTrend> trend = trend(evidence, its, seen, days);
    double growth = growth(posterior, trend);
    List<String> repeated = repeated(evidence, its);
    return new FaultState(
        its,
        repeated,
        years,
        posterior,
        posterior.mean() * growth,
        posterior.countQuantile(growth, LOW),
        posterior.countQuantile(growth, HIGH),
        repeatRate(prior.rate(), its, repeated, years).map(r -> r.atLeastOne(growth)).orElse(0.0),
        trend,
        seen.isPresent());
  }

  /** By how much a trend that is believed raises the expectation: never lowers it. */
  static double growth(GammaPoisson posterior, Optional<FaultTrend> trend) {
    return trend
        .filter(FaultTrend::worsening)
        .map(t -> Math.max(1, t.expectedPerYear() / posterior.mean()))
        .orElse(1.0);
  }

  /** Rate of the repeated modes together, after the record; empty when there are none. */
  Optional<GammaPoisson> repeatRate(
      GammaPoisson prior, List<FaultEvent> its, List<String> repeated, double years) {
    if (repeated.isEmpty()) {
      return Optional.empty();
    }
    double share = 0;
    int count = 0;
    for (String mode : repeated) {
      share += modes.of(mode).share();
    }
    for (FaultEvent event : its) {
      count += repeated.contains(event.mode()) ? 1 : 0;
    }
    return Optional.of(prior.part(Math.min(1, share)).after(count, years));
  }

  private List<String> repeated(Evidence evidence, List<FaultEvent> its) {
    List<String> repeated = new ArrayList<>();
    for (FaultEvent event : its) {
      if (event.repeat()
          && evidence.daysSince(event.date()) <= memoryDays
          && !repeated.contains(event.mode())) {
        repeated.add(event.mode());
      }
    }
    return repeated;
  }

  /** The fault that opens the record has no age, so it takes no part in the trend. */
  private Optional<FaultTrend> trend(
      Evidence evidence, List<FaultEvent> its, Optional<LocalDate> seen, double days) {
    if (its.size() < trendEvents) {
      return Optional.empty();
    }
    double[] ages = new double[its.size()];
    int count = 0;
    for (FaultEvent event : its) {
      double age = ChronoUnit.DAYS.between(seen.orElseThrow(), event.date());
      if (age > 0) {
        ages[count++] = age;
      }
    }
    EventTrend trend = EventTrend.toTime(Math.max(days, 1), Arrays.copyOf(ages, count));
    return count < trendEvents || trend.logSum() <= 0
        ? Optional.empty()
        : Optional.of(told(trend, lastYear(evidence, its)));
  }

  private static long lastYear(Evidence evidence, List<FaultEvent> its) {
    return its.stream()
        .filter(event -> evidence.daysSince(event.date()) < FaultTally.DAYS_A_YEAR)
        .count();
  }

  private FaultTrend told(EventTrend trend, long lastYear) {
    double chance = trend.worseningSignificance();
    double intensity = trend.intensity() * FaultTally.DAYS_A_YEAR;
    return new FaultTrend(
        trend.laplace(),
        trend.shape(),
        intensity,
        Math.min(intensity, trendMost * lastYear),
        chance,
        trend.shape() > 1 && chance < significance);
  }
}

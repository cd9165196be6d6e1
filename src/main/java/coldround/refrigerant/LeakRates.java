package coldround.refrigerant;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.table.RuleTables;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Leak rates by the two methods of 40 CFR 82.152 and 84.102, on exact decimals. Days and limits are
 * rows of scoring/leak-rules.csv. What follows from a rate is told by {@link LeakDuties}.
 */
public final class LeakRates {

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
  private static final String ANNUALIZED =
      "{added} added on {date}, {days} days after the addition before, into a full charge of"
          + " {charge}: {rate} by the annualizing method";
  private static final String FIRST =
      "There is no earlier addition on record: {days} days are taken, the most that count";
  private static final String CLOSE =
      "The addition before was only {days} days earlier: if both made good one leak, enter them as"
          + " one";
  private static final String ROLLED =
      "{added} added after {since} up to {date} into a full charge of {charge}: {rate} by the"
          + " rolling average method";

  private final LeakRule annualizing;
  private final LeakRule rolling;
  private final LeakRule firstAddition;
  private final LeakRule shortInterval;

  private LeakRates(
      LeakRule annualizing, LeakRule rolling, LeakRule firstAddition, LeakRule shortInterval) {
    this.annualizing = annualizing;
    this.rolling = rolling;
    this.firstAddition = firstAddition;
    this.shortInterval = shortInterval;
  }

  public static LeakRates load(RuleTables tables) {
    return of(tables, LeakRule.read(tables));
  }

  static LeakRates of(RuleTables tables, List<LeakRule> rules) {
    return new LeakRates(
        only(tables, rules, "annualizing"),
        only(tables, rules, "rolling"),
        only(tables, rules, "first-addition"),
        only(tables, rules, "short-interval"));
  }

  private static LeakRule only(RuleTables tables, List<LeakRule> rules, String topic) {
    List<LeakRule> found = rules.stream().filter(rule -> rule.topic().equals(topic)).toList();
    if (found.size() != 1) {
      String message = "needs one row of topic " + topic + ", not " + found.size();
      tables.problem(LeakRule.FILE, 0, "topic", message);
      return null;
    }
    return found.get(0);
  }

  /**
   * @param lastVerifiedRepair day of the last successful follow-up verification test, null if none
   * @return empty when the method has nothing to go by: no addition up to that day
   */
  public Optional<LeakRate> rate(
      LeakMethod method,
      List<GasAddition> additions,
      BigDecimal chargeKg,
      LocalDate asOf,
      LocalDate lastVerifiedRepair) {
    return method == LeakMethod.ANNUALIZING
        ? annualizing(additions, chargeKg, asOf)
        : Optional.of(rollingAverage(additions, chargeKg, asOf, lastVerifiedRepair));
  }

  /**
   * The latest addition over the days since the one before, at most a year. Additions of one day
   * are one.
   *
   * @return the rate on the day of the latest addition; empty when there is none
   */
  public Optional<LeakRate> annualizing(
      List<GasAddition> additions, BigDecimal chargeKg, LocalDate asOf) {
    check(chargeKg);
    Optional<LocalDate> latest =
        additions.stream()
            .filter(GasAddition::counts)
            .map(GasAddition::date)
            .filter(date -> !date.isAfter(asOf))
            .max(Comparator.naturalOrder());
    return latest.map(date -> annualized(additions, chargeKg, date));
  }

  private LeakRate annualized(List<GasAddition> additions, BigDecimal chargeKg, LocalDate date) {
    BigDecimal added = sum(additions, date.minusDays(1), date);
    Optional<LocalDate> before =
        additions.stream()
            .map(GasAddition::date)
            .filter(earlier -> earlier.isBefore(date))
            .max(Comparator.naturalOrder());
    int year = annualizing.value().intValue();
    int since =
        before
            .map(earlier -> (int) ChronoUnit.DAYS.between(earlier, date))
            .orElse(firstAddition.value().intValue());
    int days = Math.min(since, year);
    BigDecimal numerator = added.multiply(HUNDRED).multiply(BigDecimal.valueOf(year));
    BigDecimal denominator = chargeKg.multiply(BigDecimal.valueOf(days));
    return new LeakRate(
        LeakMethod.ANNUALIZING,
        date,
        numerator,
        denominator,
        annualizedReasons(
            before.isEmpty(), since, fact(added, chargeKg, date, numerator, denominator)));
  }

  private List<Reason> annualizedReasons(boolean first, int since, Map<String, Object> facts) {
    facts.put("days", since);
    List<Reason> reasons = new ArrayList<>();
    reasons.add(new Reason("leak-rate-annualizing", ANNUALIZED, facts, annualizing.source()));
    if (first) {
      Map<String, Object> days = Map.of("days", since);
      reasons.add(new Reason("first-addition", FIRST, days, firstAddition.source()));
    } else if (since < shortInterval.value().intValue()) {
      Map<String, Object> days = Map.of("days", since);
      reasons.add(new Reason("additions-close-together", CLOSE, days, shortInterval.source()));
    }
    return reasons;
  }

  /**
   * All additions of the last 365 days, or after the last verified repair if that is later.
   *
   * @param lastVerifiedRepair day of the last successful follow-up verification test, null if none
   */
  public LeakRate rollingAverage(
      List<GasAddition> additions,
      BigDecimal chargeKg,
      LocalDate asOf,
      LocalDate lastVerifiedRepair) {
    check(chargeKg);
    LocalDate since = asOf.minusDays(rolling.value().longValue());
    if (lastVerifiedRepair != null
        && lastVerifiedRepair.isAfter(since)
        && !lastVerifiedRepair.isAfter(asOf)) {
      since = lastVerifiedRepair;
    }
    BigDecimal added = sum(additions, since, asOf);
    BigDecimal numerator = added.multiply(HUNDRED);
    Map<String, Object> facts = fact(added, chargeKg, asOf, numerator, chargeKg);
    facts.put("since", since);
    Reason reason = new Reason("leak-rate-rolling-average", ROLLED, facts, rolling.source());
    return new LeakRate(LeakMethod.ROLLING_AVERAGE, asOf, numerator, chargeKg, List.of(reason));
  }

  private static void check(BigDecimal chargeKg) {
    if (chargeKg.signum() <= 0) {
      throw new IllegalArgumentException("the full charge must be above zero, not " + chargeKg);
    }
  }

  /** What counts after one day and up to another. */
  static BigDecimal sum(List<GasAddition> additions, LocalDate after, LocalDate upTo) {
    return additions.stream()
        .filter(GasAddition::counts)
        .filter(a -> a.date().isAfter(after) && !a.date().isAfter(upTo))
        .map(GasAddition::kg)
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  private static Map<String, Object> fact(
      BigDecimal added,
      BigDecimal chargeKg,
      LocalDate date,
      BigDecimal numerator,
      BigDecimal denominator) {
    double percent = numerator.doubleValue() / denominator.doubleValue();
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("added", ExactMass.told(added));
    facts.put("charge", ExactMass.told(chargeKg));
    facts.put("date", date);
    facts.put("rate", new Quantity(percent, Measure.PERCENT_PER_YEAR));
    return facts;
  }
}

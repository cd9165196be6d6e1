package coldround.refrigerant;

import coldround.refrigerant.PhaseOutRule.Effect;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * The share of baseline that can be had of one gas on each day: what may be made and imported (of
 * an HFC the quota's cut in proportion to its GWP), no more than service and sale with new gas
 * allow, plus the credit for reclaimed gas while service with that is allowed. It changes on few
 * days, so it is worked out once between them.
 */
final class SupplyDays {

  private final Refrigerant gas;
  private final List<String> schedules;
  private final List<PhaseOutRule> rules;
  private final SupplySettings settings;
  // day i starts a stretch of share i; the first stretch reaches back without end
  private final long[] startDay;
  private final double[] share;

  SupplyDays(
      Refrigerant gas,
      List<String> schedules,
      List<PhaseOutRule> concerning,
      SupplySettings settings) {
    this.gas = gas;
    this.schedules = schedules;
    this.rules = concerning.stream().filter(rule -> rule.decides().equals("yes")).toList();
    this.settings = settings;
    List<LocalDate> changes = List.copyOf(changes());
    this.startDay = changes.stream().mapToLong(LocalDate::toEpochDay).toArray();
    this.share = changes.stream().mapToDouble(this::shareOn).toArray();
  }

  private TreeSet<LocalDate> changes() {
    TreeSet<LocalDate> days = new TreeSet<>(settings.changes(gas, schedules));
    days.add(LocalDate.MIN);
    for (PhaseOutRule rule : rules) {
      if (rule.from() != null) {
        days.add(rule.from());
      }
      if (rule.until() != null) {
        days.add(rule.until().plusDays(1));
      }
    }
    return days;
  }

  /** Mean over the days from the first to the one before the last; of the first if they are one. */
  double mean(LocalDate first, LocalDate last) {
    long from = first.toEpochDay();
    long to = Math.max(from + 1, last.toEpochDay());
    double sum = 0;
    for (int i = 0; i < share.length; i++) {
      long start = Math.max(from, startDay[i]);
      long end = i + 1 < share.length ? Math.min(to, startDay[i + 1]) : to;
      if (end > start) {
        sum += share[i] * (end - start);
      }
    }
    return Math.min(1, sum / (to - from));
  }

  private double shareOn(LocalDate date) {
    return Math.min(1, newGas(date) + reclaimed(date));
  }

  /** Share that is left for new gas. */
  private double newGas(LocalDate date) {
    double left = 1;
    for (String schedule : schedules) {
      left = Math.min(left, step(schedule, date).map(this::left).orElse(1.0));
    }
    for (PhaseOutRule rule : rules) {
      if (rule.effect().limitsNewGas() && !rule.effect().isProductionStep() && rule.inForce(date)) {
        left = Math.min(left, rule.sharePercent().getAsDouble() / 100);
      }
    }
    return left;
  }

  /** The limit of production and import that governs: the one that started last. */
  private Optional<PhaseOutRule> step(String schedule, LocalDate date) {
    return rules.stream()
        .filter(rule -> rule.effect().isProductionStep() && rule.schedule().equals(schedule))
        .filter(rule -> rule.inForce(date))
        .max(Comparator.comparing(PhaseOutRule::from));
  }

  private double left(PhaseOutRule step) {
    double cut = 1 - step.sharePercent().getAsDouble() / 100;
    return 1 - cut * settings.weight(gas, schedules);
  }

  private double reclaimed(LocalDate date) {
    boolean banned =
        rules.stream()
            .anyMatch(rule -> rule.effect() == Effect.SERVICING_RECLAIMED && rule.inForce(date));
    return banned ? 0 : credit(date).value() / 100;
  }

  SupplySettings.Setting credit(LocalDate date) {
    return settings.credit(gas, schedules, date);
  }
}

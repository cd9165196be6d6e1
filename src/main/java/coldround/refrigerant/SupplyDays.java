package coldround.refrigerant;

import coldround.refrigerant.PhaseOutRule.Effect;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * The share of baseline that can be had of one gas on each day: what may be made and imported (of
 * an HFC the quota's cut in proportion to its GWP), no more than service and sale with new gas
 * allow, plus the credit for reclaimed gas while service with that is allowed.
 */
final class SupplyDays {

  private final Refrigerant gas;
  private final List<String> schedules;
  private final List<PhaseOutRule> rules;
  private final SupplySettings settings;

  SupplyDays(
      Refrigerant gas,
      List<String> schedules,
      List<PhaseOutRule> concerning,
      SupplySettings settings) {
    this.gas = gas;
    this.schedules = schedules;
    this.rules = concerning.stream().filter(rule -> rule.decides().equals("yes")).toList();
    this.settings = settings;
  }

  /** Mean over the days from the first to the one before the last. */
  double mean(LocalDate first, LocalDate last) {
    if (!last.isAfter(first)) {
      return share(first);
    }
    double sum = 0;
    LocalDate start = first;
    for (LocalDate end : changes(first, last)) {
      sum += share(start) * ChronoUnit.DAYS.between(start, end);
      start = end;
    }
    return Math.min(1, sum / ChronoUnit.DAYS.between(first, last));
  }

  /** Days after the first on which the share may change, and the last. */
  private TreeSet<LocalDate> changes(LocalDate first, LocalDate last) {
    TreeSet<LocalDate> days = new TreeSet<>(settings.changes(gas, schedules));
    for (PhaseOutRule rule : rules) {
      if (rule.from() != null) {
        days.add(rule.from());
      }
      if (rule.until() != null) {
        days.add(rule.until().plusDays(1));
      }
    }
    days.add(last);
    return new TreeSet<>(days.subSet(first, false, last, true));
  }

  double share(LocalDate date) {
    return Math.min(1, newGas(date) + reclaimed(date));
  }

  /** Share that is left for new gas. */
  double newGas(LocalDate date) {
    double share = 1;
    for (String schedule : schedules) {
      Optional<PhaseOutRule> step = step(schedule, date);
      share = Math.min(share, step.map(this::left).orElse(1.0));
    }
    for (PhaseOutRule rule : rules) {
      if (rule.effect().limitsNewGas() && !rule.effect().isProductionStep() && rule.inForce(date)) {
        share = Math.min(share, rule.sharePercent().getAsDouble() / 100);
      }
    }
    return share;
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
    double weight =
        settings
            .reference(gas, schedules)
            .map(reference -> Math.min(1, gas.gwpAr4() / reference.value()))
            .orElse(1.0);
    return 1 - cut * weight;
  }

  private double reclaimed(LocalDate date) {
    return reclaimedBanned(date) ? 0 : credit(date).value() / 100;
  }

  private boolean reclaimedBanned(LocalDate date) {
    return rules.stream()
        .anyMatch(rule -> rule.effect() == Effect.SERVICING_RECLAIMED && rule.inForce(date));
  }

  SupplySettings.Setting credit(LocalDate date) {
    return settings.credit(gas, schedules, date);
  }
}

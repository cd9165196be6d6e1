package coldround.refrigerant;

import coldround.reason.Reason;
import coldround.refrigerant.PhaseOutRule.Effect;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Chooses what to tell about the supply of one gas in one place over a span of time. */
final class SupplyReasons {

  /**
   * A rule and its sentence, made once.
   *
   * @param overtaken day on which a later step took its place; the end of time if none does
   */
  private record Told(PhaseOutRule rule, LocalDate overtaken, Reason reason) {}

  private final Optional<Reason> exempt;
  private final Optional<Reason> lowGwp;
  private final List<Told> limits;
  private final Optional<Reason> serviceAllowed;
  private final List<Told> newEquipment;

  SupplyReasons(
      Refrigerant gas,
      List<String> schedules,
      List<PhaseOutRule> concerning,
      SupplySettings settings,
      boolean existingUnit) {
    SupplyWords words = new SupplyWords(gas);
    this.exempt = first(concerning, Effect.NO_PHASE_OUT).map(words::exempt);
    double weight = settings.weight(gas, schedules);
    this.lowGwp =
        settings
            .reference(gas, schedules)
            .filter(reference -> weight < 1)
            .map(reference -> words.lowGwp(reference, weight));
    this.limits = limits(concerning, words);
    this.serviceAllowed = first(concerning, Effect.SERVICE_ALLOWED).map(words::serviceAllowed);
    this.newEquipment = newEquipment(concerning, words, existingUnit);
  }

  private static Optional<PhaseOutRule> first(List<PhaseOutRule> rules, Effect effect) {
    return rules.stream().filter(rule -> rule.effect() == effect).findFirst();
  }

  /** What limits gas for service, by date. */
  private static List<Told> limits(List<PhaseOutRule> concerning, SupplyWords words) {
    List<PhaseOutRule> limiting =
        concerning.stream()
            .filter(r -> r.effect().limitsNewGas() || r.effect() == Effect.SERVICING_RECLAIMED)
            .filter(rule -> rule.decides().equals("yes"))
            .sorted(Comparator.comparing(PhaseOutRule::from))
            .toList();
    return limiting.stream()
        .filter(rule -> limiting.stream().noneMatch(earlier -> repeats(rule, earlier)))
        .map(rule -> new Told(rule, overtaken(rule, limiting), words.limit(rule)))
        .toList();
  }

  private static boolean sameLine(PhaseOutRule one, PhaseOutRule other) {
    return one.schedule().equals(other.schedule())
        && (one.effect() == other.effect()
            || (one.effect().isProductionStep() && other.effect().isProductionStep()));
  }

  /** True for a rule that only says again what an earlier one already says. */
  private static boolean repeats(PhaseOutRule rule, PhaseOutRule earlier) {
    return sameLine(rule, earlier)
        && earlier.from().isBefore(rule.from())
        && earlier.inForce(rule.from())
        && earlier.sharePercent().equals(rule.sharePercent());
  }

  private static LocalDate overtaken(PhaseOutRule rule, List<PhaseOutRule> limiting) {
    return limiting.stream()
        .filter(later -> rule.effect().isProductionStep() && sameLine(rule, later))
        .map(PhaseOutRule::from)
        .filter(from -> from.isAfter(rule.from()))
        .min(Comparator.naturalOrder())
        .orElse(LocalDate.MAX);
  }

  /** Limits for new equipment: those that were read before the assumed ones, then by date. */
  private static List<Told> newEquipment(
      List<PhaseOutRule> concerning, SupplyWords words, boolean existingUnit) {
    Comparator<PhaseOutRule> readFirst =
        Comparator.comparing(rule -> rule.decides().equals("assumed"));
    return concerning.stream()
        .filter(rule -> rule.effect() == Effect.NEW_EQUIPMENT)
        .sorted(readFirst.thenComparing(PhaseOutRule::from))
        .map(rule -> new Told(rule, LocalDate.MAX, words.newEquipment(rule, existingUnit)))
        .toList();
  }

  /**
   * @param mean the reason with the share over the span
   * @param unknownPlace said where the place is not known
   */
  List<Reason> told(LocalDate first, LocalDate last, Reason mean, Optional<Reason> unknownPlace) {
    if (exempt.isPresent()) {
      return List.of(exempt.get());
    }
    List<Reason> reasons = new ArrayList<>();
    reasons.add(mean);
    unknownPlace.ifPresent(reasons::add);
    limits.stream()
        .filter(told -> told.rule.touches(first, last) && told.overtaken.isAfter(first))
        .forEach(told -> reasons.add(told.reason));
    lowGwp.filter(reason -> limited(first, last)).ifPresent(reasons::add);
    serviceAllowed.filter(reason -> !reclaimedEnds(last)).ifPresent(reasons::add);
    newEquipment.stream()
        .filter(told -> told.rule.touches(last, last))
        .findFirst()
        .ifPresent(told -> reasons.add(told.reason));
    return reasons;
  }

  private boolean limited(LocalDate first, LocalDate last) {
    return any(rule -> rule.effect() == Effect.QUOTA_STEP && rule.touches(first, last));
  }

  private boolean reclaimedEnds(LocalDate last) {
    return any(rule -> rule.effect() == Effect.SERVICING_RECLAIMED && !rule.from().isAfter(last));
  }

  private boolean any(Predicate<PhaseOutRule> matching) {
    return limits.stream().map(Told::rule).anyMatch(matching);
  }
}

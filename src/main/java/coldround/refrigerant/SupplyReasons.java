package coldround.refrigerant;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import coldround.refrigerant.PhaseOutRule.Effect;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts into words what the law does with one gas over a span of time. */
final class SupplyReasons {

  private static final String MEAN =
      "Between {first} and {last} law and reclaimed gas leave {share} of the former supply of"
          + " {refrigerant} on average";
  private static final String NONE =
      "{refrigerant} has no phase-out date: {reference} leaves its family out";
  private static final String UNKNOWN_PLACE =
      "The jurisdiction of the site is '{jurisdiction}', which is no country code: the"
          + " international schedule is assumed";
  private static final String ENDED =
      "From {date} no new {refrigerant} may be made or imported ({reference}); service goes on"
          + " with stock and reclaimed gas";
  private static final String STEP =
      "From {date} {left} of the baseline may be made and imported ({reference})";
  private static final String NO_NEW_GAS =
      "From {date} service with new {refrigerant} is banned ({reference})";
  private static final String LITTLE_NEW_GAS =
      "From {date} gas for service may hold {left} of new {refrigerant} at most, the rest"
          + " reclaimed ({reference})";
  private static final String NO_SALE =
      "From {date} new {refrigerant} may not be sold in bulk ({reference})";
  private static final String NO_RECLAIMED_GAS =
      "From {date} service with reclaimed {refrigerant} is banned as well ({reference}): the unit"
          + " may run on until its circuit needs gas";
  private static final String SERVICE_ALLOWED =
      "Service of this unit with reclaimed {refrigerant} has no end date ({reference})";
  private static final String SUCCESSOR =
      "From {date} new equipment of this kind may not use {refrigerant} ({reference}): this unit"
          + " may run on, its successor needs another gas; ask the equipment maker which";
  private static final String NEW_UNIT =
      "From {date} new equipment of this kind may not use {refrigerant} ({reference}): a new unit"
          + " needs another gas; ask the equipment maker which";
  private static final String ASSUMED_LIMIT =
      "From {date} new equipment of this kind is assumed not to be allowed {refrigerant}"
          + " ({reference}, figures not read): check that before relying on it, and ask the"
          + " equipment maker about the gas of a successor";

  private final Refrigerant gas;
  private final String jurisdiction;
  private final Jurisdictions.Law law;
  private final List<PhaseOutRule> concerning;
  private final boolean existingUnit;

  SupplyReasons(
      Refrigerant gas,
      String jurisdiction,
      Jurisdictions.Law law,
      List<PhaseOutRule> concerning,
      boolean existingUnit) {
    this.gas = gas;
    this.jurisdiction = jurisdiction == null ? "" : jurisdiction;
    this.law = law;
    this.concerning = concerning;
    this.existingUnit = existingUnit;
  }

  List<Reason> told(LocalDate first, LocalDate last, double share, SupplyDays days) {
    List<Reason> reasons = new ArrayList<>();
    Optional<PhaseOutRule> exempt = first(Effect.NO_PHASE_OUT);
    if (exempt.isPresent()) {
      reasons.add(reason("no-phase-out", NONE, exempt.get()));
      return reasons;
    }
    reasons.add(mean(first, last, share, days.credit(first).source()));
    if (!law.known()) {
      reasons.add(unknownPlace());
    }
    limits(first, last).forEach(rule -> reasons.add(limit(rule)));
    if (reclaimedAllowed(last)) {
      first(Effect.SERVICE_ALLOWED)
          .ifPresent(rule -> reasons.add(reason("service-allowed", SERVICE_ALLOWED, rule)));
    }
    newEquipment(last).ifPresent(rule -> reasons.add(successor(rule)));
    return reasons;
  }

  private Optional<PhaseOutRule> first(Effect effect) {
    return concerning.stream().filter(rule -> rule.effect() == effect).findFirst();
  }

  private Reason mean(LocalDate first, LocalDate last, double share, Source source) {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("refrigerant", gas.designation());
    facts.put("first", first);
    facts.put("last", last);
    facts.put("share", new Quantity(share * 100, Measure.PERCENT));
    facts.put("gwp", String.valueOf(gas.gwpAr4()));
    return new Reason("supply", MEAN, facts, source);
  }

  private Reason unknownPlace() {
    return new Reason(
        "jurisdiction-unknown", UNKNOWN_PLACE, Map.of("jurisdiction", jurisdiction), law.source());
  }

  /** What limits gas for service on some day of the span, by date. */
  private List<PhaseOutRule> limits(LocalDate first, LocalDate last) {
    return concerning.stream()
        .filter(r -> r.effect().limitsNewGas() || r.effect() == Effect.SERVICING_RECLAIMED)
        .filter(rule -> rule.decides().equals("yes") && rule.touches(first, last))
        .filter(rule -> !overtaken(rule, first) && !repeats(rule))
        .sorted(Comparator.comparing(PhaseOutRule::from))
        .toList();
  }

  /** True for a step that a later one had replaced before the span began. */
  private boolean overtaken(PhaseOutRule rule, LocalDate first) {
    return rule.effect().isProductionStep()
        && concerning.stream()
            .filter(other -> other.effect().isProductionStep())
            .filter(other -> other.schedule().equals(rule.schedule()))
            .anyMatch(o -> o.from().isAfter(rule.from()) && !o.from().isAfter(first));
  }

  /** True for a step that only says again what an earlier one of the schedule says. */
  private boolean repeats(PhaseOutRule rule) {
    return rule.effect().isProductionStep()
        && concerning.stream()
            .filter(other -> other.effect().isProductionStep())
            .filter(other -> other.schedule().equals(rule.schedule()))
            .filter(other -> other.from().isBefore(rule.from()) && other.inForce(rule.from()))
            .anyMatch(other -> other.sharePercent().equals(rule.sharePercent()));
  }

  private Reason limit(PhaseOutRule rule) {
    boolean nothing = rule.sharePercent().orElse(0) == 0;
    return switch (rule.effect()) {
      case SERVICING_RECLAIMED -> reason("reclaimed-service-ban", NO_RECLAIMED_GAS, rule);
      case SERVICING_VIRGIN -> reason("service-ban", nothing ? NO_NEW_GAS : LITTLE_NEW_GAS, rule);
      case SALE_VIRGIN -> reason("sale-ban", NO_SALE, rule);
      default -> nothing ? reason("production-ended", ENDED, rule) : reason("quota", STEP, rule);
    };
  }

  private boolean reclaimedAllowed(LocalDate last) {
    return concerning.stream()
        .noneMatch(r -> r.effect() == Effect.SERVICING_RECLAIMED && !r.from().isAfter(last));
  }

  /** The earliest limit for new equipment within the span, one that was read before an assumed. */
  private Optional<PhaseOutRule> newEquipment(LocalDate last) {
    return concerning.stream()
        .filter(rule -> rule.effect() == Effect.NEW_EQUIPMENT && rule.touches(last, last))
        .min(
            Comparator.comparing((PhaseOutRule rule) -> rule.decides().equals("assumed"))
                .thenComparing(PhaseOutRule::from));
  }

  private Reason successor(PhaseOutRule rule) {
    if (rule.decides().equals("assumed")) {
      return reason("new-equipment-limit-assumed", ASSUMED_LIMIT, rule);
    }
    return reason("new-equipment-limit", existingUnit ? SUCCESSOR : NEW_UNIT, rule);
  }

  private Reason reason(String code, String template, PhaseOutRule rule) {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("refrigerant", gas.designation());
    facts.put("reference", rule.legalReference());
    facts.put("status", rule.status());
    if (rule.from() != null) {
      facts.put("date", rule.from());
    }
    rule.sharePercent().ifPresent(s -> facts.put("left", new Quantity(s, Measure.PERCENT)));
    rule.gwpLimit().ifPresent(limit -> facts.put("gwpLimit", limit));
    if (!rule.scope().isEmpty()) {
      facts.put("scope", rule.scope());
    }
    return new Reason(code, template, facts, rule.source());
  }
}

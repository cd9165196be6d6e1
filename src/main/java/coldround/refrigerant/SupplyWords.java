package coldround.refrigerant;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;

/** The sentences about the supply of one gas. None of them says that a unit must not run. */
final class SupplyWords {

  private static final String MEAN =
      "Between {first} and {last} law and reclaimed gas leave {share} of the former supply of"
          + " {refrigerant} on average; reclaimed gas and stock count for {credit}";
  private static final String MEAN_CREDITS = MEAN + " of it, {laterCredit} at the end";
  private static final String LOW_GWP =
      "A quota counts tonnes of CO2 equivalent: {refrigerant} (GWP {gwp}) feels {weight} of its"
          + " cut, a gas of GWP {reference} or more the whole";
  private static final String NONE =
      "{refrigerant} has no phase-out date: {reference} leaves its family out";
  private static final String PLACE_NOT_GIVEN =
      "The jurisdiction of the site is not given: the international schedule is assumed";
  private static final String PLACE_UNKNOWN =
      "The jurisdiction of the site, '{jurisdiction}', is no country code: the international"
          + " schedule is assumed";
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

  SupplyWords(Refrigerant gas) {
    this.gas = gas;
  }

  Reason mean(
      LocalDate first,
      LocalDate last,
      double share,
      SupplySettings.Setting credit,
      SupplySettings.Setting laterCredit) {
    Map<String, Object> facts = facts();
    facts.put("first", first);
    facts.put("last", last);
    facts.put("share", percent(share * 100));
    facts.put("credit", percent(credit.value()));
    facts.put("laterCredit", percent(laterCredit.value()));
    boolean changes = credit.value() != laterCredit.value();
    return new Reason("supply", changes ? MEAN_CREDITS : MEAN, facts, credit.source());
  }

  Reason lowGwp(SupplySettings.Setting reference, double weight) {
    Map<String, Object> facts = facts();
    facts.put("gwp", String.valueOf(Math.round(gas.gwpAr4())));
    facts.put("weight", percent(weight * 100));
    facts.put("reference", (int) reference.value());
    return new Reason("low-gwp", LOW_GWP, facts, reference.source());
  }

  static Reason unknownPlace(String jurisdiction, Source source) {
    String template = jurisdiction.isBlank() ? PLACE_NOT_GIVEN : PLACE_UNKNOWN;
    Map<String, Object> facts = Map.of("jurisdiction", jurisdiction);
    return new Reason("jurisdiction-unknown", template, facts, source);
  }

  Reason exempt(PhaseOutRule rule) {
    return reason("no-phase-out", NONE, rule);
  }

  /** Of a rule that limits gas for service. */
  Reason limit(PhaseOutRule rule) {
    boolean nothing = rule.sharePercent().orElse(0) == 0;
    return switch (rule.effect()) {
      case SERVICING_RECLAIMED -> reason("reclaimed-service-ban", NO_RECLAIMED_GAS, rule);
      case SERVICING_VIRGIN -> reason("service-ban", nothing ? NO_NEW_GAS : LITTLE_NEW_GAS, rule);
      case SALE_VIRGIN -> reason("sale-ban", NO_SALE, rule);
      default -> nothing ? reason("production-ended", ENDED, rule) : reason("quota", STEP, rule);
    };
  }

  Reason serviceAllowed(PhaseOutRule rule) {
    return reason("service-allowed", SERVICE_ALLOWED, rule);
  }

  Reason newEquipment(PhaseOutRule rule, boolean existingUnit) {
    if (rule.decides().equals("assumed")) {
      return reason("new-equipment-limit-assumed", ASSUMED_LIMIT, rule);
    }
    return reason("new-equipment-limit", existingUnit ? SUCCESSOR : NEW_UNIT, rule);
  }

  private Map<String, Object> facts() {
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("refrigerant", gas.designation());
    return facts;
  }

  private static Quantity percent(double percent) {
    return new Quantity(percent, Measure.PERCENT);
  }

  private Reason reason(String code, String template, PhaseOutRule rule) {
    Map<String, Object> facts = facts();
    facts.put("reference", rule.legalReference());
    facts.put("status", rule.status());
    if (rule.from() != null) {
      facts.put("date", rule.from());
    }
    rule.sharePercent().ifPresent(share -> facts.put("left", percent(share)));
    rule.gwpLimit().ifPresent(limit -> facts.put("gwpLimit", limit));
    if (!rule.scope().isEmpty()) {
      facts.put("scope", rule.scope());
    }
    return new Reason(code, template, facts, rule.source());
  }
}

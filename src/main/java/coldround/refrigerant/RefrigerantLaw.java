package coldround.refrigerant;

import coldround.reason.Reason;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * What law leaves of a refrigerant by place and date: production and import limits, quotas, bans of
 * service with new or reclaimed gas, limits for new equipment. None of it is legal advice.
 */
public final class RefrigerantLaw {

  private static final String EVERYWHERE = "*";

  private record Case(String designation, List<String> schedules, String kind) {}

  private record Outlook(SupplyDays days, SupplyReasons existing, SupplyReasons bought) {}

  private final List<PhaseOutRule> rules;
  private final Jurisdictions jurisdictions;
  private final SupplySettings settings;
  private final UnitCategories categories;
  // a case never changes after loading, and scoring asks for the same few again and again
  private final Map<Case, Outlook> outlooks = new ConcurrentHashMap<>();

  private RefrigerantLaw(
      List<PhaseOutRule> rules,
      Jurisdictions jurisdictions,
      SupplySettings settings,
      UnitCategories categories) {
    this.rules = rules;
    this.jurisdictions = jurisdictions;
    this.settings = settings;
    this.categories = categories;
  }

  public static RefrigerantLaw load(RuleTables tables) {
    return load(tables, Jurisdictions.load(tables), UnitCategories.load(tables));
  }

  static RefrigerantLaw load(
      RuleTables tables, Jurisdictions jurisdictions, UnitCategories categories) {
    List<PhaseOutRule> rules = PhaseOutTable.read(tables);
    jurisdictions.check(
        tables, rules.stream().map(PhaseOutRule::schedule).collect(Collectors.toSet()));
    return new RefrigerantLaw(rules, jurisdictions, SupplySettings.load(tables), categories);
  }

  /** Every rule that speaks of the refrigerant, anywhere, in the order of the table. */
  public List<PhaseOutRule> rules(Refrigerant gas) {
    return rules.stream().filter(rule -> rule.concerns(gas)).toList();
  }

  /** The rules that speak of the refrigerant in that jurisdiction. */
  public List<PhaseOutRule> rules(Refrigerant gas, String jurisdiction) {
    List<String> schedules = jurisdictions.law(jurisdiction).schedules();
    return rules(gas).stream().filter(rule -> holdsIn(rule, schedules)).toList();
  }

  /** For a unit whose kind is not known: it is taken for refrigeration equipment. */
  public Supply supply(
      Refrigerant gas, String jurisdiction, LocalDate from, LocalDate to, boolean existingUnit) {
    return supply(gas, jurisdiction, from, to, existingUnit, "");
  }

  /**
   * Supply from one day to another, such as the unit's remaining life.
   *
   * @param jurisdiction ISO 3166 country with optional subdivision; empty if unknown
   * @param to when not after the first day, the supply is that of the first day
   * @param existingUnit false for a unit still to be bought
   * @param kind kind of unit, such as walk-in-cooler; empty if unknown
   */
  public Supply supply(
      Refrigerant gas,
      String jurisdiction,
      LocalDate from,
      LocalDate to,
      boolean existingUnit,
      String kind) {
    Jurisdictions.Law law = jurisdictions.law(jurisdiction);
    Outlook outlook = outlook(gas, law.schedules(), kind);
    LocalDate last = to.isAfter(from) ? to : from;
    SupplyDays days = outlook.days;
    double share = days.mean(from, last);
    Reason mean =
        new SupplyWords(gas).mean(from, last, share, days.credit(from), days.credit(last));
    SupplyReasons reasons = existingUnit ? outlook.existing : outlook.bought;
    Optional<Reason> unknownPlace =
        law.known()
            ? Optional.empty()
            : Optional.of(
                SupplyWords.unknownPlace(Objects.toString(jurisdiction, ""), law.source()));
    return new Supply(share, reasons.told(from, last, mean, unknownPlace), law.known());
  }

  private Outlook outlook(Refrigerant gas, List<String> schedules, String kind) {
    return outlooks.computeIfAbsent(
        new Case(gas.designation(), schedules, kind), key -> made(gas, schedules, kind));
  }

  private Outlook made(Refrigerant gas, List<String> schedules, String kind) {
    List<PhaseOutRule> concerning = concerning(gas, schedules, kind);
    return new Outlook(
        new SupplyDays(gas, schedules, concerning, settings),
        new SupplyReasons(gas, schedules, concerning, settings, true),
        new SupplyReasons(gas, schedules, concerning, settings, false));
  }

  private List<PhaseOutRule> concerning(Refrigerant gas, List<String> schedules, String kind) {
    return rules.stream()
        .filter(PhaseOutRule::decidesAnything)
        .filter(rule -> holdsIn(rule, schedules) && rule.concerns(gas))
        .filter(rule -> rule.kinds().isEmpty() || categories.covered(kind, rule.kinds()))
        .toList();
  }

  private static boolean holdsIn(PhaseOutRule rule, List<String> schedules) {
    return rule.schedule().equals(EVERYWHERE) || schedules.contains(rule.schedule());
  }
}

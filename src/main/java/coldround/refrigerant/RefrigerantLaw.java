package coldround.refrigerant;

import coldround.reason.Reason;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * What law leaves of a refrigerant by place and date: production and import limits, quotas, bans of
 * service with new or reclaimed gas, limits for new equipment. None of it is legal advice.
 */
public final class RefrigerantLaw {

  private static final String EVERYWHERE = "*";

  private record Case(String designation, List<String> schedules, String kind) {}

  private final List<PhaseOutRule> rules;
  private final Jurisdictions jurisdictions;
  private final SupplySettings settings;
  private final UnitCategories categories;
  // rules that concern a case never change after loading; scoring asks for the same few again
  private final Map<Case, List<PhaseOutRule>> concerned = new ConcurrentHashMap<>();

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
    List<PhaseOutRule> rules = PhaseOutTable.read(tables);
    Jurisdictions jurisdictions = Jurisdictions.load(tables);
    jurisdictions.check(
        tables, rules.stream().map(PhaseOutRule::schedule).collect(Collectors.toSet()));
    return new RefrigerantLaw(
        rules, jurisdictions, SupplySettings.load(tables), UnitCategories.load(tables));
  }

  /** Every rule that speaks of the refrigerant, anywhere, in the order of the table. */
  public List<PhaseOutRule> rules(Refrigerant gas) {
    return rules.stream().filter(rule -> rule.concerns(gas)).toList();
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
    List<PhaseOutRule> concerning = concerning(gas, law.schedules(), kind);
    SupplyDays days = new SupplyDays(gas, law.schedules(), concerning, settings);
    LocalDate last = to.isAfter(from) ? to : from;
    double share = days.mean(from, last);
    List<Reason> reasons =
        new SupplyReasons(gas, jurisdiction, law, concerning, existingUnit)
            .told(from, last, share, days);
    return new Supply(share, reasons, law.known());
  }

  private List<PhaseOutRule> concerning(Refrigerant gas, List<String> schedules, String kind) {
    return concerned.computeIfAbsent(
        new Case(gas.designation(), schedules, kind),
        key ->
            rules.stream()
                .filter(PhaseOutRule::decidesAnything)
                .filter(rule -> holdsIn(rule, schedules) && rule.concerns(gas))
                .filter(rule -> rule.kinds().isEmpty() || categories.covered(kind, rule.kinds()))
                .toList());
  }

  private static boolean holdsIn(PhaseOutRule rule, List<String> schedules) {
    return rule.schedule().equals(EVERYWHERE) || schedules.contains(rule.schedule());
  }
}

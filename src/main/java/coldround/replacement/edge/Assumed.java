package coldround.replacement.edge;

import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.replacement.Economics;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.UnitDecision;
import coldround.scoring.Assessment;
import coldround.upkeep.Cost;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One figure of the tables that a plan rests on.
 *
 * @param name for programs
 * @param meaning for a person
 * @param low end of the usual range; null if the table has none
 * @param high likewise
 */
record Assumed(
    String name, String meaning, Quantity value, Quantity low, Quantity high, Source source) {

  private static final Map<String, String> GENERAL = new LinkedHashMap<>();

  static {
    GENERAL.put("discount", "real discount rate of a business, where nobody says another");
    GENERAL.put("disposal", "disposal of an old unit");
    GENERAL.put("recovery", "recovery of its refrigerant, a pound");
    GENERAL.put("shutdown", "access and shutdown, once for a site and year");
    GENERAL.put(
        "downtime-hours", "hours without the unit after a fault, where the record is silent");
    GENERAL.put("downtime", "trouble of an hour without the unit, goods apart");
  }

  /** What holds for any plan: scoring/economics.csv. */
  static List<Assumed> rates(Economics economics) {
    return economics.rates().stream()
        .map(
            rate ->
                new Assumed(
                    rate.meaning(),
                    rate.meaning(),
                    rate.shown(),
                    rate.low(),
                    rate.high(),
                    rate.source()))
        .toList();
  }

  /** Rows of scoring/costs.csv that the units of this plan met. */
  static List<Assumed> costs(ReplacementPlan plan, Economics economics) {
    Map<String, Assumed> met = new LinkedHashMap<>();
    for (Cost cost : economics.costs().all()) {
      String meaning = GENERAL.get(cost.group());
      if (meaning != null && !cost.of().equals("federal")) {
        met.put(cost.key(), of(cost, meaning));
      }
    }
    for (UnitDecision decision : plan.decisions()) {
      for (Assumed one : met(decision.outlook().assessment(), economics)) {
        met.putIfAbsent(one.name, one);
      }
    }
    return List.copyOf(met.values());
  }

  private static List<Assumed> met(Assessment unit, Economics economics) {
    String place = unit.history().site().jurisdiction();
    var costs = economics.costs();
    List<Assumed> met = new ArrayList<>();
    met.add(of(costs.of("electricity", "*", place), "electricity, a kWh"));
    met.add(of(costs.of("stock", "food", place), "goods lost, where a fault spoils them"));
    String gas = unit.supply().refrigerant();
    if (!gas.isEmpty()) {
      met.add(of(costs.of("refrigerant", gas, place), gas + ", a pound"));
    }
    Set<String> modes = new LinkedHashSet<>();
    unit.faults().events().forEach(event -> modes.add(event.mode()));
    for (String mode : modes) {
      String row = costs.has("breakdown", mode) ? mode : "other";
      String name = economics.modeName(row);
      met.add(of(costs.of("breakdown", row, place), "call and repair: " + name));
    }
    return met;
  }

  private static Assumed of(Cost cost, String meaning) {
    return new Assumed(cost.key(), meaning, cost.value(), cost.low(), cost.high(), cost.source());
  }

  /** "2.3 % a year". */
  public String shown() {
    return number(value) + unit();
  }

  /** "0 to 5 % a year"; empty without a range. */
  public String range() {
    return low == null || high == null ? "" : number(low) + " to " + number(high) + unit();
  }

  /** Without shouting. */
  public String citation() {
    return source.citation().replace("ASSUMPTION", "assumption");
  }

  private String unit() {
    String label = value.measure().label();
    return label.isEmpty() ? "" : " " + label;
  }

  private static String number(Quantity quantity) {
    String plain =
        java.math.BigDecimal.valueOf(quantity.value()).stripTrailingZeros().toPlainString();
    boolean whole = quantity.value() >= 1000 && quantity.value() == Math.rint(quantity.value());
    return whole ? PlanWords.money(quantity.value()) : plain;
  }
}

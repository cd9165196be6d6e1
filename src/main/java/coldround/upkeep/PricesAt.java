package coldround.upkeep;

import java.util.HashMap;
import java.util.Map;

/** The prices, rates and chances that hold at one place, and what a fault costs there. */
final class PricesAt {

  private static final String OTHER = "other";

  private final Map<String, Map<String, Cost>> groups;
  private final Map<String, Double> repairs = new HashMap<>();
  private final Map<String, Double> withFood = new HashMap<>();

  /**
   * @param groups rows that hold there, by group and by what they are for
   */
  PricesAt(Map<String, Map<String, Cost>> groups) {
    this.groups = groups;
    for (String mode : groups.get("breakdown").keySet()) {
      double repair = of("breakdown", mode).amount();
      repairs.put(mode, repair);
      withFood.put(mode, repair + of("stock-chance", mode).amount() * of("stock", "food").amount());
    }
  }

  /**
   * @param of which one; the row for any is taken when it has none
   * @throws IllegalArgumentException when the table has no row that could hold
   */
  Cost of(String group, String of) {
    Map<String, Cost> rows = groups.getOrDefault(group, Map.of());
    Cost found = rows.get(of);
    if (found == null) {
      found = rows.get(Costs.ANY);
    }
    if (found == null) {
      throw new IllegalArgumentException("no " + group + " of " + of + " in " + Costs.FILE);
    }
    return found;
  }

  /** What one fault costs by its failure mode, goods at risk included where food is kept. */
  double fault(String mode, boolean food) {
    Map<String, Double> costs = food ? withFood : repairs;
    Double known = costs.get(mode);
    return known == null ? costs.get(OTHER) : known;
  }
}

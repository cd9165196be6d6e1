package coldround.upkeep;

import coldround.quantity.Quantity;
import coldround.reason.Source;
import java.util.List;

/**
 * One price, rate or chance: a row of scoring/costs.csv.
 *
 * @param group what it is a figure of, such as labour or breakdown
 * @param of which one of the group, such as a failure mode; * for any
 * @param places jurisdictions it holds for; * for any
 * @param value usual value; money, a percentage or a plain number
 * @param low end of the usual range, null if not told
 * @param high end of the usual range, null if not told
 * @param per what it is per, such as h, kWh or event
 */
public record Cost(
    String key,
    String group,
    String of,
    List<String> places,
    Quantity value,
    Quantity low,
    Quantity high,
    String per,
    Source source) {

  /**
   * @throws IllegalArgumentException when the value is not from low to high or below 0
   */
  public Cost {
    places = List.copyOf(places);
    if (low != null && low.value() > value.value()
        || high != null && high.value() < value.value()) {
      throw new IllegalArgumentException(value + " does not lie between its low and high end");
    }
  }

  /** The number in the measure of its row. */
  public double amount() {
    return value.value();
  }
}

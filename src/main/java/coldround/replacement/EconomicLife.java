package coldround.replacement;

/**
 * How long a new unit is best kept, seen by itself.
 *
 * @param years life with the least equivalent annual cost; the shorter of equal ones
 * @param annualCost that cost
 */
public record EconomicLife(int years, double annualCost) {

  /**
   * @param price paid when bought
   * @param running cost of each year of use, at its end
   * @param salvage worth after each year of use
   */
  public static EconomicLife of(
      double price, double[] running, double[] salvage, Discount discount) {
    EconomicLife best = new EconomicLife(0, Double.POSITIVE_INFINITY);
    for (int life = 1; life <= running.length; life++) {
      double annual = annualCost(price, running, salvage[life - 1], life, discount);
      if (annual < best.annualCost) {
        best = new EconomicLife(life, annual);
      }
    }
    return best;
  }

  /** Equal amounts at the ends of the years of a life that are worth the same as all it costs. */
  public static double annualCost(
      double price, double[] running, double salvage, int life, Discount discount) {
    double present = price - salvage * discount.spv(life);
    for (int year = 1; year <= life; year++) {
      present += running[year - 1] * discount.spv(year);
    }
    return present * discount.annualWorth(life);
  }
}

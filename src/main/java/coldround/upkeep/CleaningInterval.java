package coldround.upkeep;

/**
 * How long to wait between two cleanings when the cost of running dirty grows evenly with time: k·t
 * money a day, t days after a cleaning that costs C.
 */
public final class CleaningInterval {

  private static final int STEPS = 50;
  private static final double CLOSE_DAYS = 1e-9;

  private CleaningInterval() {}

  /**
   * √(2C/k), where the mean cost C/T + kT/2 is least.
   *
   * @param cost of a cleaning, above 0
   * @param perDaySquared growth of the daily cost of running dirty, above 0
   * @return days
   */
  public static double days(double cost, double perDaySquared) {
    check(cost, perDaySquared);
    return Math.sqrt(2 * cost / perDaySquared);
  }

  /** The least mean cost a day, √(2Ck). */
  public static double costPerDay(double cost, double perDaySquared) {
    check(cost, perDaySquared);
    return Math.sqrt(2 * cost * perDaySquared);
  }

  /**
   * The same with money discounted: the root of T − (1 − e^(−rT))/r = rC/k, which lies a little
   * above √(2C/k).
   *
   * @param ratePerYear such as 0.07, not below 0; continuous rate ln(1 + i)/365 a day
   * @return days
   */
  public static double discountedDays(double cost, double perDaySquared, double ratePerYear) {
    double days = days(cost, perDaySquared);
    if (ratePerYear == 0) {
      return days;
    }
    if (!(ratePerYear > 0)) {
      throw new IllegalArgumentException("the discount rate must not be below 0: " + ratePerYear);
    }
    double r = Math.log1p(ratePerYear) / 365;
    double wanted = r * cost / perDaySquared;
    for (int i = 0; i < STEPS; i++) {
      double step = (days + Math.expm1(-r * days) / r - wanted) / -Math.expm1(-r * days);
      days -= step;
      if (Math.abs(step) < CLOSE_DAYS) {
        break;
      }
    }
    return days;
  }

  private static void check(double cost, double perDaySquared) {
    if (!(cost > 0 && perDaySquared > 0)) {
      throw new IllegalArgumentException(
          "cost and growth must be above 0, not " + cost + " and " + perDaySquared);
    }
  }
}

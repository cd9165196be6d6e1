package coldround.replacement;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * When one unit is best replaced, without regard to any limit.
 *
 * @param totals worth today of all costs to the horizon if it is replaced at the start of year 0,
 *     1, ... ; the last one is for keeping it through the horizon
 * @param year where the total is least, the earlier of equal ones; the number of years for keeping
 *     it through the horizon
 */
public record BestYear(double[] totals, int year) {

  public BestYear {
    totals = totals.clone();
  }

  @Override
  public double[] totals() {
    return totals.clone();
  }

  /**
   * The unit is kept until its year comes or it dies. A unit that dies in a year is replaced at the
   * end of that year, at a surcharge.
   *
   * @param keeping cost of each year of keeping, at its end
   * @param dying chance of dying in each year for one that began it
   * @param worth of the old unit at the start of each year, and at the horizon
   * @param surcharge of a replacement nobody planned, in money of today
   */
  public static BestYear of(
      double[] keeping,
      double[] dying,
      double[] worth,
      double surcharge,
      Successors successors,
      Discount discount) {
    int horizon = keeping.length;
    double[] totals = new double[horizon + 1];
    double kept = 0;
    double alive = 1;
    for (int year = 0; year <= horizon; year++) {
      totals[year] = kept + alive * discount.spv(year) * (successors.presentAt(year) - worth[year]);
      if (year < horizon) {
        double afterDeath = successors.presentAt(year + 1) + surcharge;
        kept += alive * discount.spv(year + 1) * (keeping[year] + dying[year] * afterDeath);
        alive *= 1 - dying[year];
      }
    }
    return new BestYear(totals, least(totals));
  }

  private static int least(double[] totals) {
    int least = 0;
    for (int i = 1; i < totals.length; i++) {
      if (totals[i] < totals[least]) {
        least = i;
      }
    }
    return least;
  }

  public int horizon() {
    return totals.length - 1;
  }

  public boolean withinHorizon() {
    return year < horizon();
  }

  public double least() {
    return totals[year];
  }

  /** What it costs to be that many years early (below 0) or late; empty outside the horizon. */
  public OptionalDouble costOfShift(int years) {
    int other = year + years;
    return other < 0 || other > horizon()
        ? OptionalDouble.empty()
        : OptionalDouble.of(totals[other] - least());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BestYear that
        && year == that.year
        && Arrays.equals(totals, that.totals);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(totals);
  }
}

package coldround.replacement;

import java.time.LocalDate;

/**
 * What a plan is computed under. Inside, all money is in money of today and the rate is real; a
 * nominal plan is told in money of its years.
 *
 * @param asOf day that the units are judged on; discounting is to the start of the first year
 * @param firstYear calendar year that the plan begins with
 * @param horizon years looked ahead
 * @param discount real rate
 * @param inflation share a year
 * @param nominal true when limits and spending are told in money of their year
 */
public record Terms(
    LocalDate asOf,
    int firstYear,
    int horizon,
    Discount discount,
    double inflation,
    boolean nominal) {

  /** Longest horizon that is computed. */
  public static final int LONGEST = 20;

  public Terms {
    if (horizon < 1 || horizon > LONGEST) {
      throw new IllegalArgumentException("a horizon is 1 to " + LONGEST + " years");
    }
  }

  /** Years from the day of judgement to the start of the plan. */
  double lead() {
    LocalDate start = LocalDate.of(firstYear, 1, 1);
    return Math.max(0, (start.toEpochDay() - asOf.toEpochDay()) / 365.25);
  }

  /** What one in money of today is in the money that a year of the plan is told in. */
  public double told(int year) {
    return nominal ? Math.pow(1 + inflation, year) : 1;
  }

  public Terms with(Discount other) {
    return new Terms(asOf, firstYear, horizon, other, inflation, nominal);
  }
}

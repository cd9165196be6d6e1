package coldround.replacement;

/**
 * Discount factors by a constant yearly rate, amounts falling at the ends of years, in the terms of
 * NIST Handbook 135. A real rate goes with amounts in money of today, a nominal rate with amounts
 * in money of their year; the two are never mixed.
 *
 * @param rate share a year, such as 0.03
 */
public record Discount(double rate) {

  /**
   * @throws IllegalArgumentException unless the rate is a number above -1
   */
  public Discount {
    if (!(rate > -1 && Double.isFinite(rate))) {
      throw new IllegalArgumentException("a discount rate must be above -100 %, not " + rate);
    }
  }

  /** The nominal rate for a real one: (1 + D) = (1 + d)(1 + i). */
  public static Discount nominal(double real, double inflation) {
    return new Discount((1 + real) * (1 + inflation) - 1);
  }

  /** The real rate for this nominal one. */
  public Discount real(double inflation) {
    return new Discount((1 + rate) / (1 + inflation) - 1);
  }

  /** Single present value: what one falling due after that many years is worth today. */
  public double spv(int years) {
    return Math.pow(1 + rate, -years);
  }

  /** Uniform present value: what one at the end of each of that many years is worth today. */
  public double upv(int years) {
    return upvEscalating(0, years);
  }

  /** Modified uniform present value (UPV*): the same for an amount that grows every year. */
  public double upvEscalating(double growth, int years) {
    double sum = 0;
    double factor = 1;
    for (int year = 1; year <= years; year++) {
      factor *= (1 + growth) / (1 + rate);
      sum += factor;
    }
    return sum;
  }

  /** Annual worth factor A/P: equal amounts at the ends of years that are worth one today. */
  public double annualWorth(int years) {
    return 1 / upv(years);
  }
}

package coldround.refrigerant;

import coldround.reason.Reason;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;

/**
 * A leak rate as an exact fraction of the full charge a year, in percent.
 *
 * @param date day it is computed for: of the latest addition (annualizing) or asked for (rolling)
 * @param numerator of the rate in percent a year
 * @param denominator above zero
 * @param reasons the calculation, and what was assumed or wants a look
 */
public record LeakRate(
    LeakMethod method,
    LocalDate date,
    BigDecimal numerator,
    BigDecimal denominator,
    List<Reason> reasons) {

  private static final int DECIMALS = 2;
  private static final int MORE_DECIMALS = 8;

  /**
   * @throws IllegalArgumentException when the fraction is none
   */
  public LeakRate {
    if (numerator.signum() < 0 || denominator.signum() <= 0) {
      throw new IllegalArgumentException("no leak rate: " + numerator + " over " + denominator);
    }
    reasons = List.copyOf(reasons);
  }

  /** For computing on; comparing with a threshold is {@link #over}. */
  public double percentPerYear() {
    return numerator.divide(denominator, MathContext.DECIMAL64).doubleValue();
  }

  /** Strictly over: a rate that equals the threshold is not. */
  public boolean over(BigDecimal thresholdPercent) {
    return numerator.compareTo(thresholdPercent.multiply(denominator)) > 0;
  }

  /** Rounded half up for a reader. */
  public BigDecimal rounded(int decimals) {
    return numerator.divide(denominator, decimals, RoundingMode.HALF_UP);
  }

  /** With as many decimals as it takes not to look equal to a threshold that it is not. */
  String told(BigDecimal thresholdPercent) {
    BigDecimal plain = rounded(DECIMALS);
    boolean looksEqual = plain.compareTo(thresholdPercent) == 0;
    boolean equal = numerator.compareTo(thresholdPercent.multiply(denominator)) == 0;
    return (looksEqual && !equal ? rounded(MORE_DECIMALS) : plain) + " % a year";
  }
}

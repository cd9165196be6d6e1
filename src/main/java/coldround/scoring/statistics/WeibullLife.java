package coldround.scoring.statistics;

import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.statistics.distribution.WeibullDistribution;

/**
 * A two-parameter Weibull distribution of the age at the end of life.
 *
 * @param shape above 1 when the chance of failing grows with age
 * @param scaleYears age by which 63.2 % are gone
 */
public record WeibullLife(double shape, double scaleYears) {

  /**
   * @throws IllegalArgumentException unless both are above 0
   */
  public WeibullLife {
    if (!(shape > 0 && scaleYears > 0)) {
      throw new IllegalArgumentException("shape " + shape + " and scale " + scaleYears);
    }
  }

  public static WeibullLife ofMedian(double medianYears, double shape) {
    return new WeibullLife(shape, medianYears / Math.pow(Math.log(2), 1 / shape));
  }

  public static WeibullLife ofMean(double meanYears, double shape) {
    return new WeibullLife(shape, meanYears / Math.exp(LogGamma.value(1 + 1 / shape)));
  }

  public double medianYears() {
    return scaleYears * Math.pow(Math.log(2), 1 / shape);
  }

  public double meanYears() {
    return scaleYears * Math.exp(LogGamma.value(1 + 1 / shape));
  }

  /** Share that is gone by that age. */
  public double goneBy(double years) {
    return -Math.expm1(-hazard(years));
  }

  /** Chance of failing within a span for one that has reached an age. */
  public double failsWithin(double ageYears, double spanYears) {
    return -Math.expm1(hazard(ageYears) - hazard(ageYears + spanYears));
  }

  /** Age by which that share is gone. */
  public double ageAt(double share) {
    return WeibullDistribution.of(shape, scaleYears).inverseCumulativeProbability(share);
  }

  /** Mean residual life: years still to be expected by one that has reached an age. */
  public double remainingYears(double ageYears) {
    double u = hazard(ageYears);
    double tail = IncompleteGammaTail.scaled(1 / shape, u);
    return scaleYears / shape * tail;
  }

  private double hazard(double years) {
    return years <= 0 ? 0 : Math.pow(years / scaleYears, shape);
  }
}

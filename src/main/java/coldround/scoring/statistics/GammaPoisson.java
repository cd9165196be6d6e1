package coldround.scoring.statistics;

import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * A rate of events known as a gamma distribution; counts from it are Poisson, so a count not yet
 * seen is negative binomial.
 *
 * @param shape of the gamma distribution
 * @param years its rate parameter: as much weight as that many years of record
 */
public record GammaPoisson(double shape, double years) {

  /**
   * @throws IllegalArgumentException unless both are above 0
   */
  public GammaPoisson {
    if (!(shape > 0 && years > 0)) {
      throw new IllegalArgumentException("shape " + shape + " and years " + years);
    }
  }

  /** After that many events in that many years. */
  public GammaPoisson after(int events, double observedYears) {
    return new GammaPoisson(shape + events, years + observedYears);
  }

  /** The rate of a kind of event that is this share of all, as far as is known beforehand. */
  public GammaPoisson part(double share) {
    return new GammaPoisson(shape * share, years);
  }

  /** Expected rate a year. */
  public double mean() {
    return shape / years;
  }

  public double sd() {
    return Math.sqrt(shape) / years;
  }

  /** Chance of no event in a span. */
  public double none(double spanYears) {
    return Math.exp(shape * -Math.log1p(spanYears / years));
  }

  /** Chance of at least one event in a span. */
  public double atLeastOne(double spanYears) {
    return -Math.expm1(shape * -Math.log1p(spanYears / years));
  }

  /** Least count in a span whose cumulative probability reaches p. */
  public int countQuantile(double spanYears, double p) {
    double q = spanYears / (years + spanYears);
    double mass = none(spanYears);
    double sum = mass;
    int count = 0;
    while (sum < p && mass > 0) {
      mass *= q * (shape + count) / (count + 1);
      count++;
      sum += mass;
    }
    return count;
  }

  /** Chance that the rate is above a value. */
  public double rateAbove(double rate) {
    return GammaDistribution.of(shape, 1 / years).survivalProbability(rate);
  }

  /** Rate that is exceeded with chance 1 - p. */
  public double rateQuantile(double p) {
    return GammaDistribution.of(shape, 1).inverseCumulativeProbability(p) / years;
  }
}

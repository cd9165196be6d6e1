package coldround.scoring.statistics;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Trend of the events of one repairable system from their ages, as in the NIST/SEMATECH e-Handbook
 * section 8.2.3.4 and MIL-HDBK-189. Observation either ends at a given time (time-truncated) or at
 * the last event (then that event does not count towards the tests).
 *
 * @param events events counted
 * @param end length of the observation
 * @param sum of their ages
 * @param logSum of ln(end / age) over them
 */
public record EventTrend(int events, double end, double sum, double logSum) {

  /**
   * Observed to a time that is not an event's.
   *
   * @param ages above 0 and up to end, in any order
   */
  public static EventTrend toTime(double end, double... ages) {
    double sum = 0;
    double logSum = 0;
    for (double age : ages) {
      if (!(age > 0 && age <= end)) {
        throw new IllegalArgumentException("age " + age + " is outside 0 to " + end);
      }
      sum += age;
      logSum += Math.log(end / age);
    }
    return new EventTrend(ages.length, end, sum, logSum);
  }

  /** Laplace statistic: standard normal without a trend, above 0 when events come faster. */
  public double laplace() {
    return Math.sqrt(12.0 * events) * (sum - events * end / 2) / (events * end);
  }

  /** Military Handbook statistic, chi-squared with {@link #degrees} without a trend. */
  public double militaryHandbook() {
    return 2 * logSum;
  }

  public int degrees() {
    return 2 * events;
  }

  /** Chance of events that come faster at least this strongly although the rate is constant. */
  public double worseningSignificance() {
    return ChiSquaredDistribution.of(degrees()).cumulativeProbability(militaryHandbook());
  }

  /** Chance of events that come slower at least this strongly although the rate is constant. */
  public double improvingSignificance() {
    return ChiSquaredDistribution.of(degrees()).survivalProbability(militaryHandbook());
  }

  /** Exponent of the power law by maximum likelihood (Crow–AMSAA, time-truncated). */
  public double shape() {
    return events / logSum;
  }

  /** The same without bias. */
  public double unbiasedShape() {
    return (events - 1) / logSum;
  }

  /** Factor of the power law: expected events by age t are scale × t^shape. */
  public double scale() {
    return events / Math.pow(end, shape());
  }

  /** Fitted events per unit of time at the end. */
  public double intensity() {
    return shape() * events / end;
  }
}

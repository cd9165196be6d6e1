package coldround.scoring.statistics;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Test for a trend of any shape in a series (Mann 1945, Kendall; with ties as in Gilbert 1987).
 *
 * @param s pairs that rise less pairs that fall
 * @param variance of s without a trend
 */
public record MannKendall(long s, double variance) {

  /** Of a series in the order of time. */
  public static MannKendall of(double... series) {
    long s = 0;
    for (int i = 0; i < series.length; i++) {
      for (int j = i + 1; j < series.length; j++) {
        s += (long) Math.signum(series[j] - series[i]);
      }
    }
    return new MannKendall(s, (pairs(series.length) - ties(series)) / 18);
  }

  private static double ties(double[] series) {
    double[] sorted = series.clone();
    Arrays.sort(sorted);
    double ties = 0;
    int from = 0;
    for (int i = 1; i <= sorted.length; i++) {
      if (i == sorted.length || sorted[i] != sorted[from]) {
        ties += pairs(i - from);
        from = i;
      }
    }
    return ties;
  }

  private static double pairs(int n) {
    return n * (n - 1.0) * (2.0 * n + 5);
  }

  /** Standard normal statistic with continuity correction; 0 when s is 0. */
  public double z() {
    return s == 0 ? 0 : (s - Math.signum(s)) / Math.sqrt(variance);
  }

  /** Two-sided chance of an s at least this far from 0 without a trend, by the normal law. */
  public double significance() {
    return 2 * NormalDistribution.of(0, 1).survivalProbability(Math.abs(z()));
  }
}

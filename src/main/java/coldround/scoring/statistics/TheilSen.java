package coldround.scoring.statistics;

import java.util.Arrays;

/**
 * Robust straight line: the median of the slopes of all pairs (Theil 1950, Sen 1968). Up to about a
 * quarter of bad points do not carry it away.
 */
public final class TheilSen {

  private TheilSen() {}

  /**
   * @return median slope over all pairs with different x; NaN when there is no such pair
   */
  public static double slope(double[] x, double[] y) {
    double[] slopes = new double[x.length * (x.length - 1) / 2];
    int count = 0;
    for (int i = 0; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        if (x[i] != x[j]) {
          slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
        }
      }
    }
    return count == 0 ? Double.NaN : median(Arrays.copyOf(slopes, count));
  }

  /** Middle value; mean of the two middle ones for an even count. */
  public static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}

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
    double[] ordered = values.clone();
    int half = ordered.length / 2;
    double upper = select(ordered, half);
    if (ordered.length % 2 == 1) {
      return upper;
    }
    double lower = ordered[0];
    for (int i = 1; i < half; i++) {
      lower = Math.max(lower, ordered[i]);
    }
    return (lower + upper) / 2;
  }

  /**
   * The value that has so many below it when all are in order; afterwards none before that place is
   * greater (Hoare 1961, Algorithm 65: FIND, with the middle of three to part by). Sorting all
   * slopes of a hundred visits took several times as long.
   */
  private static double select(double[] values, int place) {
    int from = 0;
    int to = values.length - 1;
    while (from < to) {
      double part = middle(values[from], values[(from + to) >>> 1], values[to]);
      int left = from;
      int right = to;
      while (left <= right) {
        while (values[left] < part) {
          left++;
        }
        while (values[right] > part) {
          right--;
        }
        if (left <= right) {
          double swapped = values[left];
          values[left++] = values[right];
          values[right--] = swapped;
        }
      }
      if (place <= right) {
        to = right;
      } else if (place >= left) {
        from = left;
      } else {
        return values[place];
      }
    }
    return values[place];
  }

  private static double middle(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}

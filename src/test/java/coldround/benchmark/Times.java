package coldround.benchmark;

import java.util.Arrays;

/** How long each of many calls took. */
final class Times {

  private long[] nanos = new long[1024];
  private int count;

  void add(long taken) {
    if (count == nanos.length) {
      nanos = Arrays.copyOf(nanos, 2 * count);
    }
    nanos[count++] = taken;
  }

  /** The one in the middle of values in any order. */
  static double middle(double... values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  int count() {
    return count;
  }

  /**
   * Milliseconds that a share of the calls took at most, by nearest rank.
   *
   * @param share above 0; 1 for the slowest
   * @throws IllegalStateException when there was no call
   */
  double ms(double share) {
    if (count == 0) {
      throw new IllegalStateException("nothing was measured");
    }
    long[] sorted = Arrays.copyOf(nanos, count);
    Arrays.sort(sorted);
    return sorted[(int) Math.ceil(share * count) - 1] / 1e6;
  }
}

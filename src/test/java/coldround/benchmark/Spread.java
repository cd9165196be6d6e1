package coldround.benchmark;

import java.util.Arrays;

/**
 * What several rounds of the same have in common.
 *
 * @param rounds at least one
 */
record Spread(int rounds, double median, double least, double greatest) {

  static Spread of(double... values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return new Spread(
        sorted.length, sorted[sorted.length / 2], sorted[0], sorted[sorted.length - 1]);
  }
}

package coldround.replacement;

import java.util.SplittableRandom;

/** Random numbers of one unit in one run, the same for every policy and every order of units. */
final class Chance {

  private final SplittableRandom random;

  Chance(long seed, int run, int unit) {
    long mixed = mix(mix(seed) + run);
    random = new SplittableRandom(mix(mixed + unit));
  }

  // finalizer of the 64-bit generator SplitMix (Steele, Lea and Flood 2014), so that neighbours
  // differ
  private static long mix(long x) {
    long z = x + 0x9E3779B97F4A7C15L;
    z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
    z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
    return z ^ z >>> 31;
  }

  double uniform() {
    return random.nextDouble();
  }

  /** Mean one, and that standard deviation. */
  double lognormal(double sd) {
    double variance = Math.log1p(sd * sd);
    return Math.exp(Math.sqrt(variance) * random.nextGaussian() - variance / 2);
  }

  /** Mean and variance both that shape (Marsaglia and Tsang 2000). */
  double gamma(double shape) {
    double boost = shape < 1 ? Math.pow(1 - random.nextDouble(), 1 / shape) : 1;
    double d = (shape < 1 ? shape + 1 : shape) - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double v = 1 + c * x;
      if (v > 0) {
        v = v * v * v;
        double u = 1 - random.nextDouble();
        if (Math.log(u) < x * x / 2 + d - d * v + d * Math.log(v)) {
          return boost * d * v;
        }
      }
    }
  }

  /** Number of events by inversion: grows with the mean for the same uniform number. */
  static int poisson(double mean, double uniform) {
    double mass = Math.exp(-mean);
    double sum = mass;
    int count = 0;
    while (sum < uniform && count < MOST) {
      count++;
      mass *= mean / count;
      sum += mass;
    }
    return count;
  }

  private static final int MOST = 1000;
}

package coldround.demo;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Chance with a fixed seed: one source per unit and purpose, so that a change to one unit leaves
 * the others as they are.
 */
final class Chance {

  private static final long SEED = 20261125L;
  private final SplittableRandom random;

  Chance(String name) {
    // String.hashCode is fixed by the language, so the same name gives the same numbers everywhere
    this.random = new SplittableRandom(SEED * 31 + name.hashCode());
  }

  double between(double least, double greatest) {
    return least + (greatest - least) * random.nextDouble();
  }

  boolean happens(double probability) {
    return random.nextDouble() < probability;
  }

  int whole(int least, int greatest) {
    return random.nextInt(least, greatest + 1);
  }

  /** Bell-shaped about zero: the sum of twelve even draws has a variance of one. */
  double spread(double sd) {
    double sum = -6;
    for (int i = 0; i < 12; i++) {
      sum += random.nextDouble();
    }
    return sum * sd;
  }

  <T> T pick(List<T> items) {
    return items.get(random.nextInt(items.size()));
  }
}

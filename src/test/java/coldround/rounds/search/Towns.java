package coldround.rounds.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;

/** Invented problems for the tests: places on a plane, one distance unit taking one minute. */
final class Towns {

  private Towns() {}

  /** Distances between random places of a square. */
  static Matrix square(int places, double side, Random random) {
    double[] x = random.doubles(places, 0, side).toArray();
    double[] y = random.doubles(places, 0, side).toArray();
    double[][] rows = new double[places][places];
    for (int i = 0; i < places; i++) {
      for (int j = 0; j < places; j++) {
        rows[i][j] = Math.hypot(x[i] - x[j], y[i] - y[j]);
      }
    }
    return Matrix.of(rows);
  }

  /** Places on a line at the given points. */
  static Matrix line(double... points) {
    double[][] rows = new double[points.length][points.length];
    for (int i = 0; i < points.length; i++) {
      for (int j = 0; j < points.length; j++) {
        rows[i][j] = Math.abs(points[i] - points[j]);
      }
    }
    return Matrix.of(rows);
  }

  /** One mandatory stop of ten minutes at each place after the first. */
  static List<Stop> stopsAt(Matrix matrix) {
    return IntStream.range(1, matrix.size()).mapToObj(i -> Stop.at("stop " + i, i, 10)).toList();
  }

  /**
   * A random problem that uses everything: shifts with overtime, breaks, skills, pins, several
   * windows, optional stops, prices by vehicle and ways that differ by direction.
   */
  static Problem mixed(int stops, int vehicles, long seed) {
    Random random = new Random(seed);
    Matrix distance = skewed(square(stops + 2, 60, random), random);
    List<Vehicle> fleet = new ArrayList<>();
    for (int v = 0; v < vehicles; v++) {
      double begins = 480 + 30 * random.nextInt(3);
      Rest rest = random.nextBoolean() ? new Rest(30, begins + 90, begins + 180) : Rest.NONE;
      fleet.add(
          Vehicle.of(
                  "vehicle " + v,
                  0,
                  new Shift(begins, begins + 240, begins + 300),
                  new Rates(random.nextInt(20), 0.5, 0.4, 0.3))
              .withRest(rest)
              .endingAt(random.nextInt(2))
              .withCapacity(4 + random.nextInt(4))
              .withSkills(random.nextBoolean() ? Set.of("ammonia") : Set.of()));
    }
    List<Stop> all = new ArrayList<>();
    for (int s = 0; s < stops; s++) {
      all.add(stop(s, vehicles, random));
    }
    int step = random.nextInt(5);
    return new Problem(fleet, all, distance, distance, (s, v) -> (s + v) % 4 * step);
  }

  private static Stop stop(int s, int vehicles, Random random) {
    Stop stop = Stop.at("stop " + s, s + 2, 5 + random.nextInt(30)).withDemand(random.nextInt(3));
    if (random.nextBoolean()) {
      stop = stop.optional(random.nextInt(80));
    }
    if (random.nextInt(4) == 0) {
      stop = stop.needing(Set.of("ammonia"));
    }
    if (random.nextInt(6) == 0) {
      stop = stop.pinned(random.nextInt(vehicles));
    }
    double opens = 480 + random.nextInt(200);
    return switch (random.nextInt(3)) {
      case 0 -> stop;
      case 1 -> stop.within(new Window(opens, opens + 60));
      default ->
          stop.within(new Window(opens + 120, opens + 150), new Window(opens - 60, opens - 30));
    };
  }

  private static Matrix skewed(Matrix matrix, Random random) {
    int size = matrix.size();
    double[][] rows = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        rows[i][j] = i == j ? 0 : matrix.between(i, j) * (1 + random.nextDouble() / 5);
      }
    }
    return Matrix.of(rows);
  }
}

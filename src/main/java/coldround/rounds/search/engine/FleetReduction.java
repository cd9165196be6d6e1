package coldround.rounds.search.engine;

import java.util.Arrays;

/**
 * Serves all mandatory stops, then with ever fewer tours: each stop counts how often it was left
 * out, and a step is kept if the stops it leaves out count less (Christiaens and Vanden Berghe,
 * 2020).
 */
final class FleetReduction {

  private final Solution solution;
  private final Model model;
  private final Ruin ruin;
  private final Recreate recreate;
  private final Chance chance;
  private final Snapshot best;
  private final long[] absences;
  private long absentSum;
  private boolean vehicles;
  private int least;

  FleetReduction(Solution solution, Ruin ruin, Recreate recreate, Chance chance, Snapshot best) {
    this.solution = solution;
    this.model = solution.model;
    this.ruin = ruin;
    this.recreate = recreate;
    this.chance = chance;
    this.best = best;
    absences = new long[model.stops];
  }

  /**
   * Begins from the present solution.
   *
   * @param fewerVehicles whether to empty tours once all mandatory stops are served
   * @param leastVehicles number of tours below which no plan can come
   */
  void start(boolean fewerVehicles, int leastVehicles) {
    vehicles = fewerVehicles;
    least = leastVehicles;
    Arrays.fill(absences, 1);
    keep();
  }

  boolean finished() {
    return best.missing == 0 && (!vehicles || best.toursUsed() <= least);
  }

  void step() {
    int missing = solution.missing;
    double cost = solution.cost;
    solution.begin();
    ruin.run();
    recreate.run(ruin.seed);
    long sum = sumOfAbsences();
    boolean better = sum < absentSum || sum == absentSum && solution.cost < cost + wander();
    countAbsences();
    if (better || solution.missing < missing) {
      absentSum = sumOfAbsences();
      keep();
    } else {
      solution.rollback();
      absentSum = sumOfAbsences();
    }
  }

  /** A step that leaves out the same may cost a little more, so that the search moves on. */
  private double wander() {
    return -Math.log(chance.unit()) * 0.1 * solution.cost / Math.max(1, model.active.length);
  }

  private long sumOfAbsences() {
    long sum = 0;
    for (int i = 0; i < solution.absentCount; i++) {
      int stop = solution.absent[i];
      sum += model.mandatory[stop] ? absences[stop] : 0;
    }
    return sum;
  }

  private void countAbsences() {
    for (int i = 0; i < solution.absentCount; i++) {
      absences[solution.absent[i]]++;
    }
  }

  /** Notes a plan that serves more or uses fewer vehicles, and empties one more tour. */
  private void keep() {
    boolean fewer = vehicles && solution.used < best.toursUsed();
    if (solution.missing < best.missing || solution.missing == best.missing && fewer) {
      best.take(solution);
    }
    if (vehicles && solution.missing == 0 && solution.used > least) {
      solution.mostUsed = solution.used - 1;
      solution.begin();
      solution.dissolve(easiest());
    }
    absentSum = sumOfAbsences();
  }

  /** The tour whose stops were left out least. */
  private int easiest() {
    int found = Solution.NOWHERE;
    long fewest = Long.MAX_VALUE;
    for (int v = 0; v < solution.tours.length; v++) {
      Tour tour = solution.tours[v];
      long sum = 0;
      for (int k = 1; k <= tour.size; k++) {
        sum += absences[tour.node[k]];
      }
      if (tour.size > 0 && sum < fewest) {
        fewest = sum;
        found = v;
      }
    }
    return found;
  }
}

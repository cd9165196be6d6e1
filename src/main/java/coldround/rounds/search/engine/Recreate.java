package coldround.rounds.search.engine;

import java.util.Arrays;

/**
 * Puts absent stops where they cost least, overlooking some places at random ("greedy insertion
 * with blinks" of Christiaens and Vanden Berghe, 2020). A stop that may be left out goes in only
 * for less than its price, or now and then a little more: two far stops may pay together though
 * neither does alone.
 */
final class Recreate {

  /** Up to this many stops every tour is tried; beyond, the tours of near stops. */
  private static final int SMALL = 300;

  private static final int NEAR = 60;

  /** Most stops tried that were absent before the ruin, mandatory ones not counted. */
  private static final int MOST_ABSENT = 24;

  /** Share of runs that let optional stops in above their price, and how far above. */
  private static final double GENEROUS_SHARE = 0.2;

  private static final double MOST_GENEROUS = 3;

  private final Solution solution;
  private final Model model;
  private final Chance chance;
  private final Orders orders;
  private final int[][] nearStops;
  private final long[] queue;
  private int queued;
  private final int[] usedTours;
  private int usedCount;
  private final int[] emptyOfKind;
  private final int[] seenAt;
  private int look;
  private double generosity;
  private double best;
  private int bestVehicle;

  Recreate(Solution solution, Orders orders, Chance chance) {
    this.solution = solution;
    this.model = solution.model;
    this.chance = chance;
    nearStops = model.near();
    this.orders = orders;
    queue = new long[model.stops];
    usedTours = new int[model.vehicles];
    emptyOfKind = new int[model.fleet.kinds];
    seenAt = new int[model.vehicles];
  }

  /** Tries the stops just removed, all mandatory absent ones, and optional ones near the seed. */
  void run(int seed) {
    boolean generous = model.anyOptional && chance.unit() < GENEROUS_SHARE;
    generosity = generous ? 1 + (MOST_GENEROUS - 1) * chance.unit() : 1;
    float[] keys = orders.choose(chance);
    queued = 0;
    boolean all = solution.absentAtBegin() <= MOST_ABSENT;
    for (int i = 0; i < solution.absentCount; i++) {
      int stop = solution.absent[i];
      if (all || i >= solution.absentAtBegin() || model.mandatory[stop]) {
        enqueue(stop, keys);
      }
    }
    if (!all) {
      enqueueNear(seed, keys);
    }
    placeQueued();
  }

  /** Tries every absent stop, in a random order of orders. */
  void runAll() {
    generosity = 1;
    float[] keys = orders.choose(chance);
    queued = 0;
    for (int i = 0; i < solution.absentCount; i++) {
      enqueue(solution.absent[i], keys);
    }
    placeQueued();
  }

  private void enqueue(int stop, float[] keys) {
    if (solution.isOwn[stop]) {
      float key = keys == null ? (float) chance.unit() : keys[stop];
      int bits = Float.floatToRawIntBits(key);
      queue[queued++] = ((long) (bits ^ ((bits >> 31) & 0x7fffffff)) << 32) | stop;
    }
  }

  /** Absent optional stops by distance from the seed; those removed just now are queued already. */
  private void enqueueNear(int seed, float[] keys) {
    for (int i = solution.absentAtBegin(); i < solution.absentCount; i++) {
      solution.marked[solution.absent[i]] = true;
    }
    int wanted = MOST_ABSENT;
    enqueueNear(seed, keys, wanted);
    for (int i = solution.absentAtBegin(); i < solution.absentCount; i++) {
      solution.marked[solution.absent[i]] = false;
    }
  }

  private void enqueueNear(int seed, float[] keys, int wanted) {
    int left = wanted - consider(seed, keys);
    int[] near = nearStops[seed];
    for (int i = 0; i < near.length && left > 0; i++) {
      left -= consider(near[i], keys);
    }
  }

  private int consider(int stop, float[] keys) {
    boolean wanted =
        solution.tourOf[stop] == Solution.NOWHERE
            && !solution.marked[stop]
            && !model.mandatory[stop];
    if (wanted) {
      enqueue(stop, keys);
    }
    return wanted ? 1 : 0;
  }

  private void placeQueued() {
    Arrays.sort(queue, 0, queued);
    listTours();
    for (int i = 0; i < queued; i++) {
      place((int) queue[i]);
    }
    solution.dropPlaced();
  }

  private void listTours() {
    usedCount = 0;
    Arrays.fill(emptyOfKind, Solution.NOWHERE);
    for (int v = model.vehicles - 1; v >= 0; v--) {
      if (!solution.open[v]) {
        continue;
      }
      if (solution.tours[v].size > 0) {
        usedTours[usedCount++] = v;
      } else {
        emptyOfKind[model.fleet.kind[v]] = v;
      }
    }
  }

  private void place(int stop) {
    best = model.mandatory[stop] ? Double.POSITIVE_INFINITY : model.price[stop] * generosity;
    bestVehicle = Solution.NOWHERE;
    boolean small = model.active.length <= SMALL;
    if (small) {
      tryUsed(stop);
    } else {
      tryNear(stop);
    }
    tryEmpty(stop);
    if (bestVehicle == Solution.NOWHERE && !small && model.mandatory[stop]) {
      tryUsed(stop);
    }
    if (bestVehicle != Solution.NOWHERE) {
      insert(stop);
    }
  }

  private void tryUsed(int stop) {
    for (int i = 0; i < usedCount; i++) {
      tryTour(stop, usedTours[i]);
    }
  }

  private void tryNear(int stop) {
    look++;
    int[] near = nearStops[stop];
    int last = Math.min(NEAR, near.length);
    for (int i = 0; i < last; i++) {
      int v = solution.tourOf[near[i]];
      if (v != Solution.NOWHERE && seenAt[v] != look && solution.open[v]) {
        seenAt[v] = look;
        tryTour(stop, v);
      }
    }
  }

  private void tryEmpty(int stop) {
    if (solution.used < solution.mostUsed) {
      for (int v : emptyOfKind) {
        if (v != Solution.NOWHERE) {
          tryTour(stop, v);
        }
      }
    }
  }

  private void tryTour(int stop, int v) {
    double cost = solution.tours[v].bestInsertion(stop, best, chance);
    if (cost < best) {
      best = cost;
      bestVehicle = v;
    }
  }

  private void insert(int stop) {
    int v = bestVehicle;
    Tour tour = solution.tours[v];
    boolean opened = tour.size == 0;
    solution.insert(stop, v, tour.insertAfter);
    if (opened) {
      usedTours[usedCount++] = v;
      emptyOfKind[model.fleet.kind[v]] = nextEmpty(v);
    }
  }

  private int nextEmpty(int vehicle) {
    int kind = model.fleet.kind[vehicle];
    for (int v = 0; v < model.vehicles; v++) {
      if (model.fleet.kind[v] == kind && solution.open[v] && solution.tours[v].size == 0) {
        return v;
      }
    }
    return Solution.NOWHERE;
  }
}

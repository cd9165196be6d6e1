package coldround.rounds.search.engine;

import java.util.Arrays;

/** All tours and the stops in none, changed in steps that can be taken back. */
final class Solution {

  static final int NOWHERE = -1;

  final Model model;
  final Tour[] tours;

  /** Vehicle of each stop, and its index there. */
  final int[] tourOf;

  final int[] indexOf;

  /** Stops of the search that are in no tour. */
  final int[] absent;

  int absentCount;
  final boolean[] marked;

  /** Vehicles and stops this solution may change; all of them unless the work is shared out. */
  final boolean[] open;

  int[] own;
  final boolean[] isOwn;
  double cost;
  int missing;

  /** Tours that go out, and how many may. */
  int used;

  int mostUsed = Integer.MAX_VALUE;

  private final Tour[] before;
  private final int[] touched;
  private final boolean[] isTouched;
  private int touchedCount;
  private final int[] absentBefore;
  private int absentCountBefore;
  private double costBefore;
  private int missingBefore;
  private int usedBefore;

  Solution(Model model) {
    this.model = model;
    tours = new Tour[model.vehicles];
    before = new Tour[model.vehicles];
    for (int v = 0; v < model.vehicles; v++) {
      tours[v] = new Tour(model, v);
      before[v] = new Tour(model, v);
    }
    tourOf = new int[model.stops];
    indexOf = new int[model.stops];
    absent = new int[model.stops];
    absentBefore = new int[model.stops];
    marked = new boolean[model.stops];
    open = model.fleet.usable.clone();
    own = model.active;
    isOwn = model.servable.clone();
    touched = new int[model.vehicles];
    isTouched = new boolean[model.vehicles];
    clear();
  }

  private void clear() {
    for (Tour tour : tours) {
      tour.clear();
    }
    Arrays.fill(tourOf, NOWHERE);
    System.arraycopy(model.active, 0, absent, 0, model.active.length);
    absentCount = model.active.length;
    recount();
  }

  /** Sums up afresh, so that rounding cannot add up. */
  void recount() {
    cost = 0;
    missing = 0;
    used = 0;
    for (Tour tour : tours) {
      cost += tour.cost();
      used += tour.size > 0 ? 1 : 0;
    }
    for (int i = 0; i < absentCount; i++) {
      countAbsent(absent[i], 1);
    }
  }

  private void countAbsent(int stop, int sign) {
    if (model.mandatory[stop]) {
      missing += sign;
    } else {
      cost += sign * model.price[stop];
    }
  }

  /** Starts a step; everything until the next call can be taken back. */
  void begin() {
    for (int i = 0; i < touchedCount; i++) {
      isTouched[touched[i]] = false;
    }
    touchedCount = 0;
    costBefore = cost;
    missingBefore = missing;
    usedBefore = used;
    absentCountBefore = absentCount;
    System.arraycopy(absent, 0, absentBefore, 0, absentCount);
  }

  private void touch(int v) {
    if (!isTouched[v]) {
      isTouched[v] = true;
      touched[touchedCount++] = v;
      before[v].copy(tours[v]);
    }
  }

  /** Takes back all since {@link #begin}. */
  void rollback() {
    for (int i = 0; i < touchedCount; i++) {
      int v = touched[i];
      Tour tried = tours[v];
      for (int k = 1; k <= tried.size; k++) {
        tourOf[tried.node[k]] = NOWHERE;
      }
      tours[v] = before[v];
      before[v] = tried;
    }
    for (int i = 0; i < touchedCount; i++) {
      index(tours[touched[i]]);
    }
    System.arraycopy(absentBefore, 0, absent, 0, absentCountBefore);
    absentCount = absentCountBefore;
    cost = costBefore;
    missing = missingBefore;
    used = usedBefore;
  }

  private void index(Tour tour) {
    for (int k = 1; k <= tour.size; k++) {
      int s = tour.node[k];
      tourOf[s] = tour.vehicle;
      indexOf[s] = k;
    }
  }

  /**
   * Takes the marked stops out of tour v; they become absent. A tour that does not hold without
   * them, which a matrix with gaps can bring about, loses all its stops.
   */
  void removeMarked(int v) {
    touch(v);
    Tour tour = tours[v];
    cost -= tour.cost();
    used -= tour.size > 0 ? 1 : 0;
    int first = absentCount;
    leave(tour, true);
    tour.removeMarked(marked);
    if (!tour.holds()) {
      leave(tour, false);
      tour.clear();
    }
    for (int i = first; i < absentCount; i++) {
      marked[absent[i]] = false;
    }
    used += tour.size > 0 ? 1 : 0;
    cost += tour.cost();
    index(tour);
  }

  private void leave(Tour tour, boolean onlyMarked) {
    for (int k = 1; k <= tour.size; k++) {
      int stop = tour.node[k];
      if (marked[stop] || !onlyMarked) {
        tourOf[stop] = NOWHERE;
        absent[absentCount++] = stop;
        countAbsent(stop, 1);
      }
    }
  }

  /** Empties tour v. */
  void dissolve(int v) {
    Tour tour = tours[v];
    for (int k = 1; k <= tour.size; k++) {
      marked[tour.node[k]] = true;
    }
    removeMarked(v);
  }

  /** Puts a stop, which the caller takes off the absent list, into tour v after index k. */
  void insert(int stop, int v, int k) {
    touch(v);
    Tour tour = tours[v];
    cost -= tour.cost();
    used += tour.size > 0 ? 0 : 1;
    countAbsent(stop, -1);
    tour.insert(stop, k);
    tour.refresh();
    cost += tour.cost();
    index(tour);
  }

  /** Gives vehicle v this order if it may and can drive it; the caller sums up. */
  void set(int v, int[] stops) {
    tours[v].set(stops, 0, stops.length);
    if (open[v] && tours[v].valid()) {
      index(tours[v]);
    } else {
      tours[v].clear();
    }
  }

  /** Takes the stops that have found a tour off the absent list. */
  void dropPlaced() {
    int kept = 0;
    for (int i = 0; i < absentCount; i++) {
      if (tourOf[absent[i]] == NOWHERE) {
        absent[kept++] = absent[i];
      }
    }
    absentCount = kept;
  }

  /** Stops before this index of the absent list were absent when the step began. */
  int absentAtBegin() {
    return absentCountBefore;
  }

  /** Becomes what a snapshot holds. */
  void load(Snapshot snapshot) {
    begin();
    Arrays.fill(tourOf, NOWHERE);
    for (int v = 0; v < tours.length; v++) {
      tours[v].set(snapshot.stops, snapshot.from[v], snapshot.size(v));
      index(tours[v]);
    }
    absentCount = 0;
    for (int s : model.active) {
      if (tourOf[s] == NOWHERE) {
        absent[absentCount++] = s;
      }
    }
    recount();
  }
}

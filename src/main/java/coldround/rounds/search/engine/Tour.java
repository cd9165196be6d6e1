package coldround.rounds.search.engine;

import java.util.Arrays;

/**
 * The round of one vehicle while searching: the order of its stops with what is needed to judge an
 * insertion in constant time. Index 0 is the start place, 1 to size the stops, size + 1 the end.
 */
final class Tour {

  /** No insertion is possible. */
  static final double IMPOSSIBLE = Double.POSITIVE_INFINITY;

  final Model model;
  final int vehicle;
  final TourClock clock;
  private final double capacity;
  private final double perDistance;
  private final double fixed;
  private final boolean timeCosts;
  private final double[] assignment;

  int size;
  int[] node = new int[16];

  /** Distance and minutes from index k to k + 1. */
  double[] edge = new double[16];

  double[] leg = new double[16];
  double load;
  double distance;
  double timeCost;
  double assigned;

  /** Where the last {@link #bestInsertion} would put the stop: after this index. */
  int insertAfter;

  Tour(Model model, int vehicle) {
    this.model = model;
    this.vehicle = vehicle;
    capacity = model.fleet.capacity[vehicle] + Model.EPS;
    perDistance = model.fleet.rates[vehicle].perDistance();
    fixed = model.fleet.rates[vehicle].fixed();
    timeCosts = model.fleet.timeCosts(vehicle);
    assignment = model.fleet.assignment[vehicle];
    clock = new TourClock(this);
    clear();
  }

  void clear() {
    size = 0;
    node[0] = model.fleet.startNode[vehicle];
    node[1] = model.fleet.endNode[vehicle];
    refresh();
  }

  /** Cost of this tour; nothing if it does not go out. */
  double cost() {
    return size == 0 ? 0 : fixed + perDistance * distance + timeCost + assigned;
  }

  /** Puts stop c after index k without bringing the rest up to date. */
  void insert(int c, int k) {
    if (size + 3 > node.length) {
      grow();
    }
    int tail = size + 1 - k;
    System.arraycopy(node, k + 1, node, k + 2, tail);
    System.arraycopy(edge, k + 1, edge, k + 2, tail - 1);
    System.arraycopy(leg, k + 1, leg, k + 2, tail - 1);
    node[k + 1] = c;
    size++;
    link(k);
    link(k + 1);
  }

  private void grow() {
    int length = node.length * 2;
    node = Arrays.copyOf(node, length);
    edge = Arrays.copyOf(edge, length);
    leg = Arrays.copyOf(leg, length);
    clock.grow(length);
  }

  /** Looks up the way from index k to the next. */
  private void link(int k) {
    int way = node[k] * model.nodes + node[k + 1];
    edge[k] = model.dist[way];
    leg[k] = model.mins[way];
  }

  /** Sets the stops from an array. */
  void set(int[] from, int offset, int count) {
    while (count + 2 > node.length) {
      grow();
    }
    System.arraycopy(from, offset, node, 1, count);
    size = count;
    node[size + 1] = model.fleet.endNode[vehicle];
    relink();
  }

  /** Closes the gaps: the stops marked are taken out. */
  void removeMarked(boolean[] marked) {
    int kept = 0;
    for (int k = 1; k <= size; k++) {
      if (!marked[node[k]]) {
        node[++kept] = node[k];
      }
    }
    size = kept;
    node[size + 1] = model.fleet.endNode[vehicle];
    relink();
  }

  private void relink() {
    for (int k = 0; k <= size; k++) {
      link(k);
    }
    refresh();
  }

  /** Brings everything derived from the order up to date. */
  void refresh() {
    load = 0;
    distance = 0;
    assigned = 0;
    if (size == 0) {
      link(0);
    }
    for (int k = 0; k <= size; k++) {
      distance += edge[k];
    }
    for (int k = 1; k <= size; k++) {
      load += model.demand[node[k]];
    }
    if (assignment != null) {
      for (int k = 1; k <= size; k++) {
        assigned += assignment[node[k]];
      }
    }
    if (model.timed) {
      clock.refresh();
      timeCost = timeCosts && size > 0 ? clock.cost(-1, 0) : 0;
    }
  }

  /** True if the order keeps all times and ways; false only after a removal in an odd matrix. */
  boolean holds() {
    return distance < Model.NO_WAY && assigned < IMPOSSIBLE && (!model.timed || clock.holds());
  }

  /** True if the load fits as well, for orders that come from outside. */
  boolean valid() {
    return load <= capacity && holds();
  }

  /**
   * The least cost of putting stop c anywhere here, if below the limit; {@link #IMPOSSIBLE}
   * otherwise.
   *
   * @param chance overlooks some places at random; null looks at all
   */
  double bestInsertion(int c, double limit, Chance chance) {
    if (load + model.demand[c] > capacity) {
      return IMPOSSIBLE;
    }
    double base = assignment == null ? 0 : assignment[c];
    if (size == 0) {
      base += fixed + perDistance * edge[0];
    }
    if (base >= limit) {
      return IMPOSSIBLE;
    }
    double best = limit;
    int row = c * model.nodes;
    double[] to = model.distBack;
    double[] from = model.dist;
    double previous = to[row + node[0]];
    for (int k = 0; k <= size; k++) {
      int next = node[k + 1];
      double delta = base + perDistance * (previous + from[row + next] - edge[k]);
      previous = to[row + next];
      if (delta < best && !(chance != null && chance.blink())) {
        if (model.timed) {
          if (clock.tooLate(c, k)) {
            break;
          }
          delta = clock.fits(c, k) ? delta + extraTimeCost(c, k) : IMPOSSIBLE;
        }
        if (delta < best) {
          best = delta;
          insertAfter = k;
        }
      }
    }
    return best < limit ? best : IMPOSSIBLE;
  }

  private double extraTimeCost(int c, int k) {
    return timeCosts ? clock.cost(c, k) - timeCost : 0;
  }

  /** Becomes an exact copy of another tour of the same vehicle. */
  void copy(Tour other) {
    while (node.length < other.node.length) {
      grow();
    }
    size = other.size;
    System.arraycopy(other.node, 0, node, 0, size + 2);
    System.arraycopy(other.edge, 0, edge, 0, size + 1);
    System.arraycopy(other.leg, 0, leg, 0, size + 1);
    load = other.load;
    distance = other.distance;
    timeCost = other.timeCost;
    assigned = other.assigned;
    clock.copy(other.clock);
  }
}

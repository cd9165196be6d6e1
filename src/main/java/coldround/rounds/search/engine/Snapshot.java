package coldround.rounds.search.engine;

/** The orders of all tours, one after the other, with what they cost. */
final class Snapshot {

  final int[] stops;

  /** Where the stops of vehicle v begin; those of v end where v + 1 begins. */
  final int[] from;

  double cost = Double.POSITIVE_INFINITY;
  int missing = Integer.MAX_VALUE;

  Snapshot(Model model) {
    stops = new int[model.stops];
    from = new int[model.vehicles + 1];
  }

  int size(int v) {
    return from[v + 1] - from[v];
  }

  int toursUsed() {
    int used = 0;
    for (int v = 0; v + 1 < from.length; v++) {
      used += size(v) > 0 ? 1 : 0;
    }
    return used;
  }

  /** Notes the present tours of a solution. */
  void take(Solution solution) {
    cost = solution.cost;
    missing = solution.missing;
    int at = 0;
    for (int v = 0; v < solution.tours.length; v++) {
      Tour tour = solution.tours[v];
      from[v] = at;
      System.arraycopy(tour.node, 1, stops, at, tour.size);
      at += tour.size;
    }
    from[solution.tours.length] = at;
  }

  void copy(Snapshot other) {
    System.arraycopy(other.stops, 0, stops, 0, stops.length);
    System.arraycopy(other.from, 0, from, 0, from.length);
    cost = other.cost;
    missing = other.missing;
  }

  /** True if this serves more mandatory stops, or as many for clearly less. */
  boolean betterThan(Snapshot other) {
    return missing < other.missing || missing == other.missing && cost < other.cost - Model.EPS;
  }
}

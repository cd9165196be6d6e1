package coldround.rounds.search.engine;

import coldround.rounds.search.Problem;
import coldround.rounds.search.Rates;
import coldround.rounds.search.Rest;
import coldround.rounds.search.Shift;
import coldround.rounds.search.Vehicle;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** The vehicles of a problem as arrays. Vehicles that differ in nothing have the same kind. */
final class Fleet {

  final boolean[] usable;
  final int[] kind;
  final int kinds;
  final int[] depotPlaces;
  final int[] startNode;
  final int[] endNode;
  final Shift[] shift;
  final Rates[] rates;
  final Rest[] rest;
  final double[] capacity;

  /** Price of stop s on vehicle v, infinite if not allowed; null if all are allowed for nothing. */
  final double[][] assignment;

  final boolean timed;

  Fleet(Problem problem, Feasibility feasibility) {
    List<Vehicle> vehicles = problem.vehicles();
    int count = vehicles.size();
    usable = feasibility.usable();
    depotPlaces =
        vehicles.stream().flatMapToInt(v -> IntStream.of(v.start(), v.end())).distinct().toArray();
    int firstDepot = problem.stops().size();
    startNode = nodes(vehicles.stream().mapToInt(Vehicle::start), firstDepot);
    endNode = nodes(vehicles.stream().mapToInt(Vehicle::end), firstDepot);
    shift = vehicles.stream().map(Vehicle::shift).toArray(Shift[]::new);
    rates = vehicles.stream().map(Vehicle::rates).toArray(Rates[]::new);
    rest = vehicles.stream().map(Vehicle::rest).toArray(Rest[]::new);
    capacity = vehicles.stream().mapToDouble(Vehicle::capacity).toArray();
    assignment = new double[count][];
    kind = new int[count];
    Map<List<Object>, Integer> known = new HashMap<>();
    for (int v = 0; v < count; v++) {
      double[] prices = feasibility.prices(v);
      assignment[v] = Arrays.stream(prices).allMatch(price -> price == 0) ? null : prices;
      kind[v] = known.computeIfAbsent(key(v, usable[v]), k -> known.size());
    }
    kinds = known.size();
    timed = IntStream.range(0, count).anyMatch(this::timeMatters);
  }

  private int[] nodes(IntStream places, int firstDepot) {
    return places.map(place -> firstDepot + indexOf(place)).toArray();
  }

  private int indexOf(int place) {
    int index = 0;
    while (depotPlaces[index] != place) {
      index++;
    }
    return index;
  }

  private List<Object> key(int v, boolean use) {
    return List.of(
        use,
        startNode[v],
        endNode[v],
        shift[v],
        rates[v],
        rest[v],
        capacity[v],
        assignment[v] == null ? 0 : DoubleKey.of(assignment[v]));
  }

  /** Number of vehicles below which the demand of the mandatory stops cannot fit. */
  int leastVehicles(Model model) {
    double demand = 0;
    for (int s : model.active) {
      demand += model.mandatory[s] ? model.demand[s] : 0;
    }
    double[] largest = capacity.clone();
    Arrays.sort(largest);
    int least = 0;
    for (int v = largest.length - 1; v >= 0 && demand > Model.EPS; v--) {
      demand -= largest[v];
      least++;
    }
    return Math.max(1, least);
  }

  private boolean timeMatters(int v) {
    return Double.isFinite(shift[v].hardEnd()) || rest[v].due() || timeCosts(v);
  }

  /** True if the minutes of this vehicle cost something. */
  boolean timeCosts(int v) {
    return rates[v].perMinute() > 0
        || rates[v].perOvertimeMinute() > 0 && shift[v].regularEnd() < shift[v].hardEnd();
  }

  /** An array compared by its content. */
  private record DoubleKey(int hash, double[] values) {
    static DoubleKey of(double[] values) {
      return new DoubleKey(Arrays.hashCode(values), values);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof DoubleKey key && Arrays.equals(values, key.values);
    }

    @Override
    public int hashCode() {
      return hash;
    }
  }
}

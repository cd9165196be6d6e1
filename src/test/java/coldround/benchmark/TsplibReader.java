package coldround.benchmark;

import coldround.rounds.search.Matrix;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Rates;
import coldround.rounds.search.Shift;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Vehicle;
import coldround.rounds.search.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Understands TSPLIB files: one tour (TSP), capacity (CVRP), capacity with prizes (PRIZE_SECTION),
 * each with or without VEHICLES, DISTANCE, SERVICE_TIME, service times and time windows.
 */
final class TsplibReader {

  private final TsplibSections file;
  private final String fallbackName;
  private final List<Integer> nodes;
  private final boolean prizes;

  TsplibReader(TsplibSections file, String fallbackName) {
    this.file = file;
    this.fallbackName = fallbackName;
    this.prizes = file.hasSection("PRIZE_SECTION");
    this.nodes = nodes();
  }

  private List<Integer> nodes() {
    int dimension = (int) file.number("DIMENSION");
    if (!file.hasSection("NODE_COORD_SECTION")) {
      return IntStream.rangeClosed(1, dimension).boxed().toList();
    }
    List<Integer> found =
        new ArrayList<>(new TreeMap<>(file.rows("NODE_COORD_SECTION", 2)).keySet());
    if (found.size() != dimension || dimension < 1) {
      throw new IllegalArgumentException(
          "DIMENSION is " + dimension + " but there are " + found.size() + " nodes");
    }
    return found;
  }

  RoutingInstance read() {
    int depot = depot();
    List<Integer> customers = nodes.stream().filter(node -> node != depot).toList();
    Map<Integer, double[]> prize = prizes ? file.rows("PRIZE_SECTION", 1) : Map.of();
    return new RoutingInstance(
        file.entry("NAME", fallbackName),
        kind(),
        problem(depot, customers, prize),
        customers,
        prizes ? customers.stream().map(c -> value(prize, c, "prize")).toList() : List.of());
  }

  private RoutingInstance.Kind kind() {
    if (prizes) {
      return RoutingInstance.Kind.PROFIT;
    }
    return file.hasSection("TIME_WINDOW_SECTION")
        ? RoutingInstance.Kind.TIME_WINDOWS
        : RoutingInstance.Kind.CAPACITY;
  }

  private int depot() {
    if (!file.hasSection("DEPOT_SECTION")) {
      return nodes.get(0);
    }
    List<Integer> depots =
        file.section("DEPOT_SECTION").stream()
            .map(TsplibSections.Token::whole)
            .takeWhile(node -> node != -1)
            .toList();
    if (depots.size() != 1 || !nodes.contains(depots.get(0))) {
      throw new IllegalArgumentException(
          "DEPOT_SECTION must name one of the nodes, but names " + depots);
    }
    return depots.get(0);
  }

  private Problem problem(int depot, List<Integer> customers, Map<Integer, double[]> prize) {
    Matrix distances = EdgeWeights.of(file, nodes, prizes);
    Map<Integer, double[]> demand =
        file.hasSection("DEMAND_SECTION") ? file.rows("DEMAND_SECTION", 1) : Map.of();
    Map<Integer, double[]> windows =
        file.hasSection("TIME_WINDOW_SECTION") ? file.rows("TIME_WINDOW_SECTION", 2) : Map.of();
    Map<Integer, double[]> service =
        file.hasSection("SERVICE_TIME_SECTION") ? file.rows("SERVICE_TIME_SECTION", 1) : Map.of();
    double sameService = file.hasEntry("SERVICE_TIME") ? file.number("SERVICE_TIME") : 0;
    List<Stop> stops = new ArrayList<>();
    for (int node : customers) {
      double minutes = service.isEmpty() ? sameService : value(service, node, "service time");
      Stop stop = Stop.at("customer " + node, nodes.indexOf(node), minutes);
      stop = demand.isEmpty() ? stop : stop.withDemand(value(demand, node, "demand"));
      stop = prizes ? stop.optional(value(prize, node, "prize")) : stop;
      stops.add(windows.isEmpty() ? stop : stop.within(window(windows, node)));
    }
    List<Vehicle> fleet = fleet(depot, stops, shift(windows, depot));
    return new Problem(fleet, stops, distances, distances);
  }

  private static double value(Map<Integer, double[]> rows, int node, String what) {
    double[] row = rows.get(node);
    if (row == null || row[0] < 0) {
      throw new IllegalArgumentException("node " + node + " has no " + what + " of 0 or more");
    }
    return row[0];
  }

  private static Window window(Map<Integer, double[]> windows, int node) {
    double[] row = windows.get(node);
    if (row == null) {
      throw new IllegalArgumentException("node " + node + " has no time window");
    }
    return new Window(row[0], row[1]);
  }

  /** The depot's window, shortened by the longest way allowed. */
  private Shift shift(Map<Integer, double[]> windows, int depot) {
    double begins = windows.isEmpty() ? 0 : window(windows, depot).opens();
    double ends = windows.isEmpty() ? Double.POSITIVE_INFINITY : window(windows, depot).closes();
    if (file.hasEntry("DISTANCE")) {
      if (!windows.isEmpty()) {
        throw new IllegalArgumentException("DISTANCE together with time windows is not supported");
      }
      ends = file.number("DISTANCE");
    }
    return Shift.regular(begins, ends);
  }

  private List<Vehicle> fleet(int depot, List<Stop> stops, Shift shift) {
    boolean limited = file.hasEntry("CAPACITY");
    double capacity = limited ? file.number("CAPACITY") : Double.POSITIVE_INFINITY;
    if (file.hasSection("DEMAND_SECTION") && !limited) {
      throw new IllegalArgumentException("the entry CAPACITY is missing");
    }
    int vehicles = vehicles(limited, stops, capacity, shift);
    return IntStream.rangeClosed(1, vehicles)
        .mapToObj(v -> Vehicle.of("vehicle " + v, nodes.indexOf(depot), shift, Rates.DISTANCE))
        .map(v -> v.withCapacity(capacity))
        .toList();
  }

  /** As many as the file says; without a word one tour, or more than a good plan can want. */
  private int vehicles(boolean limited, List<Stop> stops, double capacity, Shift shift) {
    if (file.hasEntry("VEHICLES")) {
      return (int) file.number("VEHICLES");
    }
    if (!limited && Double.isInfinite(shift.hardEnd())) {
      return 1;
    }
    double demand = stops.stream().mapToDouble(Stop::demand).sum();
    int least = (int) Math.ceil(demand / Math.max(capacity, 1e-9));
    boolean onlyCapacity = Double.isInfinite(shift.hardEnd());
    return onlyCapacity ? Math.min(stops.size(), 2 * least + 5) : stops.size();
  }
}

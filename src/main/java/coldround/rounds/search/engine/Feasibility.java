package coldround.rounds.search.engine;

import coldround.rounds.search.Fault;
import coldround.rounds.search.Problem;
import coldround.rounds.search.Shift;
import coldround.rounds.search.Stop;
import coldround.rounds.search.Vehicle;
import coldround.rounds.search.Window;
import java.util.stream.IntStream;

/**
 * Finds the stops no vehicle can serve and the vehicles that cannot go out, each with the reason.
 */
final class Feasibility {

  private final Problem problem;
  private final Fault[] vehicleFaults;
  private final Fault[] stopFaults;
  private final double[][] prices;

  Feasibility(Problem problem) {
    this.problem = problem;
    vehicleFaults = problem.vehicles().stream().map(Feasibility::fault).toArray(Fault[]::new);
    prices = new double[problem.vehicles().size()][problem.stops().size()];
    stopFaults = new Fault[problem.stops().size()];
    for (int s = 0; s < stopFaults.length; s++) {
      stopFaults[s] = fault(s);
    }
  }

  /** Why stop s cannot be served, or null. */
  Fault stopFault(int s) {
    return stopFaults[s];
  }

  /** Why vehicle v cannot go out, or null. */
  Fault vehicleFault(int v) {
    return vehicleFaults[v];
  }

  /** Prices of all stops on vehicle v, infinite where the stop may not go on it. */
  double[] prices(int v) {
    return prices[v];
  }

  boolean[] usable() {
    boolean[] usable = new boolean[vehicleFaults.length];
    for (int v = 0; v < usable.length; v++) {
      usable[v] = vehicleFaults[v] == null;
    }
    return usable;
  }

  boolean[] servable() {
    boolean[] servable = new boolean[stopFaults.length];
    for (int s = 0; s < servable.length; s++) {
      servable[s] = stopFaults[s] == null;
    }
    return servable;
  }

  int[] servableStops() {
    return IntStream.range(0, stopFaults.length).filter(s -> stopFaults[s] == null).toArray();
  }

  private static Fault fault(Vehicle vehicle) {
    Shift shift = vehicle.shift();
    boolean begins = Double.isFinite(shift.begins());
    return begins && !shift.empty() && shift.regularEnd() >= shift.begins()
        ? null
        : Fault.SHIFT_WITHOUT_LENGTH;
  }

  /**
   * The fault of the vehicle that came nearest to serving the stop: the checks run in the order of
   * the enum, so the latest one that stopped a vehicle says most.
   */
  private Fault fault(int s) {
    Fault own = ownFault(problem.stops().get(s));
    Fault nearest = Fault.NO_VEHICLE;
    boolean served = false;
    for (int v = 0; v < prices.length; v++) {
      Fault fault = own != null ? own : fault(s, v);
      prices[v][s] = fault == null ? problem.assignment().of(s, v) : Double.POSITIVE_INFINITY;
      served |= fault == null;
      nearest = fault != null && fault.compareTo(nearest) > 0 ? fault : nearest;
    }
    return own != null ? own : served ? null : nearest;
  }

  private static Fault ownFault(Stop stop) {
    if (!(stop.serviceMinutes() >= 0) || Double.isInfinite(stop.serviceMinutes())) {
      return Fault.SERVICE_NOT_A_TIME;
    }
    return stop.windows().stream().allMatch(Window::neverOpen) ? Fault.WINDOW_NEVER_OPEN : null;
  }

  private Fault fault(int s, int v) {
    Stop stop = problem.stops().get(s);
    Vehicle vehicle = problem.vehicles().get(v);
    if (vehicleFaults[v] != null) {
      return vehicleFaults[v];
    }
    if (stop.pinnedTo().orElse(v) != v || !Double.isFinite(problem.assignment().of(s, v))) {
      return Fault.PRICE_OR_PIN_EXCLUDES_ALL;
    }
    if (!vehicle.skills().containsAll(stop.skills())) {
      return Fault.SKILL_MISSING;
    }
    if (stop.demand() > vehicle.capacity() + Model.EPS) {
      return Fault.DEMAND_TOO_LARGE;
    }
    return faultOfTheWay(stop, vehicle);
  }

  /**
   * The way straight there and back. In a matrix where a detour is quicker than the straight way a
   * stop could still be served on the detour; then it is the matrix that should be mended.
   */
  private Fault faultOfTheWay(Stop stop, Vehicle vehicle) {
    double there = way(vehicle.start(), stop.place());
    double back = way(stop.place(), vehicle.end());
    if (!(there + back < Model.NO_WAY)) {
      return Fault.NOT_REACHABLE;
    }
    Shift shift = vehicle.shift();
    double least = there + stop.serviceMinutes() + back;
    if (shift.begins() + least > shift.hardEnd() + Model.EPS) {
      return Fault.LONGER_THAN_ANY_SHIFT;
    }
    double earliest = shift.begins() + there;
    double latest = shift.hardEnd() - back - stop.serviceMinutes();
    return opensBetween(stop, earliest, latest) ? null : Fault.WINDOW_OUTSIDE_SHIFTS;
  }

  /** A plain loop: this runs for every stop and vehicle, also when an emergency comes in. */
  private static boolean opensBetween(Stop stop, double earliest, double latest) {
    for (Window window : stop.windows()) {
      double begin = Math.max(window.opens(), earliest);
      if (!window.neverOpen() && begin <= Math.min(window.closes(), latest) + Model.EPS) {
        return true;
      }
    }
    return false;
  }

  /** Minutes from place to place, infinite if either matrix has no finite entry. */
  private double way(int from, int to) {
    double minutes = problem.minutes().between(from, to);
    double distance = problem.distance().between(from, to);
    boolean passable =
        minutes >= 0 && minutes < Model.NO_WAY && distance >= 0 && distance < Model.NO_WAY;
    return passable ? minutes : Double.POSITIVE_INFINITY;
  }
}

package coldround.rounds.search;

import java.util.ArrayList;
import java.util.List;

/**
 * The cheapest plan of a small problem by trying every assignment and every order. The times of an
 * order come from a search over a departure for each possible tight chain, not from the planner.
 */
final class BruteForce {

  private final Problem problem;
  private double best = Double.POSITIVE_INFINITY;
  private final List<List<Integer>> routes = new ArrayList<>();

  private BruteForce(Problem problem) {
    this.problem = problem;
    problem.vehicles().forEach(v -> routes.add(new ArrayList<>()));
  }

  /** The least cost with all mandatory stops served; infinite if that cannot be. */
  static double leastCost(Problem problem) {
    BruteForce force = new BruteForce(problem);
    force.assign(0, 0);
    return force.best;
  }

  private void assign(int stop, double leftOut) {
    if (leftOut >= best) {
      return;
    }
    if (stop == problem.stops().size()) {
      best = Math.min(best, leftOut + routesCost());
      return;
    }
    Stop it = problem.stops().get(stop);
    if (!Double.isInfinite(it.priceLeftOut())) {
      assign(stop + 1, leftOut + it.priceLeftOut());
    }
    for (int v = 0; v < routes.size(); v++) {
      for (int at = 0; mayServe(stop, v) && at <= routes.get(v).size(); at++) {
        routes.get(v).add(at, stop);
        assign(stop + 1, leftOut);
        routes.get(v).remove(at);
      }
    }
  }

  private boolean mayServe(int stop, int v) {
    Stop it = problem.stops().get(stop);
    return problem.vehicles().get(v).skills().containsAll(it.skills())
        && it.pinnedTo().orElse(v) == v
        && Double.isFinite(problem.assignment().of(stop, v));
  }

  private double routesCost() {
    double sum = 0;
    for (int v = 0; v < routes.size() && sum < best; v++) {
      sum += routes.get(v).isEmpty() ? 0 : cost(v, routes.get(v));
    }
    return sum;
  }

  private double cost(int v, List<Integer> order) {
    Vehicle vehicle = problem.vehicles().get(v);
    double load = order.stream().mapToDouble(s -> problem.stops().get(s).demand()).sum();
    double earliest = returns(vehicle, order, vehicle.shift().begins());
    if (load > vehicle.capacity() || earliest > vehicle.shift().hardEnd()) {
      return Double.POSITIVE_INFINITY;
    }
    double rested = vehicle.rest().due() && earliest > vehicle.rest().latest() ? 1 : 0;
    double departs = latestDeparture(vehicle, order, earliest);
    double distance = 0;
    double assigned = 0;
    int place = vehicle.start();
    for (int s : order) {
      distance += problem.distance().between(place, problem.stops().get(s).place());
      assigned += problem.assignment().of(s, v);
      place = problem.stops().get(s).place();
    }
    distance += problem.distance().between(place, vehicle.end());
    Rates rates = vehicle.rates();
    return rates.fixed()
        + rates.perDistance() * distance
        + rates.perMinute() * (earliest - departs - rested * vehicle.rest().minutes())
        + rates.perOvertimeMinute() * Math.max(0, earliest - vehicle.shift().regularEnd())
        + assigned;
  }

  /** The last departure with the same return, by halving. */
  private double latestDeparture(Vehicle vehicle, List<Integer> order, double earliest) {
    double low = vehicle.shift().begins();
    double high = earliest;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (returns(vehicle, order, middle) <= earliest + 1e-9) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Earliest return when leaving at a time, over all stops before which the break may be. */
  private double returns(Vehicle vehicle, List<Integer> order, double departs) {
    double best = Double.POSITIVE_INFINITY;
    for (int restAt = vehicle.rest().due() ? -1 : -2; restAt < order.size(); restAt++) {
      best = Math.min(best, returns(vehicle, order, departs, restAt));
      if (restAt == -2) {
        break;
      }
    }
    return best;
  }

  private double returns(Vehicle vehicle, List<Integer> order, double departs, int restAt) {
    double time = departs;
    int place = vehicle.start();
    for (int i = 0; i < order.size(); i++) {
      Stop stop = problem.stops().get(order.get(i));
      time += problem.minutes().between(place, stop.place());
      if (i == restAt) {
        time = Math.max(time, vehicle.rest().earliest());
        if (time > vehicle.rest().latest()) {
          return Double.POSITIVE_INFINITY;
        }
        time += vehicle.rest().minutes();
      }
      time = begin(stop, time) + stop.serviceMinutes();
      place = stop.place();
    }
    time += problem.minutes().between(place, vehicle.end());
    boolean missed = restAt == -1 && time > vehicle.rest().latest();
    return missed ? Double.POSITIVE_INFINITY : time;
  }

  private static double begin(Stop stop, double time) {
    return stop.windows().stream()
        .filter(w -> w.closes() >= time - 1e-9)
        .mapToDouble(w -> Math.max(time, w.opens()))
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }
}

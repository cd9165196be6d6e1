package coldround.rounds.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Re-checks a plan from the problem alone and shares no code with the planner. Says all that is
 * wrong with it.
 */
public final class PlanChecker {

  private static final double EPS = 1e-6;

  private final Problem problem;
  private final Plan plan;
  private final List<String> wrong = new ArrayList<>();
  private final Set<Integer> seen = new HashSet<>();
  private double total;

  private PlanChecker(Problem problem, Plan plan) {
    this.problem = problem;
    this.plan = plan;
  }

  /** What is wrong with the plan; empty if it is sound. */
  public static List<String> check(Problem problem, Plan plan) {
    PlanChecker checker = new PlanChecker(problem, plan);
    Set<Integer> vehicles = new HashSet<>();
    for (Route route : plan.routes()) {
      checker.expect(vehicles.add(route.vehicle()), "vehicle " + route.vehicle() + " twice");
      checker.route(route);
    }
    checker.leftOut();
    checker.near(plan.cost().total(), checker.total, "cost of the plan");
    return checker.wrong;
  }

  private void expect(boolean condition, String otherwise) {
    if (!condition) {
      wrong.add(otherwise);
    }
  }

  private void near(double stated, double found, String what) {
    expect(
        Math.abs(stated - found) <= EPS * (1 + Math.abs(found)),
        what + " is stated as " + stated + " but is " + found);
  }

  private void leftOut() {
    for (LeftOut left : plan.leftOut()) {
      Stop stop = problem.stops().get(left.stop());
      expect(seen.add(left.stop()), stop.name() + " is served and left out");
      expect(
          left.mandatory() == Double.isInfinite(stop.priceLeftOut()), stop.name() + " mandatory");
      total += Double.isInfinite(stop.priceLeftOut()) ? 0 : stop.priceLeftOut();
    }
    expect(seen.size() == problem.stops().size(), "stops are neither served nor left out");
  }

  private void route(Route route) {
    Vehicle vehicle = problem.vehicles().get(route.vehicle());
    String name = vehicle.name();
    int place = vehicle.start();
    double time = route.departs();
    double distance = 0;
    double driving = 0;
    double waiting = 0;
    double load = 0;
    double assigned = 0;
    boolean rested = false;
    expect(!route.visits().isEmpty(), name + " goes out for nothing");
    expect(time >= vehicle.shift().begins() - EPS, name + " leaves before the shift");
    for (Visit visit : route.visits()) {
      Stop stop = problem.stops().get(visit.stop());
      expect(seen.add(visit.stop()), stop.name() + " is served twice");
      distance += problem.distance().between(place, stop.place());
      driving += problem.minutes().between(place, stop.place());
      time += problem.minutes().between(place, stop.place());
      near(visit.arrives(), time, "arrival at " + stop.name());
      double ready = time;
      boolean restHere =
          !rested
              && route.restBegins().isPresent()
              && route.restBegins().getAsDouble() >= visit.arrives() - EPS
              && route.restBegins().getAsDouble() <= visit.begins();
      if (restHere) {
        rested = true;
        ready = route.restBegins().getAsDouble() + vehicle.rest().minutes();
      }
      expect(visit.begins() >= ready - EPS, stop.name() + " begins before it can");
      waiting += visit.begins() - time - (restHere ? vehicle.rest().minutes() : 0);
      window(stop, visit);
      allowed(stop, visit.stop(), vehicle, route.vehicle());
      near(visit.leaves(), visit.begins() + stop.serviceMinutes(), "leaving " + stop.name());
      time = visit.leaves();
      place = stop.place();
      load += stop.demand();
      assigned += problem.assignment().of(visit.stop(), route.vehicle());
    }
    distance += problem.distance().between(place, vehicle.end());
    driving += problem.minutes().between(place, vehicle.end());
    time += problem.minutes().between(place, vehicle.end());
    expect(Double.isFinite(driving + distance), name + " drives where there is no way");
    near(route.returns(), time, "return of " + name);
    near(route.distance(), distance, "distance of " + name);
    near(route.drivingMinutes(), driving, "driving of " + name);
    near(route.waitingMinutes(), waiting, "waiting of " + name);
    expect(time <= vehicle.shift().hardEnd() + EPS, name + " returns after the shift");
    expect(load <= vehicle.capacity() + EPS, name + " is overloaded");
    rest(route, vehicle, rested);
    cost(route, vehicle, distance, time, assigned, rested);
  }

  private void window(Stop stop, Visit visit) {
    boolean open = false;
    for (Window window : stop.windows()) {
      open |= visit.begins() >= window.opens() - EPS && visit.begins() <= window.closes() + EPS;
    }
    expect(open, stop.name() + " begins at " + visit.begins() + " outside its windows");
  }

  private void allowed(Stop stop, int stopIndex, Vehicle vehicle, int vehicleIndex) {
    expect(vehicle.skills().containsAll(stop.skills()), vehicle.name() + " lacks skills");
    expect(
        stop.pinnedTo().isEmpty() || stop.pinnedTo().getAsInt() == vehicleIndex,
        stop.name() + " is on another vehicle than pinned");
    expect(
        Double.isFinite(problem.assignment().of(stopIndex, vehicleIndex)),
        stop.name() + " may not be on " + vehicle.name());
  }

  private void rest(Route route, Vehicle vehicle, boolean rested) {
    Rest rest = vehicle.rest();
    if (rest.minutes() == 0) {
      expect(route.restBegins().isEmpty(), vehicle.name() + " rests without a break due");
    } else if (rested) {
      double begins = route.restBegins().getAsDouble();
      expect(
          begins >= rest.earliest() - EPS && begins <= rest.latest() + EPS,
          vehicle.name() + " rests at the wrong time");
    } else {
      expect(route.restBegins().isEmpty(), vehicle.name() + " rests at no stop");
      expect(route.returns() <= rest.latest() + EPS, vehicle.name() + " misses its break");
    }
  }

  private void cost(
      Route route, Vehicle vehicle, double distance, double end, double assigned, boolean rested) {
    Rates rates = vehicle.rates();
    double worked = end - route.departs() - (rested ? vehicle.rest().minutes() : 0);
    double overtime =
        rates.perOvertimeMinute() == 0
            ? 0
            : rates.perOvertimeMinute() * Math.max(0, end - vehicle.shift().regularEnd());
    double sum =
        rates.fixed()
            + rates.perDistance() * distance
            + rates.perMinute() * worked
            + overtime
            + assigned;
    near(route.cost().total(), sum, "cost of " + vehicle.name());
    total += sum;
  }
}

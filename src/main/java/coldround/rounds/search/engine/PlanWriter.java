package coldround.rounds.search.engine;

import coldround.rounds.search.CostSplit;
import coldround.rounds.search.Fault;
import coldround.rounds.search.LeftOut;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Rates;
import coldround.rounds.search.Rest;
import coldround.rounds.search.Route;
import coldround.rounds.search.Unusable;
import coldround.rounds.search.Visit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Turns a solution of the search into a plan with times, costs and reasons. */
final class PlanWriter {

  private final Model model;
  private final Feasibility feasibility;

  PlanWriter(Model model, Feasibility feasibility) {
    this.model = model;
    this.feasibility = feasibility;
  }

  Plan write(Solution solution) {
    List<Route> routes = new ArrayList<>();
    CostSplit cost = CostSplit.ZERO;
    for (Tour tour : solution.tours) {
      if (tour.size > 0) {
        Route route = route(tour);
        routes.add(route);
        cost = cost.plus(route.cost());
      }
    }
    return new Plan(routes, leftOut(solution), unusable(), cost.plus(priceOfLeftOut(solution)));
  }

  private List<LeftOut> leftOut(Solution solution) {
    List<LeftOut> left = new ArrayList<>();
    for (int s = 0; s < model.stops; s++) {
      if (solution.tourOf[s] == Solution.NOWHERE) {
        Fault fault = feasibility.stopFault(s);
        left.add(new LeftOut(s, model.mandatory[s], fault == null ? whyNot(solution, s) : fault));
      }
    }
    return left;
  }

  private Fault whyNot(Solution solution, int stop) {
    for (Tour tour : solution.tours) {
      if (solution.open[tour.vehicle]
          && tour.bestInsertion(stop, Tour.IMPOSSIBLE, null) < Tour.IMPOSSIBLE) {
        return Fault.DEARER_THAN_LEAVING_OUT;
      }
    }
    return Fault.NO_ROOM;
  }

  private CostSplit priceOfLeftOut(Solution solution) {
    double price = 0;
    for (int s = 0; s < model.stops; s++) {
      boolean counts = solution.tourOf[s] == Solution.NOWHERE && !model.mandatory[s];
      price += counts ? model.price[s] : 0;
    }
    return new CostSplit(0, 0, 0, 0, 0, price);
  }

  private List<Unusable> unusable() {
    List<Unusable> unusable = new ArrayList<>();
    for (int v = 0; v < model.vehicles; v++) {
      if (feasibility.vehicleFault(v) != null) {
        unusable.add(new Unusable(v, feasibility.vehicleFault(v)));
      }
    }
    return unusable;
  }

  private Route route(Tour tour) {
    TourClock clock = tour.clock;
    clock.refresh();
    clock.time(-1, 0);
    int restAt = clock.skipsRest ? Solution.NOWHERE : restIndex(tour, clock.departs);
    Rest rest = model.fleet.rest[tour.vehicle];
    List<Visit> visits = new ArrayList<>();
    double time = clock.departs;
    double waiting = 0;
    double driving = tour.leg[tour.size];
    OptionalDouble restBegins = OptionalDouble.empty();
    for (int k = 1; k <= tour.size; k++) {
      int stop = tour.node[k];
      driving += tour.leg[k - 1];
      double arrives = time + tour.leg[k - 1];
      double ready = arrives;
      if (k == restAt) {
        restBegins = OptionalDouble.of(Math.max(arrives, rest.earliest()));
        ready = restBegins.getAsDouble() + rest.minutes();
      }
      double begins = model.open(stop, ready);
      waiting += begins - arrives - (k == restAt ? rest.minutes() : 0);
      time = begins + model.service[stop];
      visits.add(new Visit(stop, arrives, begins, time));
    }
    return new Route(
        tour.vehicle,
        clock.departs,
        time + tour.leg[tour.size],
        visits,
        restBegins,
        tour.distance,
        driving,
        waiting,
        cost(tour));
  }

  private CostSplit cost(Tour tour) {
    Rates rates = model.fleet.rates[tour.vehicle];
    return new CostSplit(
        rates.fixed(),
        rates.perDistance() * tour.distance,
        tour.clock.labour(),
        tour.clock.overtime(),
        tour.assigned,
        0);
  }

  /** Index of the stop before whose service the break is taken. */
  private int restIndex(Tour tour, double departs) {
    Rest rest = model.fleet.rest[tour.vehicle];
    if (!rest.due()) {
      return Solution.NOWHERE;
    }
    double rested = Double.POSITIVE_INFINITY;
    double unrested = departs;
    int restAt = Solution.NOWHERE;
    for (int k = 1; k <= tour.size; k++) {
      int stop = tour.node[k];
      double way = tour.leg[k - 1];
      double early = model.open(stop, rested + way);
      double now = model.open(stop, tour.clock.afterRest(unrested + way));
      restAt = now < early ? k : restAt;
      rested = Math.min(early, now) + model.service[stop];
      unrested = model.open(stop, unrested + way) + model.service[stop];
    }
    return restAt;
  }
}

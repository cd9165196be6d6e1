package coldround.rounds.search.engine;

import coldround.rounds.search.Insertion;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import java.util.List;
import java.util.OptionalInt;

/**
 * Puts one more stop into a plan with the smallest change: no other stop changes its order or its
 * vehicle if that is possible; if not, one other stop moves or, if it may, is left out.
 */
public final class Emergency {

  private final Problem problem;
  private final Desk desk;
  private final Solution solution;

  /**
   * Prepares insertions into a plan.
   *
   * @param problem the problem of the plan, with the new stops added at the end
   */
  public Emergency(Problem problem, Plan plan) {
    this.problem = problem;
    desk = new Desk(problem);
    solution = desk.solution(plan);
  }

  /** Puts a stop in where it costs least. */
  public Insertion insert(int stop) {
    if (!desk.model().servable[stop] || solution.tourOf[stop] != Solution.NOWHERE) {
      return new Insertion(desk.plan(solution), OptionalInt.empty(), List.of());
    }
    solution.begin();
    int v = cheapestTour(stop, Double.POSITIVE_INFINITY);
    if (v != Solution.NOWHERE) {
      place(stop, v);
      return answer(v, List.of());
    }
    return swapIn(stop);
  }

  private Insertion answer(int vehicle, List<Integer> moved) {
    solution.recount();
    return new Insertion(desk.plan(solution), OptionalInt.of(vehicle), moved);
  }

  private int cheapestTour(int stop, double limit) {
    int found = Solution.NOWHERE;
    double best = limit;
    for (Tour tour : solution.tours) {
      double cost =
          solution.open[tour.vehicle] ? tour.bestInsertion(stop, best, null) : Tour.IMPOSSIBLE;
      if (cost < best) {
        best = cost;
        found = tour.vehicle;
      }
    }
    return found;
  }

  private void place(int stop, int v) {
    solution.insert(stop, v, solution.tours[v].insertAfter);
    solution.dropPlaced();
  }

  /** Tries for each other stop what it costs if it makes room. */
  private Insertion swapIn(int stop) {
    int victim = Solution.NOWHERE;
    double best = Double.POSITIVE_INFINITY;
    for (int other : desk.model().active) {
      if (mayMove(other)) {
        double cost = swap(stop, other);
        solution.rollback();
        if (cost < best) {
          best = cost;
          victim = other;
        }
      }
    }
    if (victim == Solution.NOWHERE) {
      return new Insertion(desk.plan(solution), OptionalInt.empty(), List.of());
    }
    int v = solution.tourOf[victim];
    swap(stop, victim);
    return answer(v, List.of(victim));
  }

  private boolean mayMove(int other) {
    return solution.tourOf[other] != Solution.NOWHERE
        && problem.stops().get(other).pinnedTo().isEmpty();
  }

  /** Puts a stop where another one was, the other one elsewhere; the cost, infinite if it fails. */
  private double swap(int stop, int other) {
    int v = solution.tourOf[other];
    solution.begin();
    int missing = solution.missing;
    solution.marked[other] = true;
    solution.removeMarked(v);
    Tour tour = solution.tours[v];
    if (tour.bestInsertion(stop, Double.POSITIVE_INFINITY, null) == Tour.IMPOSSIBLE) {
      return Double.POSITIVE_INFINITY;
    }
    place(stop, v);
    Model model = desk.model();
    double limit = model.mandatory[other] ? Double.POSITIVE_INFINITY : model.price[other];
    int elsewhere = cheapestTour(other, limit);
    if (elsewhere != Solution.NOWHERE) {
      place(other, elsewhere);
    }
    int allowed = missing - (model.mandatory[stop] ? 1 : 0);
    return solution.missing <= allowed ? solution.cost : Double.POSITIVE_INFINITY;
  }
}

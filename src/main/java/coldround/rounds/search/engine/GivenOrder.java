package coldround.rounds.search.engine;

import coldround.rounds.search.Plan;
import coldround.rounds.search.Problem;
import java.util.List;
import java.util.Map;

/** Judges rounds whose order somebody has decided, by the same clock and costs as the search. */
public final class GivenOrder {

  private final Desk desk;

  public GivenOrder(Problem problem) {
    desk = new Desk(problem);
  }

  /** True if the vehicle can serve these stops in this order and keep all that the problem asks. */
  public boolean holds(int vehicle, List<Integer> stops) {
    return cost(vehicle, stops) < Double.POSITIVE_INFINITY;
  }

  /** What the round costs; infinite if it does not hold. */
  public double cost(int vehicle, List<Integer> stops) {
    Solution solution = new Solution(desk.model());
    return set(solution, vehicle, stops)
        ? solution.tours[vehicle].cost()
        : Double.POSITIVE_INFINITY;
  }

  /**
   * The rounds with times and costs.
   *
   * @param orders stops by vehicle, all of which hold
   */
  public Plan plan(Map<Integer, List<Integer>> orders) {
    Solution solution = new Solution(desk.model());
    orders.forEach(
        (vehicle, stops) -> {
          if (!set(solution, vehicle, stops)) {
            throw new IllegalArgumentException("round " + vehicle + " does not hold");
          }
        });
    solution.dropPlaced();
    solution.recount();
    return desk.plan(solution);
  }

  private boolean set(Solution solution, int vehicle, List<Integer> stops) {
    if (!stops.stream().allMatch(stop -> desk.model().servable[stop])) {
      return false;
    }
    solution.set(vehicle, stops.stream().mapToInt(Integer::intValue).toArray());
    return solution.tours[vehicle].size == stops.size();
  }
}

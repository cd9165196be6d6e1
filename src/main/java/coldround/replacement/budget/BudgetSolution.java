package coldround.replacement.budget;

import java.util.Optional;

/**
 * What came of a search.
 *
 * @param chosen number of the option chosen for each unit; empty when no plan was found
 * @param cost of the plan
 * @param bound no plan is cheaper than this
 * @param linearBound the same from the linear relaxation alone
 * @param infeasible true when it is proven that no plan exists
 * @param seconds that the search took
 */
public record BudgetSolution(
    Optional<int[]> chosen,
    double cost,
    double bound,
    double linearBound,
    boolean infeasible,
    double seconds) {

  /** Share by which the plan may at most be dearer than the best one. */
  public double gap() {
    return Math.max(0, cost - bound) / Math.max(1, Math.abs(cost));
  }

  static BudgetSolution none(boolean infeasible, double bound, double seconds) {
    return new BudgetSolution(
        Optional.empty(), Double.POSITIVE_INFINITY, bound, bound, infeasible, seconds);
  }
}

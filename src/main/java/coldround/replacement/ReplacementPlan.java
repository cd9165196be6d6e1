package coldround.replacement;

import coldround.replacement.budget.BudgetSolution;
import java.util.List;

/**
 * A plan for the units of one or several customers.
 *
 * @param spend what the planned replacements cost in each year, in the money the plan is told in
 * @param solution cost of the plan today, the bound, and so the gap
 * @param withoutLimits least cost today if there were no limits
 * @param more what one more thousand would do
 * @param comparison run to failure, by age alone, this plan
 */
public record ReplacementPlan(
    PlanOrder order,
    List<UnitDecision> decisions,
    double[] spend,
    BudgetSolution solution,
    double withoutLimits,
    OneMore more,
    List<Policy.Outcome> comparison) {

  private static final double ROUNDING = 0.01;

  /**
   * The next best use of more money.
   *
   * @param year whose limit is best raised; -1 when no limit binds
   * @param amount it is raised by
   * @param saving in money of today, by a new search; 0 when it is not enough for another unit
   * @param asPartOfMore what it saves by the linear relaxation, as part of a larger sum
   * @param moved units that are then replaced in another year, as "site tag: from to"
   */
  public record OneMore(
      int year, double amount, double saving, double asPartOfMore, List<String> moved) {}

  public ReplacementPlan {
    decisions = List.copyOf(decisions);
    comparison = List.copyOf(comparison);
  }

  /** What is to be expected of it. */
  public Policy.Outcome ours() {
    return comparison.get(comparison.size() - 1);
  }

  /**
   * Years in which what a policy plans by itself is over the limit, with what earlier years left.
   */
  public int plannedYearsOver(Policy.Outcome outcome) {
    int over = 0;
    double left = 0;
    for (int year = 0; year < order.limits().length; year++) {
      double room = order.limits()[year] + order.carryOver() * left;
      double planned = outcome.expected().planned()[year];
      over += planned > room + ROUNDING ? 1 : 0;
      left = Double.isInfinite(room) ? 0 : Math.max(0, room - planned);
    }
    return over;
  }

  /** What the limits cost, in money of today. */
  public double costOfLimits() {
    return Math.max(0, solution.cost() - withoutLimits);
  }
}

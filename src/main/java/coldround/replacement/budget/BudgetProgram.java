package coldround.replacement.budget;

/** Finds the cheapest set of options that keeps within the limits. */
public interface BudgetProgram {

  /**
   * @param relativeGap the search ends when the plan is proven to be within this share of the best
   * @param seconds longest time to search in, by the clock
   */
  BudgetSolution solve(BudgetProblem problem, double relativeGap, double seconds);

  /** By how much each year's limit would have to be raised for a plan to exist. */
  Shortfall shortfall(BudgetProblem problem);

  /**
   * What one more in each year's limit would save, by the linear relaxation; all zero when no plan
   * exists.
   */
  double[] worthOfOneMore(BudgetProblem problem);
}

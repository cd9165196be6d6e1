package coldround.replacement.budget;

/**
 * The problem with shares of options allowed.
 *
 * @param feasible false when not even that has a solution
 * @param bound its cost; no plan is cheaper
 * @param reduced for each unit and option: taking it makes any plan at least that much dearer than
 *     the bound
 * @param prices what one more in each year's limit would save
 */
record Relaxation(boolean feasible, double bound, double[][] reduced, double[] prices) {

  /** True for an option that a plan of at most that cost may contain. */
  boolean mayBeIn(double cost, int unit, int option) {
    return bound + reduced[unit][option] <= cost + ROUNDING;
  }

  private static final double ROUNDING = 0.01;
}

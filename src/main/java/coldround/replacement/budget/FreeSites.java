package coldround.replacement.budget;

import java.util.List;
import java.util.Optional;

/**
 * Without any limit each site is best by itself, so its own best choice is part of the best plan.
 */
final class FreeSites {

  private static final double NONE_WORSE = 0;

  private FreeSites() {}

  /** The best plan there is; empty when a site has too many units and years to be sure. */
  static Optional<int[]> best(BudgetProblem problem) {
    int[] plan = new int[problem.units().size()];
    for (SiteColumns site : new Sites(problem).columns(new double[problem.years()])) {
      List<SiteColumns.Column> best = site.within(NONE_WORSE);
      if (best.isEmpty() || !site.complete()) {
        return Optional.empty();
      }
      for (int u = 0; u < site.units().length; u++) {
        plan[site.units()[u]] = best.get(0).options()[u];
      }
    }
    return Optional.of(plan);
  }
}

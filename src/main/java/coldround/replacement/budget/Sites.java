package coldround.replacement.budget;

import java.util.HashMap;
import java.util.Map;

/** The sites of a problem by number. */
final class Sites {

  private final BudgetProblem problem;
  private final Map<String, Integer> numbers = new HashMap<>();

  Sites(BudgetProblem problem) {
    this.problem = problem;
    problem.units().forEach(unit -> numbers.putIfAbsent(unit.site(), numbers.size()));
  }

  int count() {
    return numbers.size();
  }

  int of(BudgetProblem.Unit unit) {
    return numbers.get(unit.site());
  }

  /** For each site and year whether an option acts there. */
  boolean[][] acting(int[] chosen) {
    boolean[][] acts = new boolean[count()][problem.years()];
    for (int u = 0; u < chosen.length; u++) {
      BudgetProblem.Unit unit = problem.units().get(u);
      int year = unit.options().get(chosen[u]).year();
      if (year < problem.years()) {
        acts[of(unit)][year] = true;
      }
    }
    return acts;
  }
}

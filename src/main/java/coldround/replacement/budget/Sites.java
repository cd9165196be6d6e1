package coldround.replacement.budget;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
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

  /** The choices that each site has at these prices. */
  List<SiteColumns> columns(double[] prices) {
    List<List<Integer>> units = new ArrayList<>();
    for (int site = 0; site < count(); site++) {
      units.add(new ArrayList<>());
    }
    for (int u = 0; u < problem.units().size(); u++) {
      units.get(of(problem.units().get(u))).add(u);
    }
    return units.stream()
        .map(each -> each.stream().mapToInt(u -> u).toArray())
        .map(each -> new SiteColumns(problem, each, prices))
        .toList();
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

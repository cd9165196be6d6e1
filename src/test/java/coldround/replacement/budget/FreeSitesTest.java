package coldround.replacement.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.replacement.budget.BudgetProblem.Option;
import coldround.replacement.budget.BudgetProblem.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class FreeSitesTest {

  // against the search with limits so high that none binds
  @Property(tries = 60)
  void thePlanWithoutLimitsIsThatUnderLimitsThatNeverBind(@ForAll Random random) {
    int years = 1 + random.nextInt(6);
    List<Unit> units = new ArrayList<>();
    for (int u = 0; u < 1 + random.nextInt(12); u++) {
      List<Option> options = new ArrayList<>();
      int last = random.nextInt(4) == 0 ? years - 1 : years;
      for (int year = 0; year <= last; year++) {
        options.add(Option.paidAtOnce(year, random.nextInt(20000) / 100.0, 50, years));
      }
      units.add(new Unit("u" + u, "s" + random.nextInt(3), options));
    }
    double[] today = new double[years];
    Arrays.setAll(today, year -> 40 * Math.pow(1.05, -year));
    double[] limits = new double[years];
    Arrays.fill(limits, 1e6);
    BudgetProblem problem = new BudgetProblem(units, limits, 1, 40, today);
    double least = new SolverProgram().solve(problem, 0, 20).cost();
    assertEquals(least, problem.cost(FreeSites.best(problem).orElseThrow()), 0.02);
  }
}

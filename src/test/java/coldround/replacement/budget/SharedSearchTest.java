package coldround.replacement.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.replacement.budget.BudgetProblem.Option;
import coldround.replacement.budget.BudgetProblem.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Units that share what their site costs in a year. */
class SharedSearchTest {

  private static final double NO_LIMIT = 1e9;

  // checked by trying every set of years
  @Property(tries = 300)
  void theSetsOfYearsAreThoseNearTheCheapest(@ForAll Random random) {
    int years = 1 + random.nextInt(6);
    double[][] costs = new double[1 + random.nextInt(5)][years + 1];
    for (double[] unit : costs) {
      Arrays.setAll(unit, year -> random.nextInt(300));
      unit[years] = random.nextInt(5) == 0 ? NO_LIMIT : unit[years];
    }
    double[] opening = new double[years];
    Arrays.setAll(opening, year -> random.nextInt(80));
    double slack = random.nextInt(60) + 0.5;
    assertEquals(near(costs, opening, slack), new OpenYears(costs, opening, slack).nearBest());
  }

  private static Map<Long, Double> near(double[][] costs, double[] opening, double slack) {
    Map<Long, Double> all = new HashMap<>();
    for (long set = 0; set < 1L << opening.length; set++) {
      all.put(set, cost(costs, opening, set));
    }
    double best = all.values().stream().mapToDouble(cost -> cost).min().orElseThrow();
    all.values().removeIf(cost -> cost > best + slack);
    all.replaceAll((set, cost) -> cost - best);
    return all;
  }

  private static double cost(double[][] costs, double[] opening, long set) {
    double sum = 0;
    for (int year = 0; year < opening.length; year++) {
      sum += (set >> year & 1) * opening[year];
    }
    for (double[] unit : costs) {
      double least = unit[opening.length];
      for (int year = 0; year < opening.length; year++) {
        least = (set >> year & 1) == 1 ? Math.min(least, unit[year]) : least;
      }
      sum += least;
    }
    return sum;
  }

  @Test
  void aPlanFoundInASecondKeepsTheLimitsAndIsNearItsBound() {
    BudgetProblem problem = manySites(new Random(3));
    BudgetSolution found = new SolverProgram().solve(problem, 1e-4, 4);
    int[] plan = found.chosen().orElseThrow();
    assertTrue(problem.within(problem.spend(plan)));
    assertTrue(found.bound() >= found.linearBound() && found.bound() <= found.cost());
    assertTrue(found.cost() < problem.cost(Greedy.plan(problem)));
    assertTrue(found.gap() < 0.02, () -> "gap " + found.gap());
  }

  private static BudgetProblem manySites(Random random) {
    List<Unit> units = new ArrayList<>();
    double all = 0;
    for (int u = 0; u < 80; u++) {
      double price = 4000 + random.nextInt(10000);
      double keeping = 400 + random.nextInt(2000);
      all += price;
      List<Option> options = new ArrayList<>();
      for (int year = 0; year <= 5; year++) {
        double kept = keeping * (Math.pow(1.15, year) - 1) / 0.15;
        options.add(Option.paidAtOnce(year, kept + price * (5 - year) / 9, price, 5));
      }
      units.add(new Unit("u" + u, "s" + u % 20, options));
    }
    double[] limits = new double[5];
    Arrays.fill(limits, all / 10);
    double[] today = {600, 570, 540, 510, 490};
    return new BudgetProblem(units, limits, 1, 600, today);
  }
}

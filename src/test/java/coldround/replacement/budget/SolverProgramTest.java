package coldround.replacement.budget;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.replacement.budget.BudgetProblem.Option;
import coldround.replacement.budget.BudgetProblem.Unit;
import coldround.sheet.SheetReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class SolverProgramTest {

  private static final double SECONDS = 20;
  private final BudgetProgram program = new SolverProgram();

  // made-up instance of 12 units and 3 years with budgets 20, 16, 14; the best benefit of 100 was
  // found outside this program by dynamic programming and by enumerating all 4^12 plans
  @Test
  void twelveUnitsInThreeYears() {
    List<Unit> units = new ArrayList<>();
    var text = getClass().getResourceAsStream("/replacement/budget-12-units.csv");
    try (SheetReader rows =
        SheetReader.standard(new InputStreamReader(text, StandardCharsets.UTF_8))) {
      rows.next();
      while (rows.hasNext()) {
        units.add(unit(rows.next().cells().stream().mapToInt(Integer::parseInt).toArray()));
      }
    }
    BudgetProblem problem = problem(units, 0, 0, 20, 16, 14);
    BudgetSolution best = program.solve(problem, 0, SECONDS);
    assertEquals(-100, best.cost(), 1e-6);
    assertEquals(0, best.gap(), 1e-9);
    assertTrue(problem.within(problem.spend(best.chosen().orElseThrow())));
  }

  private static Unit unit(int[] row) {
    List<Option> options = new ArrayList<>();
    for (int year = 0; year < 3; year++) {
      options.add(Option.paidAtOnce(year, -row[2 + year], row[1], 3));
    }
    options.add(never(3, 0));
    return new Unit("" + row[0], "" + row[0], options);
  }

  // Lorie and Savage (1955), as an integer program by Weingartner (1963); data from memory, optimum
  // 70
  // with projects 1, 3, 4, 6, 9 by enumeration of all 512 sets, linear relaxation 70.2727
  @Test
  void nineProjectsInTwoYears() {
    int[][] spend = {{12, 54, 6, 6, 30, 6, 48, 36, 18}, {3, 7, 6, 2, 35, 6, 4, 3, 3}};
    int[] value = {14, 17, 17, 15, 40, 12, 14, 10, 12};
    List<Unit> units = new ArrayList<>();
    for (int p = 0; p < value.length; p++) {
      Option take = new Option(0, -value[p], new double[] {spend[0][p], spend[1][p]});
      units.add(new Unit("" + p, "" + p, List.of(take, never(2, 0))));
    }
    BudgetSolution best = program.solve(problem(units, 0, 0, 50, 20), 0, SECONDS);
    assertEquals(-70, best.cost(), 1e-9);
    assertEquals(-70.27272727, best.linearBound(), 1e-8);
    assertArrayEquals(new int[] {0, 1, 0, 0, 1, 0, 1, 1, 0}, best.chosen().orElseThrow());
    assertArrayEquals(
        new double[] {48, 20},
        problem(units, 0, 0, 50, 20).spend(best.chosen().orElseThrow()),
        1e-9);
  }

  private static Option never(int years, double cost) {
    return Option.paidAtOnce(years, cost, 0, years);
  }

  // with shutdowns that a site shares, shares carried over, and units that must or must not go
  @Property(tries = 100)
  void noPlanIsCheaperAndNoneIsOverALimit(@ForAll Random random) {
    BudgetProblem problem = random(random);
    double least = cheapest(problem);
    BudgetSolution found = program.solve(problem, 0, SECONDS);
    if (Double.isInfinite(least)) {
      assertTrue(found.infeasible());
      double[] missing = program.shortfall(problem).missing();
      assertTrue(sum(missing) > 0);
      double[] raised = problem.limits();
      java.util.Arrays.setAll(raised, year -> raised[year] + missing[year]);
      assertTrue(Double.isFinite(cheapest(problem.withLimits(raised))));
    } else {
      assertEquals(least, found.cost(), 0.02);
      assertTrue(found.bound() <= least + 0.05, () -> found.bound() + " over " + least);
      assertTrue(problem.within(problem.spend(found.chosen().orElseThrow())));
      assertEquals(0, sum(program.shortfall(problem).missing()), 1e-9);
    }
  }

  private static BudgetProblem random(Random random) {
    int years = 1 + random.nextInt(3);
    int count = 1 + random.nextInt(5);
    List<Unit> units = new ArrayList<>();
    for (int u = 0; u < count; u++) {
      List<Option> options = new ArrayList<>();
      double spend = 10 + random.nextInt(9000) / 100.0;
      // must be replaced at all, or by a year; must not be before one
      int last = random.nextInt(3) == 0 ? random.nextInt(years) : years;
      int from = random.nextInt(3) == 0 ? random.nextInt(last + 1) : 0;
      for (int year = from; year <= last; year++) {
        options.add(option(random, year, spend, years));
      }
      units.add(new Unit("u" + u, "s" + random.nextInt(2), options));
    }
    double[] limits = new double[years];
    java.util.Arrays.setAll(
        limits,
        year -> random.nextInt(6) == 0 ? Double.POSITIVE_INFINITY : random.nextInt(15000) / 100.0);
    return problem(units, random.nextInt(3) / 2.0, random.nextInt(2) * 12.5, limits);
  }

  /** Some are renewed within the years, which is paid under a later limit. */
  private static Option option(Random random, int year, double spend, int years) {
    double cost = random.nextInt(20000) / 100.0;
    double[] paid = Option.paidAtOnce(year, cost, spend, years).spend();
    if (year + 1 < years && random.nextInt(4) == 0) {
      paid[years - 1] += spend / 2;
    }
    return new Option(year, cost, paid);
  }

  private static BudgetProblem problem(
      List<Unit> units, double carryOver, double siteCost, double... limits) {
    double[] today = new double[limits.length];
    java.util.Arrays.setAll(today, year -> siteCost * Math.pow(1.05, -year));
    return new BudgetProblem(units, limits, carryOver, siteCost, today);
  }

  /** Every plan there is. */
  private static double cheapest(BudgetProblem problem) {
    int[] chosen = new int[problem.units().size()];
    double least = Double.POSITIVE_INFINITY;
    do {
      if (problem.within(problem.spend(chosen))) {
        least = Math.min(least, problem.cost(chosen));
      }
    } while (next(problem, chosen));
    return least;
  }

  private static boolean next(BudgetProblem problem, int[] chosen) {
    for (int u = 0; u < chosen.length; u++) {
      if (++chosen[u] < problem.units().get(u).options().size()) {
        return true;
      }
      chosen[u] = 0;
    }
    return false;
  }

  private static double sum(double[] values) {
    return java.util.Arrays.stream(values).sum();
  }

  // two units that must go in the first year for 100 and 50, a limit of 120
  @Test
  void aLimitThatIsTooLowIsSaid() {
    List<Unit> units =
        List.of(
            new Unit("a", "s", List.of(Option.paidAtOnce(0, 1, 100, 2))),
            new Unit("b", "s", List.of(Option.paidAtOnce(0, 1, 50, 2))));
    BudgetProblem problem = problem(units, 1, 0, 120, 120);
    assertTrue(program.solve(problem, 0, SECONDS).infeasible());
    assertArrayEquals(new double[] {30, 0}, program.shortfall(problem).missing(), 1e-9);
  }

  @Test
  void theSameProblemGivesTheSamePlan() {
    BudgetProblem problem = random(new Random(7));
    int[] first = program.solve(problem, 0, SECONDS).chosen().orElseThrow();
    assertArrayEquals(first, program.solve(problem, 0, SECONDS).chosen().orElseThrow());
  }
}

package coldround.benchmark;

import coldround.replacement.budget.BudgetProblem;
import coldround.replacement.budget.BudgetProblem.Option;
import coldround.replacement.budget.BudgetProblem.Unit;
import coldround.replacement.budget.BudgetSolution;
import coldround.replacement.budget.Greedy;
import coldround.replacement.budget.SolverProgram;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * {@code replacement UNITS YEARS}: the budget program on made-up units, against a greedy plan and
 * the bound of the linear relaxation; with and without a shutdown that a site's units share.
 */
final class Replacement {

  private static final double GAP = 1e-4;
  private static final double SECONDS = 10;
  private static final int PER_SITE = 5;

  private Replacement() {}

  static void run(String... arguments) {
    if (arguments.length != 2) {
      throw new IllegalArgumentException("replacement UNITS YEARS");
    }
    int units = Integer.parseInt(arguments[0]);
    int years = Integer.parseInt(arguments[1]);
    SolverProgram program = new SolverProgram();
    program.solve(problem(20, years, 0, 99), GAP, SECONDS);
    List<String> lines = new ArrayList<>();
    System.out.println(
        "| shutdown shared | seed | plan | bound | gap % | LP bound | plan over LP bound % | greedy over bound % | seconds | cpu s |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    for (double shutdown : new double[] {0, 600}) {
      for (int seed = 1; seed <= 3; seed++) {
        lines.add(one(program, problem(units, years, shutdown, seed), shutdown, seed));
      }
    }
    System.out.println(
        "{\"benchmark\":\"replacement\",\"units\":"
            + units
            + ",\"years\":"
            + years
            + ",\"runs\":["
            + String.join(",", lines)
            + "]}");
  }

  private static String one(
      SolverProgram program, BudgetProblem problem, double shutdown, int seed) {
    double cpu = cpu();
    BudgetSolution found = program.solve(problem, GAP, SECONDS);
    double used = cpu() - cpu;
    int[] plan = found.chosen().orElseThrow();
    if (!problem.within(problem.spend(plan))) {
      throw new IllegalStateException("the plan is over a limit");
    }
    double greedy = problem.cost(Greedy.plan(problem));
    double over = 100 * (greedy / found.bound() - 1);
    System.out.printf(
        Locale.ROOT,
        "| %.0f | %d | %.0f | %.0f | %.4f | %.0f | %.4f | %.3f | %.2f | %.2f |%n",
        shutdown,
        seed,
        found.cost(),
        found.bound(),
        100 * found.gap(),
        found.linearBound(),
        100 * (found.cost() / found.linearBound() - 1),
        over,
        found.seconds(),
        used);
    return String.format(
        Locale.ROOT,
        "{\"shutdown\":%.0f,\"seed\":%d,\"cost\":%.2f,\"bound\":%.2f,\"linearBound\":%.2f,"
            + "\"gap\":%.7f,\"proven\":%b,\"greedy\":%.2f,\"seconds\":%.3f,\"cpuSeconds\":%.3f}",
        shutdown,
        seed,
        found.cost(),
        found.bound(),
        found.linearBound(),
        found.gap(),
        found.gap() <= GAP,
        greedy,
        found.seconds(),
        used);
  }

  private static double cpu() {
    var system =
        (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return system.getProcessCpuTime() / 1e9;
  }

  /** Units of many ages and prices; limits of half of what replacing all would take. */
  private static BudgetProblem problem(int count, int years, double shutdown, long seed) {
    Random random = new Random(seed);
    List<Unit> units = new ArrayList<>();
    double all = 0;
    for (int u = 0; u < count; u++) {
      int price = 4000 + random.nextInt(10000);
      all += price;
      String site = "s" + random.nextInt(Math.max(1, count / PER_SITE));
      units.add(new Unit("u" + u, site, options(random, price, years)));
    }
    double[] limits = new double[years];
    Arrays.fill(limits, all * 0.5 / years);
    double[] today = new double[years];
    Arrays.setAll(today, year -> shutdown * Math.pow(1.05, -year));
    return new BudgetProblem(units, limits, 1, shutdown, today);
  }

  private static List<Option> options(Random random, double price, int years) {
    double keeping = 200 + 1500 * random.nextDouble();
    double growth = 1.03 + 0.15 * random.nextDouble();
    double fresh = 150 + 200 * random.nextDouble();
    List<Option> options = new ArrayList<>();
    for (int replaced = 0; replaced <= years; replaced++) {
      double cost = 0;
      for (int year = 0; year < years; year++) {
        double running =
            year < replaced
                ? keeping * Math.pow(growth, year)
                : fresh * Math.pow(1.08, year - replaced) + price / 9;
        cost += running * Math.pow(1.05, -(year + 1));
      }
      options.add(Option.paidAtOnce(replaced, cost, price, years));
    }
    return options;
  }
}

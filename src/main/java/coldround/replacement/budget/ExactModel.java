package coldround.replacement.budget;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The problem in whole hundredths of the currency, where a proof has no rounding in it. */
final class ExactModel {

  private static final double CENTS = 100;
  private static final int SHARES = 1000;
  private static final long MUCH = 1_000_000_000_000L;

  /**
   * What came of it.
   *
   * @param bound no plan of these options is cheaper
   */
  record Result(Optional<int[]> chosen, double bound, boolean infeasible) {}

  private final BudgetProblem problem;
  private final CpModel model = new CpModel();
  private final LinearExprBuilder cost = LinearExpr.newBuilder();
  private final LinearExprBuilder[] spend;
  private final BoolVar[][] taken;
  private final BoolVar[][] acts;
  private IntVar[] missing;

  /**
   * @param core options to choose from
   */
  ExactModel(BudgetProblem problem, boolean[][] core) {
    this.problem = problem;
    spend = new LinearExprBuilder[problem.years()];
    Arrays.setAll(spend, year -> LinearExpr.newBuilder());
    taken = new BoolVar[problem.units().size()][];
    Sites sites = new Sites(problem);
    acts = problem.siteCost() == 0 ? null : sites(sites.count());
    for (int u = 0; u < taken.length; u++) {
      addUnit(u, core, sites.of(problem.units().get(u)));
    }
  }

  private BoolVar[][] sites(int count) {
    double[] today = problem.siteCostToday();
    BoolVar[][] sites = new BoolVar[count][problem.years()];
    for (BoolVar[] site : sites) {
      for (int year = 0; year < site.length; year++) {
        site[year] = model.newBoolVar("");
        cost.addTerm(site[year], cents(today[year]));
        spend[year].addTerm(site[year], cents(problem.siteCost()));
      }
    }
    return sites;
  }

  private void addUnit(int u, boolean[][] core, int site) {
    List<BudgetProblem.Option> options = problem.units().get(u).options();
    taken[u] = new BoolVar[options.size()];
    List<Literal> one = new ArrayList<>();
    for (int o = 0; o < taken[u].length; o++) {
      if (core[u][o]) {
        BudgetProblem.Option option = options.get(o);
        BoolVar take = model.newBoolVar("");
        taken[u][o] = take;
        one.add(take);
        cost.addTerm(take, cents(option.cost()));
        for (int year = 0; year < spend.length; year++) {
          spend[year].addTerm(take, cents(option.spend(year)));
        }
        if (acts != null && option.year() < problem.years()) {
          model.addImplication(take, acts[site][option.year()]);
        }
      }
    }
    model.addExactlyOne(one);
  }

  private static long cents(double money) {
    return Math.round(money * CENTS);
  }

  private void addLimits(boolean soft) {
    double[] limits = problem.limits();
    long share = Math.round(problem.carryOver() * SHARES);
    missing = new IntVar[limits.length];
    IntVar left = null;
    for (int year = 0; year < limits.length; year++) {
      if (Double.isInfinite(limits[year])) {
        left = null;
        continue;
      }
      LinearExprBuilder row = LinearExpr.newBuilder().addTerm(spend[year], SHARES);
      if (left != null) {
        row.addTerm(left, -share);
      }
      if (soft) {
        missing[year] = model.newIntVar(0, MUCH, "");
        row.addTerm(missing[year], -SHARES);
      }
      left = model.newIntVar(0, MUCH, "");
      row.addTerm(left, SHARES);
      model.addLessOrEqual(row, SHARES * cents(limits[year]));
    }
  }

  /**
   * @param hint plan to begin with, if there is one
   */
  Result solve(Optional<int[]> hint, double relativeGap, double seconds) {
    addLimits(false);
    model.minimize(cost);
    hint.ifPresent(this::hint);
    CpSolver solver = solver(seconds);
    solver.getParameters().setRelativeGapLimit(relativeGap);
    CpSolverStatus status = solver.solve(model);
    if (status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE) {
      return new Result(Optional.of(chosen(solver)), solver.bestObjectiveBound() / CENTS, false);
    }
    return new Result(
        Optional.empty(), Double.NEGATIVE_INFINITY, status == CpSolverStatus.INFEASIBLE);
  }

  /** The least that the limits lack, each amount in the year in which money runs short. */
  Shortfall shortfall(double seconds) {
    addLimits(true);
    LinearExprBuilder all = LinearExpr.newBuilder();
    Arrays.stream(missing).filter(java.util.Objects::nonNull).forEach(all::add);
    model.minimize(all);
    CpSolver solver = solver(seconds);
    CpSolverStatus status = solver.solve(model);
    if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
      throw new IllegalStateException("no shortfall found: " + status);
    }
    int[] chosen = chosen(solver);
    return new Shortfall(lacking(problem.spend(chosen)), chosen);
  }

  /** What is carried over may be raised in any year before: said where it runs short. */
  private double[] lacking(double[] spend) {
    double[] limits = problem.limits();
    double[] lacks = new double[spend.length];
    double left = 0;
    for (int year = 0; year < spend.length; year++) {
      double room = limits[year] + problem.carryOver() * left;
      lacks[year] = Math.max(0, cents(spend[year] - room) / CENTS);
      left = Double.isInfinite(room) ? 0 : Math.max(0, room - spend[year]);
    }
    return lacks;
  }

  // two workers that take turns and a clock that counts work: the same problem, the same plan
  private static CpSolver solver(double seconds) {
    CpSolver solver = new CpSolver();
    solver
        .getParameters()
        .setNumWorkers(2)
        .setInterleaveSearch(true)
        .setRandomSeed(1)
        .setMaxTimeInSeconds(seconds);
    return solver;
  }

  private void hint(int[] plan) {
    for (int u = 0; u < taken.length; u++) {
      for (int o = 0; o < taken[u].length; o++) {
        if (taken[u][o] != null) {
          model.addHint(taken[u][o], o == plan[u]);
        }
      }
    }
  }

  private int[] chosen(CpSolver solver) {
    int[] chosen = new int[taken.length];
    for (int u = 0; u < taken.length; u++) {
      for (int o = 0; o < taken[u].length; o++) {
        if (taken[u][o] != null && solver.booleanValue(taken[u][o])) {
          chosen[u] = o;
        }
      }
    }
    return chosen;
  }
}

package coldround.replacement.budget;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.Optional;

/** The problem as a linear program with shares of options, or with whole ones. */
final class LinearModel implements AutoCloseable {

  private static final double NONE = Double.POSITIVE_INFINITY;

  private final BudgetProblem problem;
  private final MPSolver solver;
  private final boolean whole;
  private final MPVariable[][] taken;
  private final MPConstraint[] limits;

  /**
   * @param engine name of a solver of the library
   * @param core options to choose from, null for all
   */
  LinearModel(String engine, BudgetProblem problem, boolean whole, boolean[][] core) {
    this.problem = problem;
    this.whole = whole;
    solver = MPSolver.createSolver(engine);
    if (solver == null) {
      throw new IllegalStateException("the optimisation library has no engine " + engine);
    }
    solver.suppressOutput();
    solver.objective().setMinimization();
    taken = new MPVariable[problem.units().size()][];
    limits = limits();
    MPVariable[][] sites = sites();
    for (int u = 0; u < taken.length; u++) {
      addUnit(u, core, sites);
    }
  }

  private MPConstraint[] limits() {
    double[] money = problem.limits();
    MPConstraint[] rows = new MPConstraint[money.length];
    MPVariable left = null;
    for (int year = 0; year < money.length; year++) {
      if (Double.isInfinite(money[year])) {
        left = null;
        continue;
      }
      rows[year] = solver.makeConstraint(-NONE, money[year]);
      if (left != null) {
        rows[year].setCoefficient(left, -problem.carryOver());
      }
      left = solver.makeNumVar(0, NONE, "");
      rows[year].setCoefficient(left, 1);
    }
    return rows;
  }

  private MPVariable[][] sites() {
    if (problem.siteCost() == 0) {
      return new MPVariable[0][];
    }
    double[] today = problem.siteCostToday();
    MPVariable[][] acts = new MPVariable[new Sites(problem).count()][problem.years()];
    for (MPVariable[] site : acts) {
      for (int year = 0; year < site.length; year++) {
        site[year] = solver.makeNumVar(0, 1, "");
        solver.objective().setCoefficient(site[year], today[year]);
        if (limits[year] != null) {
          limits[year].setCoefficient(site[year], problem.siteCost());
        }
      }
    }
    return acts;
  }

  private void addUnit(int u, boolean[][] core, MPVariable[][] sites) {
    BudgetProblem.Unit unit = problem.units().get(u);
    MPConstraint one = solver.makeConstraint(1, 1);
    MPObjective objective = solver.objective();
    taken[u] = new MPVariable[unit.options().size()];
    int site = sites.length == 0 ? 0 : new Sites(problem).of(unit);
    for (int o = 0; o < taken[u].length; o++) {
      if (core != null && !core[u][o]) {
        continue;
      }
      BudgetProblem.Option option = unit.options().get(o);
      MPVariable take = solver.makeVar(0, 1, whole, "");
      taken[u][o] = take;
      one.setCoefficient(take, 1);
      objective.setCoefficient(take, option.cost());
      addSpend(take, option);
      if (option.year() < problem.years() && sites.length > 0) {
        MPConstraint atSite = solver.makeConstraint(-NONE, 0);
        atSite.setCoefficient(take, 1);
        atSite.setCoefficient(sites[site][option.year()], -1);
      }
    }
  }

  private void addSpend(MPVariable take, BudgetProblem.Option option) {
    for (int year = 0; year < limits.length; year++) {
      if (limits[year] != null && option.spend(year) != 0) {
        limits[year].setCoefficient(take, option.spend(year));
      }
    }
  }

  /** The linear relaxation with its bound; only for a model of shares over all options. */
  Relaxation relax() {
    if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
      return new Relaxation(false, Double.NEGATIVE_INFINITY, new double[0][], new double[0]);
    }
    double[][] reduced = new double[taken.length][];
    for (int u = 0; u < taken.length; u++) {
      reduced[u] = new double[taken[u].length];
      for (int o = 0; o < reduced[u].length; o++) {
        reduced[u][o] = Math.max(0, taken[u][o].reducedCost());
      }
    }
    return new Relaxation(true, solver.objective().value(), reduced, worthOfOneMore());
  }

  private double[] worthOfOneMore() {
    double[] worth = new double[limits.length];
    for (int year = 0; year < worth.length; year++) {
      worth[year] = limits[year] == null ? 0 : Math.max(0, -limits[year].dualValue());
    }
    return worth;
  }

  /** A plan, if one is found in that time; how good it is has to be judged by another bound. */
  Optional<int[]> plan(double seconds) {
    solver.setTimeLimit(Math.max(1, Math.round(seconds * 1000)));
    if (!solved()) {
      return Optional.empty();
    }
    int[] chosen = new int[taken.length];
    for (int u = 0; u < taken.length; u++) {
      for (int o = 0; o < taken[u].length; o++) {
        if (taken[u][o] != null && taken[u][o].solutionValue() > 0.5) {
          chosen[u] = o;
        }
      }
    }
    return Optional.of(chosen);
  }

  private boolean solved() {
    try {
      MPSolver.ResultStatus status = solver.solve();
      return status == MPSolver.ResultStatus.OPTIMAL || status == MPSolver.ResultStatus.FEASIBLE;
    } catch (IllegalArgumentException e) {
      // the library's way to say that the time ran out: a status that its own enumeration lacks
      return false;
    }
  }

  @Override
  public void close() {
    solver.delete();
  }
}

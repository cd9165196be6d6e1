package coldround.replacement.budget;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The problem with one choice to be made for each site, by a mixed-integer search. */
final class ColumnModel implements AutoCloseable {

  private static final String ENGINE = "SCIP";
  private static final double NONE = Double.POSITIVE_INFINITY;

  /**
   * What came of it.
   *
   * @param chosen number of the choice of each site
   * @param bound no plan of these choices is cheaper
   * @param finished true when the search was not ended by its time
   */
  record Result(Optional<int[]> chosen, double bound, boolean finished) {}

  private final BudgetProblem problem;
  private final List<List<MPVariable>> taken = new ArrayList<>();
  private final MPSolver solver = MPSolver.createSolver(ENGINE);
  private double base;

  ColumnModel(BudgetProblem problem, List<List<SiteColumns.Column>> columns) {
    this.problem = problem;
    solver.suppressOutput();
    solver.objective().setMinimization();
    MPConstraint[] limits = limits();
    columns.forEach(site -> addSite(site, limits));
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

  private void addSite(List<SiteColumns.Column> site, MPConstraint[] limits) {
    MPConstraint one = solver.makeConstraint(1, 1);
    MPObjective objective = solver.objective();
    // differences only: the search ends by a share of the cost, and the whole of it is large
    double first = site.get(0).cost();
    base += first;
    List<MPVariable> variables = new ArrayList<>();
    for (SiteColumns.Column column : site) {
      MPVariable take = solver.makeIntVar(0, 1, "");
      one.setCoefficient(take, 1);
      objective.setCoefficient(take, column.cost() - first);
      for (int year = 0; year < limits.length; year++) {
        if (limits[year] != null && column.spend()[year] != 0) {
          limits[year].setCoefficient(take, column.spend()[year]);
        }
      }
      variables.add(take);
    }
    taken.add(variables);
  }

  Result solve(double seconds) {
    solver.setTimeLimit(Math.max(1, Math.round(seconds * 1000)));
    MPSolver.ResultStatus status = solver.solve();
    boolean found =
        status == MPSolver.ResultStatus.OPTIMAL || status == MPSolver.ResultStatus.FEASIBLE;
    if (status == MPSolver.ResultStatus.INFEASIBLE) {
      return new Result(Optional.empty(), NONE, true);
    }
    return found
        ? new Result(
            Optional.of(chosen()),
            base + solver.objective().bestBound(),
            status == MPSolver.ResultStatus.OPTIMAL)
        : new Result(Optional.empty(), -NONE, false);
  }

  private int[] chosen() {
    int[] chosen = new int[taken.size()];
    for (int s = 0; s < chosen.length; s++) {
      for (int c = 0; c < taken.get(s).size(); c++) {
        if (taken.get(s).get(c).solutionValue() > 0.5) {
          chosen[s] = c;
        }
      }
    }
    return chosen;
  }

  @Override
  public void close() {
    solver.delete();
  }
}

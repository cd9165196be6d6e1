package coldround.replacement;

import coldround.replacement.budget.BudgetProblem;
import coldround.replacement.budget.BudgetProgram;
import coldround.replacement.budget.BudgetSolution;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/** Makes the plan: which unit is replaced in which year, and what that is worth. */
public final class Planner {

  /** A plan is called best when it is proven to be within this share of the best. */
  public static final double GAP = 1e-4;

  private static final double MORE = 1000;
  // the questions behind the plan itself may take less time than the plan
  private static final double SHARE_FOR_QUESTIONS = 0.3;

  private final BudgetProgram program;
  private final Economics economics;

  public Planner(BudgetProgram program, Economics economics) {
    this.program = program;
    this.economics = economics;
  }

  /**
   * @throws Conflict when no plan keeps to all that was asked
   */
  public ReplacementPlan plan(List<UnitOutlook> units, PlanOrder order) {
    BudgetProblem problem = Options.problem(units, order);
    BudgetSolution solution = program.solve(problem, GAP, order.seconds());
    if (solution.chosen().isEmpty()) {
      throw noPlan(units, order, problem, solution);
    }
    int[] years = years(problem, solution.chosen().get());
    double[] none = new double[order.limits().length];
    Arrays.fill(none, Double.POSITIVE_INFINITY);
    BudgetSolution free =
        program.solve(problem.withLimits(none), GAP, SHARE_FOR_QUESTIONS * order.seconds());
    return new ReplacementPlan(
        order,
        decisions(units, order, years),
        problem.spend(solution.chosen().get()),
        solution,
        Math.min(free.cost(), solution.cost()),
        oneMore(units, order, problem, solution, years),
        new Simulation(units, order, economics).compare(policies(units, order, years)));
  }

  private static List<UnitDecision> decisions(
      List<UnitOutlook> units, PlanOrder order, int[] years) {
    List<UnitDecision> decisions = new ArrayList<>();
    for (int u = 0; u < years.length; u++) {
      UnitOutlook unit = units.get(u);
      decisions.add(
          new UnitDecision(
              unit,
              unit.bestYear(order.terms().discount()),
              years[u],
              optional(order.must().get(unit.id())),
              optional(order.mustNot().get(unit.id()))));
    }
    return decisions;
  }

  private static OptionalInt optional(Integer value) {
    return value == null ? OptionalInt.empty() : OptionalInt.of(value);
  }

  private static int[] years(BudgetProblem problem, int[] chosen) {
    int[] years = new int[chosen.length];
    for (int u = 0; u < years.length; u++) {
      years[u] = problem.units().get(u).options().get(chosen[u]).year();
    }
    return years;
  }

  private Conflict noPlan(
      List<UnitOutlook> units, PlanOrder order, BudgetProblem problem, BudgetSolution solution) {
    if (!solution.infeasible()) {
      return new Conflict("no plan was found within " + order.seconds() + " seconds", List.of());
    }
    return Conflicts.of(units, order, problem, program.shortfall(problem));
  }

  private ReplacementPlan.OneMore oneMore(
      List<UnitOutlook> units,
      PlanOrder order,
      BudgetProblem problem,
      BudgetSolution now,
      int[] years) {
    double[] worth = program.worthOfOneMore(problem);
    int best = 0;
    for (int year = 1; year < worth.length; year++) {
      best = worth[year] > worth[best] ? year : best;
    }
    if (worth[best] <= 0) {
      return new ReplacementPlan.OneMore(-1, MORE, 0, 0, List.of());
    }
    double[] limits = problem.limits();
    limits[best] += MORE;
    BudgetProblem raised = problem.withLimits(limits);
    BudgetSolution then = program.solve(raised, GAP, SHARE_FOR_QUESTIONS * order.seconds());
    double saving = Math.max(0, now.cost() - then.cost());
    List<String> moved = new ArrayList<>();
    int[] others = saving > 0 ? years(raised, then.chosen().orElseThrow()) : years;
    for (int u = 0; u < years.length; u++) {
      if (others[u] != years[u]) {
        String from = word(order.terms(), years[u]);
        moved.add(units.get(u).place() + ": " + from + " to " + word(order.terms(), others[u]));
      }
    }
    return new ReplacementPlan.OneMore(best, MORE, saving, MORE * worth[best], moved);
  }

  private static String word(Terms terms, int year) {
    return year < terms.horizon() ? "" + (terms.firstYear() + year) : "kept";
  }

  private static List<Policy> policies(List<UnitOutlook> units, PlanOrder order, int[] years) {
    int horizon = order.terms().horizon();
    int[] never = new int[years.length];
    Arrays.fill(never, horizon);
    int[] byAge = new int[years.length];
    for (int u = 0; u < byAge.length; u++) {
      double left = units.get(u).assessment().age().life().medianYears() - units.get(u).ageYears();
      byAge[u] = (int) Math.max(0, Math.min(horizon, Math.ceil(left)));
    }
    return List.of(
        new Policy("run-to-failure", "Run to failure", never),
        new Policy("by-age", "Replace at half life of the kind", byAge),
        new Policy("plan", "This plan", years));
  }
}

package coldround.replacement.budget;

import com.google.ortools.Loader;
import java.util.Arrays;
import java.util.Optional;

/**
 * By three engines of one library (docs/decisions/0003-budget-engine.md): the linear relaxation
 * gives a bound and shows which options can matter, a mixed-integer search over those gives a good
 * plan, and an exact search closes what gap is left. Where sites share a cost, whole sites are
 * chosen for first.
 */
public final class SolverProgram implements BudgetProgram {

  private static final String LINEAR = "GLOP";
  private static final String WHOLE = "HIGHS";
  // where sites share a cost the relaxation is weaker, HIGHS runs out of time and then says nothing
  private static final String WHOLE_SHARED = "SCIP";
  private static final double SHARE_FOR_PLAN = 0.7;
  // what the choices for whole sites leave open, an exact search closes in small problems only
  private static final double SHARE_SHARED = 0.95;
  private static final double SHORTFALL_SECONDS = 5;
  // options that the relaxation shuns by more than this share of the cost are hardly in a good plan
  private static final double[] CORES = {2e-5, 2e-4, 2e-3};
  private static final double[] CORES_SHARED = {1e-4, 2e-3};

  static {
    Loader.loadNativeLibraries();
  }

  /** Loads the engines if they are not yet loaded, which takes a second or two. */
  public static void ready() {
    // the class itself does, once
  }

  @Override
  public BudgetSolution solve(BudgetProblem problem, double relativeGap, double seconds) {
    Clock clock = new Clock(seconds);
    if (Arrays.stream(problem.limits()).allMatch(Double::isInfinite)) {
      Optional<int[]> free = FreeSites.best(problem);
      if (free.isPresent()) {
        double cost = problem.cost(free.get());
        return new BudgetSolution(free, cost, cost, cost, false, clock.used());
      }
    }
    Relaxation relaxed;
    try (LinearModel model = new LinearModel(LINEAR, problem, false, null)) {
      relaxed = model.relax();
    }
    if (!relaxed.feasible()) {
      return BudgetSolution.none(true, Double.POSITIVE_INFINITY, clock.used());
    }
    double bound = relaxed.bound();
    Optional<int[]> plan = Optional.empty();
    if (problem.siteCost() > 0) {
      SharedSearch.Result shared =
          new SharedSearch(problem, relaxed).search(relativeGap, clock.left() * SHARE_SHARED);
      plan = shared.plan();
      bound = shared.bound();
    }
    if (plan.isEmpty()) {
      plan = plan(problem, relaxed, relativeGap, clock);
    }
    boolean late = plan.isPresent() && clock.used() >= seconds;
    if (late || closed(problem, plan, bound, relativeGap)) {
      return solution(problem, plan, relaxed, bound, clock);
    }
    return proven(problem, relaxed, plan, bound, relativeGap, clock);
  }

  private static boolean closed(
      BudgetProblem problem, Optional<int[]> plan, double bound, double relativeGap) {
    double cost = plan.map(problem::cost).orElse(Double.POSITIVE_INFINITY);
    return cost - bound <= relativeGap * Math.abs(cost);
  }

  private static Optional<int[]> plan(
      BudgetProblem problem, Relaxation relaxed, double relativeGap, Clock clock) {
    Optional<int[]> best = Optional.empty();
    boolean shared = problem.siteCost() > 0;
    for (double share : shared ? CORES_SHARED : CORES) {
      double most = relaxed.bound() + share * Math.abs(relaxed.bound());
      Optional<int[]> plan =
          search(shared ? WHOLE_SHARED : WHOLE, problem, core(problem, relaxed, most), clock);
      if (plan.isPresent()
          && best.map(problem::cost).orElse(Double.POSITIVE_INFINITY) > problem.cost(plan.get())) {
        best = plan;
      }
      if (closed(problem, best, relaxed.bound(), relativeGap)) {
        break;
      }
    }
    return best;
  }

  private static Optional<int[]> search(
      String engine, BudgetProblem problem, boolean[][] core, Clock clock) {
    try (LinearModel model = new LinearModel(engine, problem, true, core)) {
      return model.plan(clock.left() * SHARE_FOR_PLAN).filter(found -> fits(problem, found));
    }
  }

  private static boolean fits(BudgetProblem problem, int[] plan) {
    return problem.within(problem.spend(plan));
  }

  private static BudgetSolution proven(
      BudgetProblem problem,
      Relaxation relaxed,
      Optional<int[]> plan,
      double known,
      double relativeGap,
      Clock clock) {
    double cost = plan.map(problem::cost).orElse(Double.POSITIVE_INFINITY);
    ExactModel model = new ExactModel(problem, core(problem, relaxed, cost));
    ExactModel.Result exact = model.solve(plan, relativeGap, clock.left());
    if (exact.infeasible() && plan.isEmpty()) {
      return BudgetSolution.none(true, Double.POSITIVE_INFINITY, clock.used());
    }
    Optional<int[]> better = exact.chosen().filter(found -> problem.cost(found) < cost);
    double bound = Math.max(known, exact.bound());
    return solution(problem, better.isPresent() ? better : plan, relaxed, bound, clock);
  }

  private static BudgetSolution solution(
      BudgetProblem problem, Optional<int[]> plan, Relaxation relaxed, double bound, Clock clock) {
    if (plan.isEmpty()) {
      return BudgetSolution.none(false, bound, clock.used());
    }
    double cost = problem.cost(plan.get());
    return new BudgetSolution(
        plan, cost, Math.min(cost, bound), relaxed.bound(), false, clock.used());
  }

  private static boolean[][] core(BudgetProblem problem, Relaxation relaxed, double most) {
    boolean[][] core = new boolean[problem.units().size()][];
    for (int u = 0; u < core.length; u++) {
      core[u] = new boolean[problem.units().get(u).options().size()];
      for (int o = 0; o < core[u].length; o++) {
        core[u][o] = relaxed.mayBeIn(most, u, o);
      }
    }
    return core;
  }

  @Override
  public Shortfall shortfall(BudgetProblem problem) {
    boolean[][] all = new boolean[problem.units().size()][];
    for (int u = 0; u < all.length; u++) {
      all[u] = new boolean[problem.units().get(u).options().size()];
      Arrays.fill(all[u], true);
    }
    return new ExactModel(problem, all).shortfall(SHORTFALL_SECONDS);
  }

  @Override
  public double[] worthOfOneMore(BudgetProblem problem) {
    try (LinearModel model = new LinearModel(LINEAR, problem, false, null)) {
      Relaxation relaxed = model.relax();
      return relaxed.feasible() ? relaxed.prices() : new double[problem.years()];
    }
  }

  /** Time by the clock. */
  private static final class Clock {
    private final long began = System.nanoTime();
    private final double seconds;

    Clock(double seconds) {
      this.seconds = seconds;
    }

    double used() {
      return (System.nanoTime() - began) / 1e9;
    }

    double left() {
      return Math.max(0.1, seconds - used());
    }
  }
}

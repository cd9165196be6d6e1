package coldround.replacement.budget;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;

/**
 * The search where units of a site share a cost: among choices for whole sites that are good at the
 * prices of the linear relaxation. A mixed-integer search over them raises the bound; where it does
 * not come to an end soon, a local search beside it looks for a better plan.
 */
final class SharedSearch {

  private static final double SOON_SECONDS = 0.7;
  // a choice that is worse by more can only be in a plan that is worse by more: the bound may rise
  // so far
  private static final double BOUND_SHARE = 5e-5;
  private static final int CHOICES_PER_SITE = 4;
  private static final int ENOUGH_TO_MOVE = 300;
  private static final int ENOUGH_TO_BOUND = 600;
  private static final double NARROWEST = 1e-6;
  private static final double WIDER = 1.4;
  private static final int WIDENINGS = 24;

  /**
   * What came of it.
   *
   * @param bound no plan is cheaper
   */
  record Result(Optional<int[]> plan, double bound) {}

  private final BudgetProblem problem;
  private final Relaxation relaxed;
  private final List<SiteColumns> sites;
  private double range;

  SharedSearch(BudgetProblem problem, Relaxation relaxed) {
    this.problem = problem;
    this.relaxed = relaxed;
    this.sites = new Sites(problem).columns(relaxed.prices());
  }

  Result search(double relativeGap, double seconds) {
    long end = System.nanoTime() + (long) (seconds * 1e9);
    List<List<SiteColumns.Column>> wide =
        columns(BOUND_SHARE * Math.abs(relaxed.bound()), ENOUGH_TO_BOUND);
    double reach = relaxed.bound() + range;
    if (wide.stream().anyMatch(List::isEmpty)) {
      return new Result(Optional.empty(), relaxed.bound());
    }
    boolean complete = sites.stream().allMatch(SiteColumns::complete);
    ExecutorService beside = Executors.newSingleThreadExecutor();
    try (ColumnModel model = new ColumnModel(problem, wide)) {
      CompletableFuture<ColumnModel.Result> bounding =
          CompletableFuture.supplyAsync(() -> model.solve(seconds), beside);
      Optional<int[]> local =
          finishes(bounding)
              ? Optional.empty()
              : local(relativeGap, () -> bounding.isDone() || System.nanoTime() >= end);
      ColumnModel.Result found = bounding.join();
      double bound = complete ? Math.min(found.bound(), reach) : relaxed.bound();
      return new Result(
          better(found.chosen().map(chosen -> plan(wide, chosen)), local),
          Math.max(relaxed.bound(), bound));
    } finally {
      beside.shutdown();
    }
  }

  private static boolean finishes(CompletableFuture<?> search) {
    try {
      search.get((long) (SOON_SECONDS * 1000), TimeUnit.MILLISECONDS);
      return true;
    } catch (TimeoutException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private Optional<int[]> local(double relativeGap, BooleanSupplier stop) {
    // few, so that the search is quick
    int choices = Math.max(ENOUGH_TO_MOVE, CHOICES_PER_SITE * sites.size());
    List<List<SiteColumns.Column>> few = columns(NARROWEST * Math.abs(relaxed.bound()), choices);
    double enough = relaxed.bound() + relativeGap * Math.abs(relaxed.bound());
    return Optional.of(
        plan(few, new ColumnSearch(problem, few, relaxed.bound()).search(enough, stop)));
  }

  /** Choices within that range, or within a wider one that leaves enough of them. */
  private List<List<SiteColumns.Column>> columns(double from, int enough) {
    range = from;
    List<List<SiteColumns.Column>> columns = columns();
    for (int i = 0; i < WIDENINGS && count(columns) < enough; i++) {
      range *= WIDER;
      columns = columns();
    }
    return columns;
  }

  private static int count(List<List<SiteColumns.Column>> columns) {
    return columns.stream().mapToInt(List::size).sum();
  }

  private List<List<SiteColumns.Column>> columns() {
    List<List<SiteColumns.Column>> columns = new ArrayList<>();
    sites.forEach(site -> columns.add(site.within(range)));
    return columns;
  }

  private int[] plan(List<List<SiteColumns.Column>> columns, int[] chosen) {
    int[] plan = new int[problem.units().size()];
    for (int s = 0; s < chosen.length; s++) {
      int[] units = sites.get(s).units();
      int[] options = columns.get(s).get(chosen[s]).options();
      for (int u = 0; u < units.length; u++) {
        plan[units[u]] = options[u];
      }
    }
    return plan;
  }

  private Optional<int[]> better(Optional<int[]> one, Optional<int[]> other) {
    double oneCost = cost(one);
    double otherCost = cost(other);
    if (Double.isInfinite(oneCost) && Double.isInfinite(otherCost)) {
      return Optional.empty();
    }
    return oneCost <= otherCost ? one : other;
  }

  /** Infinite for none and for one that is over a limit. */
  private double cost(Optional<int[]> plan) {
    return plan.filter(found -> problem.within(problem.spend(found)))
        .map(problem::cost)
        .orElse(Double.POSITIVE_INFINITY);
  }
}

package coldround.rounds.search.engine;

import coldround.rounds.search.Goal;
import coldround.rounds.search.SearchOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/**
 * Several workers on one problem. They work in slices of the budget and meet in between, so that
 * what they tell each other does not depend on which thread was faster.
 */
final class Team {

  /** Slices of the budget. */
  private static final int SLICES = 60;

  /** Share of the budget for serving all mandatory stops, and for emptying tours. */
  private static final double PLACING_SHARE = 0.2;

  private static final double REDUCING_SHARE = 0.4;

  /** Temperatures as multiples of the average cost of a stop. */
  private static final double HOT = 1;

  private static final double HOT_IN_TIGHT_ROUNDS = 3;
  private static final double COLD = 0.01;

  /** From this many stops on the workers share the tours out instead of each searching all. */
  private static final int SHARED_FROM = 600;

  private final Model model;
  private final SearchOptions options;
  private final Budget budget;
  private final Consumer<Snapshot> found;
  private final List<Worker> workers = new ArrayList<>();
  private final Snapshot best;
  private final SharedWork sharedWork;

  Team(Model model, SearchOptions options, Budget budget, Consumer<Snapshot> found) {
    this.model = model;
    this.options = options;
    this.budget = budget;
    this.found = found;
    Orders orders = new Orders(model);
    boolean alone = model.active.length < SHARED_FROM;
    for (int i = 0; i < options.workers(); i++) {
      long seed = options.seed() * 1_000_003 + i;
      workers.add(new Worker(model, orders, budget, seed, alone && i % 2 == 1));
    }
    best = new Snapshot(model);
    sharedWork = new SharedWork(model, workers);
  }

  /** Searches to the end of the budget, from a plan if there is one. */
  Snapshot run(Snapshot start) {
    ExecutorService threads = Executors.newFixedThreadPool(workers.size(), Team::daemon);
    try {
      search(start, threads);
    } finally {
      threads.shutdownNow();
    }
    return best;
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "rounds-search");
    thread.setDaemon(true);
    return thread;
  }

  private void search(Snapshot start, ExecutorService threads) {
    if (start != null) {
      workers.get(0).load(start);
    }
    workers.get(0).construct();
    take(workers.get(0).best);
    spread();
    if (model.active.length < 2) {
      return;
    }
    if (best.missing > 0) {
      reduce(threads, false, 0, PLACING_SHARE);
    }
    if (options.goal() == Goal.FEWEST_VEHICLES) {
      reduce(threads, true, model.fleet.leastVehicles(model), REDUCING_SHARE);
      workers.forEach(worker -> worker.solution.mostUsed = best.toursUsed());
    }
    anneal(threads);
  }

  private double used() {
    return budget.used(workers.stream().mapToLong(worker -> worker.iterations).max().orElse(0));
  }

  private void reduce(ExecutorService threads, boolean vehicles, int least, double share) {
    workers.forEach(worker -> worker.startReducing(vehicles, least));
    double until = used();
    while (!reduced(vehicles, least) && until < share && !budget.cancelled()) {
      until = Math.min(share, until + 1.0 / SLICES);
      double end = until;
      together(threads, worker -> worker.reduce(end));
      workers.forEach(worker -> takeFewer(worker.best));
      for (Worker worker : workers) {
        if (fewer(best, worker.best)) {
          worker.load(best);
          worker.startReducing(vehicles, least);
        }
      }
    }
    spread();
  }

  private boolean reduced(boolean vehicles, int least) {
    return best.missing == 0 && (!vehicles || best.toursUsed() <= least);
  }

  private void takeFewer(Snapshot candidate) {
    if (fewer(candidate, best)) {
      best.copy(candidate);
      found.accept(best);
    }
  }

  private static boolean fewer(Snapshot one, Snapshot other) {
    return one.missing < other.missing
        || one.missing == other.missing && one.toursUsed() < other.toursUsed();
  }

  private void anneal(ExecutorService threads) {
    double from = used();
    double scale = Math.max(1e-12, best.cost / model.active.length);
    double hot = options.goal() == Goal.FEWEST_VEHICLES ? HOT_IN_TIGHT_ROUNDS : HOT;
    Cooling cooling = new Cooling(from, scale, hot * scale, COLD * scale);
    boolean shared = model.active.length >= SHARED_FROM && workers.size() > 1;
    for (int slice = 1; slice <= SLICES && !budget.cancelled(); slice++) {
      double until = from + (1 - from) * slice / SLICES;
      if (shared) {
        sharedWork.share();
      }
      together(threads, worker -> worker.anneal(cooling, until));
      if (shared) {
        take(sharedWork.merge());
      } else {
        workers.forEach(worker -> take(worker.best));
      }
    }
  }

  private void take(Snapshot candidate) {
    if (candidate.betterThan(best)) {
      best.copy(candidate);
      found.accept(best);
    }
  }

  /** Every worker continues from the best. */
  private void spread() {
    workers.forEach(worker -> worker.load(best));
  }

  private void together(ExecutorService threads, Consumer<Worker> work) {
    List<Callable<Object>> calls = new ArrayList<>();
    for (Worker worker : workers) {
      calls.add(
          () -> {
            work.accept(worker);
            return worker;
          });
    }
    try {
      for (Future<Object> done : threads.invokeAll(calls)) {
        done.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the search was interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a worker of the search failed", e.getCause());
    }
  }
}

package coldround.rounds.edge;

import coldround.fleet.Today;
import coldround.http.Caller;
import coldround.http.OncePressed;
import coldround.http.Problem;
import coldround.rounds.Draft;
import coldround.rounds.Order;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundRules;
import coldround.rounds.Rounds;
import coldround.rounds.Standing;
import coldround.rounds.Standing.State;
import coldround.rounds.Travel;
import coldround.rounds.search.Limit;
import coldround.rounds.search.SearchOptions;
import coldround.rounds.search.engine.RuinAndRecreate;
import io.quarkus.logging.Log;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.eclipse.microprofile.context.ThreadContext;

/** Plans rounds in the background, one plan after the other, each with all the power there is. */
@ApplicationScoped
class Planner implements Rounds {

  private static final int MOST_WAITING = 20;

  /** A search looks at the wish to stop all the time; what it reads before may take a while. */
  private static final int SECONDS_TO_END = 5;

  private final StoredRounds store;
  private final FleetOrder orders;
  private final AskedDrives asked;
  private final RoundRules rules;
  private final Clock clock;
  private final Today today;
  private final Caller caller;
  private final OncePressed presses;
  private final Map<String, PlanningRun> runs = new ConcurrentHashMap<>();
  private volatile boolean closing;
  private final ManagedExecutor executor =
      ManagedExecutor.builder()
          .maxAsync(1)
          .maxQueued(MOST_WAITING)
          .propagated()
          .cleared(ThreadContext.ALL_REMAINING)
          .build();

  @Inject
  Planner(
      StoredRounds store,
      FleetOrder orders,
      AskedDrives asked,
      RoundRules rules,
      Clock clock,
      Today today,
      Caller caller,
      OncePressed presses) {
    this.store = store;
    this.asked = asked;
    this.orders = orders;
    this.rules = rules;
    this.clock = clock;
    this.today = today;
    this.caller = caller;
    this.presses = presses;
  }

  /** Begins a new plan. */
  String plan(RoundRequest request) {
    String id = UUID.randomUUID().toString();
    store.begin(id, request);
    submit(first(id, request));
    return id;
  }

  private PlanningRun first(String id, RoundRequest request) {
    return new PlanningRun(Hold.first(id), request, List.of(), List.of(), clock);
  }

  /** Works on one that the store has given to it: a new one, one made anew, or one claimed. */
  void submit(PlanningRun run) {
    PlanningRun before = runs.put(run.id, run);
    if (before != null) {
      // the plan is no longer its
      before.stop();
    }
    try {
      executor.execute(() -> work(run));
    } catch (RejectedExecutionException e) {
      runs.remove(run.id, run);
      store.end(run.hold, State.FAILED, 0, null, "Too many plans were waiting.");
      throw new Problem(
              503,
              "busy",
              "Too many plans are waiting",
              MOST_WAITING + " plans are waiting to be worked on. Try again later.",
              List.of())
          .with("Retry-After", "60");
    }
  }

  private void work(PlanningRun run) {
    try {
      if (!run.cancelled()) {
        search(run);
      }
      end(run, run.stopped() ? State.STOPPED : State.PLANNED, run.plan().orElse(null), "");
    } catch (RuntimeException e) {
      if (closing) {
        // left for others; what it needs may be closed by now
        return;
      }
      // whatever it was, the caller must see that nothing more comes; the log keeps the rest
      Log.error("plan " + run.id + " failed", e);
      end(run, State.FAILED, null, "Planning failed; the log says why.");
    } finally {
      runs.remove(run.id, run);
    }
  }

  /** From here on no beat may overwrite what is stored. */
  private void end(PlanningRun run, State state, RoundPlan plan, String message) {
    synchronized (run.storing) {
      // one that was left for others to go on with is not ours to end
      if (ours(run)) {
        if (!store.end(run.hold, state, run.found(), plan, message)) {
          warnOfLoss(run);
        }
        runs.remove(run.id, run);
      }
    }
  }

  private void search(PlanningRun run) {
    Order order = orders.gather(run.asked, clock.instant(), run.kept);
    Travel travel = orders.travel();
    asked.fill(travel, order);
    Draft draft = Draft.of(order, rules, orders.prices(), travel);
    run.begin(draft);
    SearchOptions options = SearchOptions.of(run.asked.seed(), Limit.seconds(run.asked.seconds()));
    run.better(new RuinAndRecreate().search(draft.problem(), Optional.empty(), options, run));
  }

  /** Ends the search with the best plan so far, whichever instance it is on. */
  void stop(String id) {
    if (working(id)) {
      store.askToStop(id);
    }
    PlanningRun run = runs.get(id);
    if (run != null) {
      run.stop();
    }
  }

  /** Nothing is being worked on here, and more may be. */
  boolean isIdle() {
    return runs.isEmpty() && !closing;
  }

  private static void warnOfLoss(PlanningRun run) {
    Log.warnf("plan %s is no longer ours: this instance was away for too long", run.id);
  }

  private boolean ours(PlanningRun run) {
    return runs.get(run.id) == run;
  }

  /** Here or on another instance. */
  private boolean working(String id) {
    return runs.containsKey(id)
        || store.find(id).filter(entry -> entry.standing().state().open()).isPresent();
  }

  /** A killed service leaves the last best plan, and others see by the beat that it is gone. */
  @Scheduled(every = "2s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void beat() {
    for (PlanningRun run : runs.values()) {
      keep(run, run.standing().state());
    }
  }

  void atEnd(@Observes ShutdownEvent end) {
    closing = true;
    for (PlanningRun run : runs.values()) {
      leave(run);
      run.stop();
    }
    executor.shutdown();
    try {
      // nobody is interrupted: to a thread in an embedded store that would close its file for all
      if (!executor.awaitTermination(SECONDS_TO_END, TimeUnit.SECONDS)) {
        Log.warn("a plan is still being worked on: the service ends without waiting for it");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void leave(PlanningRun run) {
    synchronized (run.storing) {
      try {
        keep(run, State.INTERRUPTED);
      } catch (RuntimeException e) {
        // others take it up once they miss its beat
        Log.warnf("plan %s cannot be told as interrupted: %s", run.id, e);
      } finally {
        runs.remove(run.id, run);
      }
    }
  }

  private void keep(PlanningRun run, State state) {
    synchronized (run.storing) {
      if (ours(run)) {
        Standing standing = run.standing();
        RoundPlan fresh = run.fresh().orElse(null);
        Hold.Kept kept = store.keep(run.hold, state, standing.share(), standing.found(), fresh);
        if (kept != Hold.Kept.WRITTEN) {
          run.stop();
        }
        if (kept == Hold.Kept.LOST) {
          warnOfLoss(run);
          runs.remove(run.id, run);
        }
      }
    }
  }

  @Override
  public String plan(LocalDate from, LocalDate to, String once) {
    RoundRequest request = RoundRequest.usual(from, to, today.usually());
    String fresh = UUID.randomUUID().toString();
    String id =
        presses.id(
            once,
            "rounds " + from + ' ' + to,
            () -> {
              store.begin(fresh, request);
              return fresh;
            });
    if (id.equals(fresh)) {
      submit(first(id, request));
    }
    return id;
  }

  @Override
  public Optional<Rounds.Entry> find(String id) {
    String technician = caller.technician();
    return known(id).map(entry -> technician.isEmpty() ? entry : entry.only(technician));
  }

  private Optional<Rounds.Entry> known(String id) {
    PlanningRun run = runs.get(id);
    if (run == null) {
      return store.find(id);
    }
    Optional<RoundPlan> plan = run.plan();
    return Optional.of(
        new Rounds.Entry(
            run.standing(), plan.isPresent() ? plan : store.find(id).flatMap(Rounds.Entry::plan)));
  }

  @Override
  public List<Standing> latest(int limit) {
    return store.latest(caller.technician(), limit).stream()
        .map(
            stored -> {
              PlanningRun run = runs.get(stored.id());
              return run == null ? stored : run.standing();
            })
        .toList();
  }

  /** Days that have passed, of a plan to be made anew. */
  static List<RoundPlan.Round> past(RoundPlan plan, Instant now) {
    return plan.rounds().stream()
        .filter(round -> round.day().isBefore(now.atZone(round.zone()).toLocalDate()))
        .toList();
  }
}

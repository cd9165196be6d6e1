package coldround.rounds.edge;

import coldround.rounds.Call;
import coldround.rounds.Draft;
import coldround.rounds.Revision;
import coldround.rounds.RoundPlan;
import coldround.rounds.Standing;
import coldround.rounds.Standing.State;
import coldround.rounds.search.Plan;
import coldround.rounds.search.SearchListener;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** One plan being worked on: the best so far at any time, and the wish to stop. */
final class PlanningRun implements SearchListener {

  final String id;
  final Hold hold;
  final RoundRequest asked;
  final List<Call> kept;

  /** Held by whoever writes this run to the store. */
  final Object storing = new Object();

  private final List<RoundPlan.Round> past;
  private final Clock clock;
  private final Instant requested;
  private volatile Instant began;
  private volatile boolean stopped;
  private Draft draft;
  private Plan best;
  private RoundPlan written;
  private boolean fresh;
  private int found;

  PlanningRun(
      Hold hold, RoundRequest asked, List<RoundPlan.Round> past, List<Call> kept, Clock clock) {
    this.hold = hold;
    this.id = hold.plan();
    this.asked = asked;
    this.past = past;
    this.kept = kept;
    this.clock = clock;
    this.requested = clock.instant();
  }

  synchronized void begin(Draft prepared) {
    draft = prepared;
    began = clock.instant();
  }

  /** Only the latest is kept: it is written out when somebody wants to read it. */
  @Override
  public synchronized void better(Plan plan) {
    best = plan;
    written = null;
    fresh = true;
    found++;
  }

  @Override
  public boolean cancelled() {
    return stopped;
  }

  void stop() {
    stopped = true;
  }

  boolean stopped() {
    return stopped;
  }

  synchronized int found() {
    return found;
  }

  /** The best plan so far. */
  synchronized Optional<RoundPlan> plan() {
    if (written == null && best != null) {
      written = Revision.behind(past, asked.from(), draft.answer(draft.together(best)));
    }
    return Optional.ofNullable(written);
  }

  /** The best plan so far if it has not been given out by this before. */
  synchronized Optional<RoundPlan> fresh() {
    boolean news = fresh;
    fresh = false;
    return news ? plan() : Optional.empty();
  }

  Standing standing() {
    return new Standing(
        id,
        began == null ? State.WAITING : State.PLANNING,
        requested,
        asked.from(),
        asked.to(),
        share(),
        found(),
        hold.revision(),
        "");
  }

  private double share() {
    Instant since = began;
    return since == null
        ? 0
        : Math.min(
            1, Duration.between(since, clock.instant()).toMillis() / (1000.0 * asked.seconds()));
  }
}

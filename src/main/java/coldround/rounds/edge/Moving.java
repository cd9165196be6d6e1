package coldround.rounds.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Technician;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.rounds.ByHand;
import coldround.rounds.ByHand.Move;
import coldround.rounds.ByHand.Outcome;
import coldround.rounds.Call;
import coldround.rounds.Draft;
import coldround.rounds.Moves;
import coldround.rounds.Order;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundRules;
import coldround.rounds.Rounds;
import coldround.rounds.Travel;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Moves stops of plans that have been made, in one transaction with the check that it may be. */
@ApplicationScoped
class Moving implements Moves {

  private static final int MOST_STOPS = 100;

  private final StoredRounds store;
  private final FleetOrder orders;
  private final AskedDrives drives;
  private final RoundRules rules;
  private final Fleet fleet;
  private final Clock clock;

  @Inject
  Moving(
      StoredRounds store,
      FleetOrder orders,
      AskedDrives drives,
      RoundRules rules,
      Fleet fleet,
      Clock clock) {
    this.store = store;
    this.orders = orders;
    this.drives = drives;
    this.rules = rules;
    this.fleet = fleet;
    this.clock = clock;
  }

  @Override
  @Transactional
  public Outcome tried(String id, Move move) {
    return outcome(id, plan(found(id)), move);
  }

  @Override
  @Transactional
  public Outcome take(String id, Move move, int revision) {
    return take(
        id,
        move,
        entry -> {
          if (entry.standing().revision() != revision) {
            throw new Problem(
                412,
                "changed",
                "This is not as it was",
                "Somebody else has changed the plan. Look at it again, then decide.",
                List.of());
          }
        });
  }

  /**
   * The same.
   *
   * @param precondition throws if the plan is not what the caller has seen
   * @throws Problem 409 with the rules when one forbids it
   */
  @Transactional
  Outcome take(String id, Move move, Consumer<Rounds.Entry> precondition) {
    store.idle(id);
    Rounds.Entry entry = found(id);
    precondition.accept(entry);
    Outcome outcome = outcome(id, plan(entry), move);
    if (!outcome.possible()) {
      List<String> said = outcome.breaches().stream().map(ByHand.Breach::message).toList();
      throw Problem.conflict(String.join(" ", said)).telling("breaches", outcome.breaches());
    }
    store.revise(id, outcome.plan(), outcome.after());
    return outcome;
  }

  private Rounds.Entry found(String id) {
    return store.find(id).orElseThrow(() -> Problem.notFound("plan of rounds " + id));
  }

  private static RoundPlan plan(Rounds.Entry entry) {
    return entry
        .plan()
        .orElseThrow(() -> Problem.conflict("There is no plan yet; ask again in a second."));
  }

  private Outcome outcome(String id, RoundPlan plan, Move move) {
    check(plan, move);
    Instant now = clock.instant();
    List<Call> calls = ByHand.calls(plan, move, now, orders.bookings().keySet());
    RoundRequest asked = store.asked(id).orElseThrow().everywhere();
    Order order = orders.ofDays(asked, plan.from(), plan.to(), now, calls);
    Travel travel = orders.travel();
    drives.recall(travel, order);
    return ByHand.move(plan, move, Draft.of(order, rules, orders.prices(), travel));
  }

  private void check(RoundPlan plan, Move move) {
    List<FieldError> errors = new ArrayList<>();
    if (ByHand.round(plan, move.call()) == null) {
      errors.add(new FieldError("stop", move.call(), "is the id of a stop of this plan"));
    }
    if (fleet.technicians().stream().map(Technician::code).noneMatch(move.technician()::equals)) {
      errors.add(new FieldError("technician", move.technician(), "is the code of a technician"));
    }
    if (move.day().isBefore(plan.from()) || move.day().isAfter(plan.to())) {
      String range = "is a day of the plan, " + plan.from() + " to " + plan.to();
      errors.add(new FieldError("day", move.day().toString(), range));
    }
    if (move.position() < 0 || move.position() > MOST_STOPS) {
      String range =
          "is 1 for the first stop of the day, up to " + MOST_STOPS + ", or left out for the best";
      errors.add(new FieldError("position", String.valueOf(move.position()), range));
    }
    if (!errors.isEmpty()) {
      throw Problem.badFields(errors);
    }
  }
}

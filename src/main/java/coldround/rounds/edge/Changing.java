package coldround.rounds.edge;

import coldround.fleet.Today;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.quantity.MeasureSystem;
import coldround.rounds.Call;
import coldround.rounds.Draft;
import coldround.rounds.Job;
import coldround.rounds.Order;
import coldround.rounds.Revision;
import coldround.rounds.RoundPlan;
import coldround.rounds.RoundRules;
import coldround.rounds.Rounds;
import coldround.rounds.Travel;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

/** Changes plans that have been made: planned anew, or with an emergency put in. */
@ApplicationScoped
class Changing {

  private static final Set<String> SKILLS = Set.of("", "electrical", "refrigerant");
  private static final int MOST_MINUTES = 24 * 60;
  private static final int USUAL_MINUTES = 60;

  private final Planner planner;
  private final StoredRounds store;
  private final FleetOrder orders;
  private final AskedDrives drives;
  private final RoundRules rules;
  private final Today today;
  private final Clock clock;

  @Inject
  Changing(
      Planner planner,
      StoredRounds store,
      FleetOrder orders,
      AskedDrives drives,
      RoundRules rules,
      Today today,
      Clock clock) {
    this.planner = planner;
    this.store = store;
    this.orders = orders;
    this.drives = drives;
    this.rules = rules;
    this.today = today;
    this.clock = clock;
  }

  /**
   * What was put in.
   *
   * @param id of the emergency as a task
   * @param moved stops that changed their place or are left out to make room
   * @param round the round that takes it
   */
  record Inserted(String id, LocalDate day, List<String> moved, RoundView.Round round) {}

  /** A stop of an emergency that was asked for. */
  private record Asked(String unit, int minutes, String skill, LocalDate day) {}

  void replan(String id, JsonNode body) {
    RoundRequest before = store.asked(id).orElseThrow();
    RoundRequest.Reading reading = new RoundRequest.Reading(body);
    RoundRequest asked = reading.again(before);
    Set<String> withdrawn = reading.withdrawn();
    if (asked.to().isBefore(today.usually())) {
      throw Problem.conflict("All days of this plan have passed: plan new rounds.");
    }
    planner.submit(
        store.again(
            id, hold -> run(hold, asked, store.find(id).flatMap(Rounds.Entry::plan), withdrawn)));
  }

  /** Goes on with one whose service ended while it was planned, from the best that was stored. */
  void goOn(Hold hold) {
    RoundRequest asked = store.asked(hold.plan()).orElseThrow();
    // a first plan has nothing behind it: what was found so far is no promise yet
    Optional<RoundPlan> made =
        hold.revision() == 0
            ? Optional.empty()
            : store.find(hold.plan()).flatMap(Rounds.Entry::plan);
    planner.submit(run(hold, asked, made, Set.of()));
  }

  /** With what planning anew may not touch. */
  private PlanningRun run(
      Hold hold, RoundRequest asked, Optional<RoundPlan> made, Set<String> withdrawn) {
    Instant now = clock.instant();
    List<RoundPlan.Round> past = made.map(plan -> Planner.past(plan, now)).orElse(List.of());
    List<Call> kept = made.map(plan -> kept(plan, past, now, withdrawn)).orElse(List.of());
    return new PlanningRun(hold, asked, past, kept, clock);
  }

  private List<Call> kept(
      RoundPlan plan, List<RoundPlan.Round> past, Instant now, Set<String> withdrawn) {
    Set<String> gone = new HashSet<>();
    past.forEach(round -> round.stops().forEach(stop -> gone.add(stop.call().id())));
    List<Call> kept = new ArrayList<>();
    for (Call call : Revision.kept(plan, now, orders.bookings().keySet())) {
      if (gone.add(call.id())) {
        kept.add(call);
      }
    }
    Set<String> unknown = new TreeSet<>(withdrawn);
    for (Call call : Revision.emergencies(plan, today.usually())) {
      boolean stays = !unknown.remove(call.jobs().get(0).task());
      if (gone.add(call.id()) && stays) {
        kept.add(call.keeping(null));
      }
    }
    if (!unknown.isEmpty()) {
      String wanted = "names emergencies of this plan";
      throw Problem.badField("withdrawn", String.join(", ", unknown), wanted);
    }
    return kept;
  }

  @Transactional
  Inserted emergency(String id, JsonNode body, MeasureSystem system) {
    store.idle(id);
    RoundPlan plan =
        store
            .find(id)
            .flatMap(Rounds.Entry::plan)
            .orElseThrow(() -> Problem.conflict("There is no plan to put an emergency into."));
    Asked asked = read(body, plan);
    String task = "emergency-" + UUID.randomUUID();
    Job job =
        orders
            .emergency(asked.unit, task, asked.minutes, asked.skill, Job.EMERGENCY, asked.day)
            .orElseThrow(() -> Problem.badField("unit", asked.unit, "is the id of a unit"));
    Draft draft = draft(id, plan, asked.day, job);
    Revision.Outcome outcome = Revision.insert(plan, asked.day, draft);
    if (outcome.round() == null) {
      throw Problem.conflict(noWay(draft, asked));
    }
    List<RoundPlan.Round> changed =
        outcome.plan().rounds().stream()
            .filter(round -> round.day().equals(asked.day))
            .filter(round -> !plan.rounds().contains(round))
            .toList();
    store.revise(id, outcome.plan(), changed);
    return new Inserted(
        task,
        asked.day,
        outcome.moved(),
        RoundView.round(outcome.round(), plan.currency(), system));
  }

  private Draft draft(String id, RoundPlan plan, LocalDate day, Job job) {
    Instant now = clock.instant();
    List<Call> calls = new ArrayList<>();
    for (Call call : Revision.day(plan, day, now, orders.bookings().keySet())) {
      calls.add(call);
    }
    calls.add(new Call("c" + job.task(), job.site(), List.of(job), day, day, true, null));
    RoundRequest before = store.asked(id).orElseThrow();
    Order order = orders.ofDay(before.everywhere(), day, now, calls);
    Travel travel = orders.travel();
    drives.recall(travel, order);
    Draft draft = Draft.of(order, rules, orders.prices(), travel);
    if (draft.problem().stops().isEmpty()
        || !draft
            .problem()
            .stops()
            .get(draft.problem().stops().size() - 1)
            .name()
            .equals("c" + job.task())) {
      throw Problem.conflict(
          "The site of this unit cannot be planned: " + String.join(" ", draft.complaints()));
    }
    return draft;
  }

  private static String noWay(Draft draft, Asked asked) {
    String complaints = String.join(" ", draft.complaints());
    return "No technician can take "
        + asked.minutes
        + " minutes there on "
        + asked.day
        + (asked.skill.isEmpty() ? "" : " with the skill " + asked.skill)
        + ", even if another stop makes room. "
        + complaints;
  }

  private Asked read(JsonNode body, RoundPlan plan) {
    if (body == null || !body.isObject()) {
      throw Problem.badField("", "", "is a JSON object such as {\"unit\": \"u12\"}");
    }
    List<FieldError> errors = new ArrayList<>();
    String unit = body.path("unit").asText("");
    if (unit.isEmpty()) {
      errors.add(new FieldError("unit", "", "is the id of a unit"));
    }
    int minutes = body.path("minutes").asInt(body.hasNonNull("minutes") ? -1 : USUAL_MINUTES);
    if (minutes < 1 || minutes > MOST_MINUTES) {
      String range = "is a whole number from 1 to " + MOST_MINUTES;
      errors.add(new FieldError("minutes", body.path("minutes").asText(), range));
    }
    String skill = body.path("skill").asText("");
    if (!SKILLS.contains(skill)) {
      errors.add(new FieldError("skill", skill, "is electrical, refrigerant or left out"));
    }
    LocalDate day = day(body, plan, errors);
    if (!errors.isEmpty()) {
      throw Problem.badFields(errors);
    }
    return new Asked(unit, minutes, skill, day);
  }

  private LocalDate day(JsonNode body, RoundPlan plan, List<FieldError> errors) {
    String text = body.path("day").asText("");
    try {
      LocalDate day = text.isEmpty() ? today.usually() : LocalDate.parse(text);
      if (!day.isBefore(today.usually()) && !day.isBefore(plan.from()) && !day.isAfter(plan.to())) {
        return day;
      }
    } catch (DateTimeParseException e) {
      // told below
    }
    String range = "is a day of the plan, " + plan.from() + " to " + plan.to() + ", not yet past";
    errors.add(new FieldError("day", text, range));
    return plan.from();
  }
}

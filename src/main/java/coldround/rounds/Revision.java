package coldround.rounds;

import coldround.rounds.RoundPlan.Missed;
import coldround.rounds.RoundPlan.Round;
import coldround.rounds.RoundPlan.Stop;
import coldround.rounds.search.CostSplit;
import coldround.rounds.search.Insertion;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Route;
import coldround.rounds.search.Visit;
import coldround.rounds.search.engine.Emergency;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** Changes to a plan that has been made, with what has begun left as it is. */
public final class Revision {

  /**
   * What came of an emergency.
   *
   * @param plan the plan afterwards, the one before if there was no way
   * @param round the round that takes it, null if there was no way
   * @param moved calls that changed their place or were left out to make room
   */
  public record Outcome(RoundPlan plan, Round round, List<String> moved) {}

  private Revision() {}

  /**
   * The calls of a plan that stay when the rest is planned anew: begun, under way, or booked.
   *
   * @param booked tasks that a customer has been told a time for
   */
  public static List<Call> kept(RoundPlan plan, Instant now, Set<String> booked) {
    List<Call> kept = new ArrayList<>();
    for (Round round : plan.rounds()) {
      Instant leaves = round.leaves();
      for (Stop stop : round.stops()) {
        String why = why(stop, leaves, now, booked);
        if (!why.isEmpty()) {
          kept.add(keep(round, stop, why));
        }
        leaves = stop.leaves();
      }
    }
    return kept;
  }

  /**
   * The emergencies of a plan, which only the plan knows: a plan made anew must serve them too. One
   * that nobody could take and whose day has passed is done on any day.
   */
  public static List<Call> emergencies(RoundPlan plan, LocalDate today) {
    Stream<Call> planned = plan.rounds().stream().flatMap(r -> r.stops().stream()).map(Stop::call);
    Stream<Call> left = plan.leftOut().stream().map(Missed::call).map(call -> late(call, today));
    return Stream.concat(planned, left).filter(Call::emergency).toList();
  }

  private static Call late(Call call, LocalDate today) {
    boolean late = call.last() == null || call.last().isBefore(today);
    LocalDate first = call.first() == null ? today : call.first();
    return late ? new Call(call.id(), call.site(), call.jobs(), first, null, true, null) : call;
  }

  private static String why(Stop stop, Instant leaves, Instant now, Set<String> booked) {
    if (!stop.begins().isAfter(now)) {
      return "begun";
    }
    if (!leaves.isAfter(now)) {
      return "under way";
    }
    boolean told = stop.call().jobs().stream().anyMatch(job -> booked.contains(job.task()));
    return told || stop.call().kept() != null && stop.call().kept().why().equals("booked")
        ? "booked"
        : "";
  }

  private static Call keep(Round round, Stop stop, String why) {
    return stop.call().keeping(new Kept(round.technician(), stop.begins(), round.leaves(), why));
  }

  /** The calls of one day, those that have begun or are booked kept as they are. */
  public static List<Call> day(RoundPlan plan, LocalDate day, Instant now, Set<String> booked) {
    RoundPlan only = with(plan, plan.rounds().stream().filter(r -> r.day().equals(day)).toList());
    Map<String, Call> kept = new HashMap<>();
    kept(only, now, booked).forEach(call -> kept.put(call.id(), call));
    return only.rounds().stream()
        .flatMap(round -> round.stops().stream())
        .map(stop -> kept.getOrDefault(stop.call().id(), stop.call()))
        .toList();
  }

  /** A plan of the days still to come behind the rounds of the days that have passed. */
  public static RoundPlan behind(List<Round> past, LocalDate from, RoundPlan plan) {
    List<Round> rounds = new ArrayList<>(past);
    rounds.addAll(plan.rounds());
    Bill cost = plan.cost().plus(bill(past));
    return new RoundPlan(
        from, plan.to(), rounds, plan.leftOut(), plan.notes(), cost, plan.currency());
  }

  private static RoundPlan with(RoundPlan plan, List<Round> rounds) {
    return new RoundPlan(
        plan.from(), plan.to(), rounds, plan.leftOut(), plan.notes(), plan.cost(), plan.currency());
  }

  /**
   * Puts an emergency into the rounds of one day with the smallest change.
   *
   * @param draft of that day: its calls in order, the emergency the last of them
   */
  public static Outcome insert(RoundPlan plan, LocalDate day, Draft draft) {
    int last = draft.problem().stops().size() - 1;
    Insertion done = new Emergency(draft.problem(), asSearched(plan, day, draft)).insert(last);
    if (done.vehicle().isEmpty()) {
      return new Outcome(plan, null, List.of());
    }
    RoundPlan today = draft.answer(done.plan());
    String technician = draft.day(done.vehicle().getAsInt()).worker().code();
    List<Round> rounds = new ArrayList<>(plan.rounds());
    rounds.removeIf(round -> round.day().equals(day));
    rounds.addAll(today.rounds());
    rounds.sort(Answer.BY_DAY);
    List<Missed> missed = new ArrayList<>(plan.leftOut());
    missed.addAll(today.leftOut());
    List<Note> notes = new ArrayList<>(plan.notes());
    notes.removeIf(note -> Meeting.of(note, day));
    today.notes().stream().filter(note -> Meeting.of(note, day)).forEach(notes::add);
    RoundPlan after = after(plan, rounds, missed, notes);
    Round taken =
        today.rounds().stream()
            .filter(round -> round.technician().equals(technician))
            .findFirst()
            .orElseThrow();
    List<String> moved = done.moved().stream().map(stop -> draft.call(stop).id()).toList();
    return new Outcome(after, taken, moved);
  }

  private static RoundPlan after(
      RoundPlan plan, List<Round> rounds, List<Missed> missed, List<Note> notes) {
    Bill before = bill(plan.rounds());
    Bill now = bill(rounds);
    // what waiting of the work left out costs is not in any round
    double waiting = plan.cost().deferring() - before.deferring();
    Bill cost = now.plus(new Bill(0, 0, 0, waiting));
    return new RoundPlan(plan.from(), plan.to(), rounds, missed, notes, cost, plan.currency());
  }

  private static Bill bill(List<Round> rounds) {
    return rounds.stream().map(Round::cost).reduce(Bill.NOTHING, Bill::plus);
  }

  /** The rounds of the day as the search knows them: only their order matters there. */
  private static Plan asSearched(RoundPlan plan, LocalDate day, Draft draft) {
    Map<String, Integer> stops = new HashMap<>();
    for (int s = 0; s < draft.problem().stops().size(); s++) {
      stops.put(draft.call(s).id(), s);
    }
    List<Route> routes = new ArrayList<>();
    for (int v = 0; v < draft.problem().vehicles().size(); v++) {
      String technician = draft.day(v).worker().code();
      for (Round round : plan.rounds()) {
        if (round.day().equals(day) && round.technician().equals(technician)) {
          routes.add(route(v, round, stops));
        }
      }
    }
    return new Plan(routes, List.of(), List.of(), CostSplit.ZERO);
  }

  private static Route route(int vehicle, Round round, Map<String, Integer> stops) {
    List<Visit> visits =
        round.stops().stream()
            .map(stop -> stops.get(stop.call().id()))
            .filter(java.util.Objects::nonNull)
            .map(stop -> new Visit(stop, 0, 0, 0))
            .toList();
    return new Route(vehicle, 0, 0, visits, OptionalDouble.empty(), 0, 0, 0, CostSplit.ZERO);
  }
}

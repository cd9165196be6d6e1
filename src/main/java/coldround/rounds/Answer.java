package coldround.rounds;

import coldround.rounds.search.Fault;
import coldround.rounds.search.LeftOut;
import coldround.rounds.search.Plan;
import coldround.rounds.search.Route;
import coldround.rounds.search.Unusable;
import coldround.rounds.search.Visit;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes a plan of the search as rounds of people, places and times. */
final class Answer {

  static final Comparator<RoundPlan.Round> BY_DAY =
      Comparator.comparing(RoundPlan.Round::day).thenComparing(RoundPlan.Round::technician);

  private final Draft draft;
  private final Plan plan;

  Answer(Draft draft, Plan plan) {
    this.draft = draft;
    this.plan = plan;
  }

  RoundPlan write() {
    List<RoundPlan.Round> rounds = plan.routes().stream().map(this::round).sorted(BY_DAY).toList();
    List<Note> notes = new ArrayList<>(draft.notes());
    List<RoundPlan.Missed> missed = new ArrayList<>(draft.missed());
    for (LeftOut left : plan.leftOut()) {
      missed.add(leftOut(left, notes));
    }
    plan.unusable().forEach(unusable -> notes.add(note(unusable)));
    idle(rounds, notes);
    notes.addAll(new Meeting(draft).notes(plan));
    return new RoundPlan(
        draft.order().from(),
        draft.order().to(),
        rounds,
        missed,
        notes,
        Bill.of(plan.cost()),
        draft.currency().code());
  }

  private RoundPlan.Missed leftOut(LeftOut left, List<Note> notes) {
    Call call = draft.call(left.stop());
    Why why = draft.told().leftOut(call, left.fault());
    // of days without anybody a note speaks for all the work
    boolean told =
        left.fault() == Fault.DEARER_THAN_LEAVING_OUT || left.fault() == Fault.NO_VEHICLE;
    if (!told && (left.mandatory() || left.fault() != Fault.NO_ROOM)) {
      notes.add(new Note(why.code(), "call " + call.id() + " at " + call.site(), why.us() + "."));
    }
    return new RoundPlan.Missed(call, why);
  }

  private Note note(Unusable unusable) {
    Shifts.Day day = draft.day(unusable.vehicle());
    String subject = "technician " + day.worker().code() + " on " + day.day();
    return new Note("day-unusable", subject, unusable.fault().text() + ".");
  }

  private void idle(List<RoundPlan.Round> rounds, List<Note> notes) {
    Set<String> busy = rounds.stream().map(RoundPlan.Round::technician).collect(Collectors.toSet());
    List<String> idle =
        draft.order().workers().stream()
            .filter(worker -> !busy.contains(worker.code()))
            .map(Worker::name)
            .toList();
    if (!idle.isEmpty()) {
      String names = String.join(", ", idle);
      notes.add(
          new Note("without-rounds", "technicians", "no round is planned for " + names + "."));
    }
  }

  private RoundPlan.Round round(Route route) {
    Shifts.Day day = draft.day(route.vehicle());
    Place home = day.worker().home();
    Place end = day.worker().end();
    List<RoundPlan.Stop> stops = new ArrayList<>();
    Place place = home;
    double driving = 0;
    double km = 0;
    for (Visit visit : route.visits()) {
      RoundPlan.Stop stop = stop(visit, place, day);
      driving += stop.leg().minutes();
      km += stop.leg().km();
      place = stop.premises().place();
      stops.add(stop);
    }
    Leg back = draft.network().leg(place, end);
    return new RoundPlan.Round(
        day.worker().code(),
        day.worker().name(),
        day.day(),
        day.worker().zone(),
        home,
        end,
        day.on(),
        instant(route.departs()),
        instant(route.returns()),
        rest(route),
        stops,
        back,
        km + back.km(),
        driving + back.minutes(),
        route.waitingMinutes(),
        Bill.of(route.cost()));
  }

  private RoundPlan.Stop stop(Visit visit, Place from, Shifts.Day day) {
    Call call = draft.call(visit.stop());
    Premises site = draft.premises(call);
    double setUp = draft.network().setUp(from, site.place());
    return new RoundPlan.Stop(
        call,
        site,
        draft.network().leg(from, site.place()),
        instant(visit.arrives() - setUp),
        instant(visit.begins()),
        instant(visit.leaves()),
        draft.told().planned(call, day.day()));
  }

  private Span rest(Route route) {
    if (route.restBegins().isEmpty()) {
      return null;
    }
    double begins = route.restBegins().getAsDouble();
    double minutes = draft.problem().vehicles().get(route.vehicle()).rest().minutes();
    return new Span(instant(begins), instant(begins + minutes));
  }

  private Instant instant(double minute) {
    return draft.clockwork().instant(minute);
  }
}

package coldround.rounds;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;

/**
 * Re-checks the rounds of a plan from what was asked alone, with its own reading of hours and of
 * the table of figures, and shares no code with the planner. Says all that is wrong.
 */
public final class RoundPlanChecker {

  private static final double SECOND = 1.1 / 60;

  private final Order order;
  private final ToDoubleBiFunction<Place, Place> minutes;
  private final FiguresByHand figures;
  private final Map<String, Worker> workers;
  private final Map<String, Premises> sites;
  private final List<String> wrong = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  private RoundPlanChecker(
      Order order, ToDoubleBiFunction<Place, Place> minutes, FiguresByHand figures) {
    this.order = order;
    this.minutes = minutes;
    this.figures = figures;
    workers = order.workers().stream().collect(Collectors.toMap(Worker::code, w -> w));
    sites = order.premises().stream().collect(Collectors.toMap(Premises::code, s -> s));
  }

  /**
   * @param minutes of driving between two places
   */
  public static List<String> check(
      Order order, RoundPlan plan, ToDoubleBiFunction<Place, Place> minutes) {
    RoundPlanChecker checker = new RoundPlanChecker(order, minutes, new FiguresByHand());
    Set<String> rounds = new HashSet<>();
    for (RoundPlan.Round round : plan.rounds()) {
      checker.expect(rounds.add(round.key()), round.key() + " stands twice");
      checker.round(round);
    }
    checker.company(plan);
    plan.leftOut().forEach(missed -> missed.call().jobs().forEach(checker::once));
    Set<String> asked = order.jobs().stream().map(Job::task).collect(Collectors.toSet());
    order.calls().forEach(call -> call.jobs().forEach(job -> asked.add(job.task())));
    checker.expect(asked.equals(checker.seen), "tasks are neither planned nor left out");
    return checker.wrong;
  }

  private void expect(boolean condition, String otherwise) {
    if (!condition) {
      wrong.add(otherwise);
    }
  }

  private void once(Job job) {
    expect(seen.add(job.task()), job.task() + " stands twice");
  }

  private void round(RoundPlan.Round round) {
    Worker worker = workers.get(round.technician());
    String name = round.key();
    expect(!worker.daysOff().contains(round.day()), name + " works on a day off");
    List<LocalTime[]> shift = hours(worker.hours(), round.day());
    expect(!shift.isEmpty(), name + " works on a free day");
    ZonedDateTime midnight = round.day().atStartOfDay(worker.zone());
    Instant begin = midnight.with(shift.get(0)[0]).toInstant();
    Instant end = midnight.with(shift.get(shift.size() - 1)[1]).toInstant();
    expect(!round.leaves().isBefore(begin.minusSeconds(1)), name + " leaves before work begins");
    Instant latest = later(end, figures.minutes("overtime-most")).plusSeconds(1);
    expect(!round.returns().isAfter(latest), name + " comes home too late");
    Place place = worker.home();
    Instant time = round.leaves();
    double driving = 0;
    double setUps = 0;
    for (RoundPlan.Stop stop : round.stops()) {
      Place there = sites.get(stop.call().site()).place();
      double drive = minutes.applyAsDouble(place, there);
      driving += drive;
      near(minutesBetween(time, stop.arrives()), drive, name + " to " + stop.call().id());
      double setUp = place.code().equals(there.code()) ? 0 : figures.minutes("set-up");
      setUps += setUp;
      double within = inside(round.rest(), stop) ? round.rest().minutes() : 0;
      expect(
          minutesBetween(stop.arrives(), stop.begins()) >= setUp + within - 2 * SECOND,
          name + " works before it is there, set up and rested");
      stop(stop, worker, round);
      time = stop.leaves();
      place = there;
    }
    double back = minutes.applyAsDouble(place, worker.end());
    near(minutesBetween(time, round.returns()), back, name + " home");
    near(round.drivingMinutes(), driving + back, name + " driving");
    rest(round, shift, midnight);
    double paid = minutesBetween(round.leaves(), round.returns());
    double rested = round.rest() == null ? 0 : round.rest().minutes();
    near(
        round.drivingMinutes() + setUps + round.workMinutes() + round.waitingMinutes(),
        paid - rested,
        name + " minutes of driving, setting up, work and waiting");
  }

  /** Where several technicians come to a site on a day, a note says so and why. */
  private void company(RoundPlan plan) {
    Map<String, Set<String>> there = new TreeMap<>();
    for (RoundPlan.Round round : plan.rounds()) {
      for (RoundPlan.Stop stop : round.stops()) {
        String where = "site " + stop.call().site() + " on " + round.day();
        there.computeIfAbsent(where, each -> new TreeSet<>()).add(round.name());
      }
    }
    there.values().removeIf(names -> names.size() == 1);
    Map<String, String> told =
        plan.notes().stream()
            .filter(note -> note.code().equals("several-technicians"))
            .collect(Collectors.toMap(Note::subject, Note::message));
    expect(told.keySet().equals(there.keySet()), "told of " + told + " but there are " + there);
    there.forEach(
        (where, names) ->
            names.forEach(
                name ->
                    expect(
                        told.getOrDefault(where, "").contains(name), where + " names no " + name)));
  }

  private void stop(RoundPlan.Stop stop, Worker worker, RoundPlan.Round round) {
    Call call = stop.call();
    Premises site = sites.get(call.site());
    call.jobs().forEach(this::once);
    call.jobs().forEach(job -> expect(job.site().equals(call.site()), "task of another site"));
    int work = call.jobs().stream().mapToInt(Job::minutes).sum();
    near(minutesBetween(stop.begins(), stop.leaves()), work, call.id() + " minutes of work");
    for (Job job : call.jobs()) {
      expect(worker.skills().containsAll(job.skills()), worker.code() + " cannot do " + job.task());
      expect(
          call.kept() != null || !round.day().isBefore(job.earliest()),
          job.task() + " is done too early");
      boolean lawful = job.lawful() == null || !job.lawful().isBefore(order.from());
      expect(
          call.kept() != null
              || job.lawful() == null
              || !lawful
              || !round.day().isAfter(job.lawful())
              || job.lawful().isAfter(order.to()),
          job.task() + " is done after its last day by law");
    }
    expect(open(site, stop), call.id() + " is done while " + site.code() + " is closed");
  }

  private boolean open(Premises site, RoundPlan.Stop stop) {
    if (site.hours().isBlank() || site.hours().equals("24/7")) {
      return true;
    }
    ZonedDateTime begins = stop.begins().atZone(site.zone());
    ZonedDateTime leaves = stop.leaves().atZone(site.zone());
    return hours(site.hours(), begins.toLocalDate()).stream()
        .anyMatch(
            span ->
                !begins.toLocalTime().plusSeconds(1).isBefore(span[0])
                    && !leaves.toLocalTime().minusSeconds(1).isAfter(span[1]));
  }

  /** A break is due on a day of so many hours unless the round is over when it would begin. */
  private void rest(RoundPlan.Round round, List<LocalTime[]> shift, ZonedDateTime midnight) {
    Span due = longestTimeOff(shift, midnight);
    Instant begin = midnight.with(shift.get(0)[0]).toInstant();
    Instant end = midnight.with(shift.get(shift.size() - 1)[1]).toInstant();
    double asked = due == null ? figures.minutes("break") : due.minutes();
    double shifted = figures.minutes("break-shift");
    Instant earliest =
        due == null ? later(begin, figures.minutes("break-earliest")) : later(due.from(), -shifted);
    Instant latest =
        due == null ? later(begin, figures.minutes("break-latest")) : later(due.from(), shifted);
    boolean longDay = due != null || minutesBetween(begin, end) >= figures.minutes("break-from");
    // somebody who sets out after that was free until then
    boolean gone = order.now().isAfter(latest) && !round.leaves().isBefore(order.now());
    boolean needed = longDay && !gone && round.returns().isAfter(latest.plusSeconds(1));
    expect(round.rest() != null || !needed, round.key() + " has no break");
    if (round.rest() == null) {
      return;
    }
    near(round.rest().minutes(), asked, round.key() + " break");
    expect(
        !round.rest().from().isBefore(earliest.minusSeconds(1))
            && !round.rest().from().isAfter(latest.plusSeconds(1)),
        round.key() + " has its break at the wrong time");
    long at = round.stops().stream().filter(stop -> inside(round.rest(), stop)).count();
    expect(at == 1, round.key() + " drives or works in its break");
  }

  /** Whether somebody rests between arriving at a stop and beginning the work there. */
  private static boolean inside(Span rest, RoundPlan.Stop stop) {
    return rest != null
        && !rest.from().isBefore(stop.arrives().minusSeconds(1))
        && !rest.to().isAfter(stop.begins().plusSeconds(1));
  }

  private static Span longestTimeOff(List<LocalTime[]> shift, ZonedDateTime midnight) {
    Span longest = null;
    for (int i = 1; i < shift.size(); i++) {
      Span off =
          new Span(
              midnight.with(shift.get(i - 1)[1]).toInstant(),
              midnight.with(shift.get(i)[0]).toInstant());
      longest = longest == null || off.minutes() > longest.minutes() ? off : longest;
    }
    return longest;
  }

  private static Instant later(Instant time, double minutes) {
    return time.plusMillis(Math.round(60_000 * minutes));
  }

  private void near(double stated, double found, String what) {
    expect(
        Math.abs(stated - found) <= 2 * SECOND, what + " is " + stated + " but should be " + found);
  }

  private static double minutesBetween(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / 60_000.0;
  }

  private List<LocalTime[]> hours(String text, LocalDate day) {
    boolean free = text.contains("PH") && order.holidays().contains(day);
    return HoursByHand.spans(text, free ? 0 : day.getDayOfWeek().getValue());
  }
}

package coldround.rounds;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;

/**
 * Re-checks the rounds of a plan from what was asked alone, with its own reading of hours, and
 * shares no code with the planner. Says all that is wrong.
 */
public final class RoundPlanChecker {

  private static final double SECOND = 1.1 / 60;
  private static final List<String> DAYS = List.of("mo", "tu", "we", "th", "fr", "sa", "su");

  private final Order order;
  private final ToDoubleBiFunction<Place, Place> minutes;
  private final double overtimeMinutes;
  private final Map<String, Worker> workers;
  private final Map<String, Premises> sites;
  private final List<String> wrong = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  private RoundPlanChecker(
      Order order, ToDoubleBiFunction<Place, Place> minutes, double overtimeMinutes) {
    this.order = order;
    this.minutes = minutes;
    this.overtimeMinutes = overtimeMinutes;
    workers = order.workers().stream().collect(Collectors.toMap(Worker::code, w -> w));
    sites = order.premises().stream().collect(Collectors.toMap(Premises::code, s -> s));
  }

  /**
   * @param minutes of driving between two places
   */
  public static List<String> check(
      Order order,
      RoundPlan plan,
      ToDoubleBiFunction<Place, Place> minutes,
      double overtimeMinutes) {
    RoundPlanChecker checker = new RoundPlanChecker(order, minutes, overtimeMinutes);
    Set<String> rounds = new HashSet<>();
    for (RoundPlan.Round round : plan.rounds()) {
      checker.expect(rounds.add(round.key()), round.key() + " stands twice");
      checker.round(round);
    }
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
    Instant latest = end.plusSeconds(Math.round(60 * overtimeMinutes) + 1);
    expect(!round.returns().isAfter(latest), name + " comes home too late");
    Place place = worker.home();
    Instant time = round.leaves();
    double driving = 0;
    for (RoundPlan.Stop stop : round.stops()) {
      Place there = sites.get(stop.call().site()).place();
      double drive = minutes.applyAsDouble(place, there);
      driving += drive;
      near(minutesBetween(time, stop.arrives()), drive, name + " to " + stop.call().id());
      expect(!stop.begins().isBefore(stop.arrives()), name + " works before it is there");
      stop(stop, worker, round);
      time = stop.leaves();
      place = there;
    }
    double back = minutes.applyAsDouble(place, worker.end());
    near(minutesBetween(time, round.returns()), back, name + " home");
    near(round.drivingMinutes(), driving + back, name + " driving");
    rest(round);
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

  private void rest(RoundPlan.Round round) {
    if (round.rest() == null) {
      return;
    }
    for (RoundPlan.Stop stop : round.stops()) {
      expect(
          !stop.begins().isBefore(round.rest().to().minusSeconds(1))
              || !stop.leaves().isAfter(round.rest().from().plusSeconds(1)),
          round.key() + " works in its break");
    }
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
    return hours(text, free ? 0 : day.getDayOfWeek().getValue());
  }

  /**
   * Spans of a weekday, 1 for Monday and 0 for a public holiday, in texts such as "Mo-Fr
   * 08:00-12:00,13:00-17:00; Sa off".
   */
  private static List<LocalTime[]> hours(String text, int weekday) {
    List<LocalTime[]> spans = new ArrayList<>();
    for (String rule : text.toLowerCase(Locale.ROOT).split(";")) {
      String[] parts = rule.strip().split("\\s+", 2);
      if (names(parts[0], weekday)) {
        spans.clear();
        for (String span : parts[1].equals("off") ? new String[0] : parts[1].split(",")) {
          String[] ends = span.strip().split("-");
          spans.add(new LocalTime[] {LocalTime.parse(ends[0]), LocalTime.parse(ends[1])});
        }
      }
    }
    return spans;
  }

  private static boolean names(String days, int weekday) {
    for (String part : days.split(",")) {
      String[] ends = part.split("-");
      int first = DAYS.indexOf(ends[0]) + 1;
      int last = DAYS.indexOf(ends[ends.length - 1]) + 1;
      if (part.equals("ph") ? weekday == 0 : weekday > 0 && first <= weekday && weekday <= last) {
        return true;
      }
    }
    return false;
  }
}

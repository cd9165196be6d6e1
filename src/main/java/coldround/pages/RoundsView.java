package coldround.pages;

import coldround.fleet.FleetNames;
import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.rounds.Bill;
import coldround.rounds.Call;
import coldround.rounds.Job;
import coldround.rounds.Note;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import coldround.rounds.Standing;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** A plan of rounds, ready to be shown: one day of it in full. */
public record RoundsView(
    String id,
    String span,
    String state,
    boolean open,
    String progress,
    String message,
    List<Total> totals,
    List<Day> days,
    RoundMap map,
    List<Tour> tours,
    List<Left> leftOut,
    List<Note> notes) {

  /** A sum and its name. */
  public record Total(String name, String value) {}

  /** A day to choose. */
  public record Day(String iso, String name, boolean shown) {}

  /** One technician's day. */
  public record Tour(
      int colour,
      String code,
      String name,
      String times,
      String sums,
      RoundBar bar,
      List<Stop> stops) {}

  /** One stop of it. */
  public record Stop(
      String id,
      int number,
      String clock,
      String until,
      String site,
      String address,
      String hours,
      String drive,
      boolean estimated,
      String kept,
      String why,
      List<Work> work) {}

  /** One task of a stop. */
  public record Work(
      String unit, String tag, String task, String minutes, String due, String reason) {}

  /** What is in no round. */
  public record Left(String site, String code, String what, String why) {}

  public static RoundsView of(
      Rounds.Entry entry, LocalDate wanted, MeasureSystem system, FleetNames names) {
    Standing standing = entry.standing();
    RoundPlan plan = entry.plan().orElse(null);
    List<LocalDate> days =
        plan == null
            ? List.of()
            : plan.rounds().stream().map(RoundPlan.Round::day).distinct().sorted().toList();
    LocalDate shown = wanted != null && days.contains(wanted) ? wanted : first(days);
    List<RoundPlan.Round> rounds =
        plan == null
            ? List.of()
            : plan.rounds().stream().filter(round -> round.day().equals(shown)).toList();
    return new RoundsView(
        standing.id(),
        Figures.days(standing.from(), standing.to()),
        standing.state().code(),
        standing.state().open(),
        progress(standing),
        standing.message(),
        plan == null ? List.of() : totals(plan, system),
        days.stream()
            .map(day -> new Day(day.toString(), RoundWords.day(day), day.equals(shown)))
            .toList(),
        RoundMap.of(rounds, system),
        tours(rounds, system),
        plan == null ? List.of() : left(plan, system, names),
        plan == null ? List.of() : notes(plan, names));
  }

  private static LocalDate first(List<LocalDate> days) {
    return days.isEmpty() ? null : days.get(0);
  }

  private static String progress(Standing standing) {
    return Figures.percent(standing.share())
        + " of the time is spent, "
        + Words.count(standing.found(), "plan", "plans")
        + " found, each better than the one before";
  }

  private static List<Total> totals(RoundPlan plan, MeasureSystem system) {
    Measure currency = Measure.of(plan.currency());
    Bill cost = plan.cost();
    long tasks =
        plan.rounds().stream()
            .flatMap(round -> round.stops().stream())
            .mapToLong(stop -> stop.call().jobs().size())
            .sum();
    int waiting = plan.leftOut().stream().mapToInt(missed -> missed.call().jobs().size()).sum();
    List<Total> totals = new ArrayList<>();
    totals.add(new Total("Rounds", String.valueOf(plan.rounds().size())));
    totals.add(new Total("Tasks planned", String.valueOf(tasks)));
    totals.add(new Total("Tasks left out", String.valueOf(waiting)));
    totals.add(new Total("Driving", way(plan.km(), plan.drivingMinutes(), system)));
    totals.add(new Total("Labour", money(cost.labour(), currency)));
    totals.add(new Total("Overtime", money(cost.overtime(), currency)));
    totals.add(new Total("Vans", money(cost.driving(), currency)));
    totals.add(new Total("Waiting", money(cost.deferring(), currency)));
    return totals;
  }

  private static String money(double amount, Measure currency) {
    return new Quantity(amount, currency).toString();
  }

  private static String way(double km, double minutes, MeasureSystem system) {
    String length = Figures.quantity(new Quantity(km, Measure.KILOMETRE), system);
    return length + ", " + RoundWords.minutes(minutes);
  }

  private static List<Tour> tours(List<RoundPlan.Round> rounds, MeasureSystem system) {
    Instant begin =
        rounds.stream().map(RoundPlan.Round::leaves).min(Comparator.naturalOrder()).orElse(null);
    Instant end =
        rounds.stream().map(RoundPlan.Round::returns).max(Comparator.naturalOrder()).orElse(null);
    List<Tour> tours = new ArrayList<>();
    for (RoundPlan.Round round : rounds) {
      String times =
          RoundWords.clock(round.leaves(), round.zone())
              + " to "
              + RoundWords.clock(round.returns(), round.zone());
      String sums =
          way(round.km(), round.drivingMinutes(), system)
              + " driving; "
              + RoundWords.minutes(round.workMinutes())
              + " work"
              + (round.rest() == null ? "" : "; break " + RoundWords.rest(round));
      tours.add(
          new Tour(
              tours.size() % RoundMap.COLOURS + 1,
              round.technician(),
              round.name(),
              times,
              sums,
              RoundBar.of(round, begin, end),
              stops(round, system)));
    }
    return tours;
  }

  private static List<Stop> stops(RoundPlan.Round round, MeasureSystem system) {
    List<Stop> stops = new ArrayList<>();
    ZoneId zone = round.zone();
    for (RoundPlan.Stop stop : round.stops()) {
      stops.add(
          new Stop(
              stop.call().id(),
              stops.size() + 1,
              RoundWords.clock(stop.begins(), zone),
              RoundWords.clock(stop.leaves(), zone),
              RoundWords.site(stop.premises()),
              stop.premises().address(),
              stop.premises().hours(),
              stop.leg().minutes() == 0 ? "" : way(stop.leg().km(), stop.leg().minutes(), system),
              stop.leg().estimated(),
              stop.call().kept() == null ? "" : stop.call().kept().why(),
              said(stop.why().text(system)),
              stop.call().jobs().stream().map(job -> work(job, system)).toList()));
    }
    return stops;
  }

  private static Work work(Job job, MeasureSystem system) {
    String reason = job.reasons().isEmpty() ? "" : said(job.reasons().get(0).text(system));
    return new Work(
        job.unit(),
        job.tag(),
        Words.title(job.kind()),
        job.minutes() + " min",
        Figures.day(job.due()),
        reason);
  }

  private static String said(String sentence) {
    return Told.sentence(sentence);
  }

  private static List<Note> notes(RoundPlan plan, FleetNames names) {
    RoundNotes notes = new RoundNotes(plan, names);
    return plan.notes().stream().map(notes::told).toList();
  }

  private static List<Left> left(RoundPlan plan, MeasureSystem system, FleetNames names) {
    return plan.leftOut().stream()
        .map(
            missed ->
                new Left(
                    names.place(missed.call().site()),
                    missed.call().site(),
                    what(missed.call()),
                    said(missed.why().text(system))))
        .toList();
  }

  private static String what(Call call) {
    return call.jobs().stream()
        .map(job -> job.tag() + ": " + Words.of(job.kind()))
        .collect(Collectors.joining("; "));
  }
}

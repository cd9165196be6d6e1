package coldround.rounds.edge;

import coldround.feed.Change;
import coldround.http.Measured;
import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.rounds.Bill;
import coldround.rounds.Job;
import coldround.rounds.Leg;
import coldround.rounds.Note;
import coldround.rounds.Place;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import coldround.rounds.Span;
import coldround.rounds.Standing;
import coldround.rounds.Why;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A plan as answers carry it. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RoundView(
    String id,
    String state,
    Instant requested,
    LocalDate from,
    LocalDate to,
    Progress progress,
    int revision,
    String message,
    List<Day> days,
    List<Missed> leftOut,
    List<Note> notes,
    Travelled travel,
    Cost cost) {

  record Progress(BigDecimal share, int improvements) {}

  record Day(LocalDate day, List<Round> rounds) {}

  record Who(String code, String name) {}

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Round(
      Who technician,
      Station start,
      Station end,
      OffsetDateTime leaves,
      OffsetDateTime returns,
      Pause rest,
      List<Stop> stops,
      Drive back,
      Travelled travel,
      int workMinutes,
      BigDecimal waitingMinutes,
      Cost cost) {}

  /** Where a day starts or ends: a site, or the home of a technician, or coordinates alone. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Station(String place, Double latitude, Double longitude) {}

  record Pause(OffsetDateTime from, OffsetDateTime to) {}

  record Drive(BigDecimal minutes, Measured distance, boolean estimated) {}

  record Travelled(Measured distance, BigDecimal minutes) {}

  record Cost(
      BigDecimal labour,
      BigDecimal overtime,
      BigDecimal driving,
      BigDecimal deferring,
      BigDecimal total,
      String currency) {}

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Stop(
      String id,
      SiteName site,
      Drive travel,
      OffsetDateTime arrives,
      OffsetDateTime begins,
      OffsetDateTime leaves,
      int minutes,
      List<String> competences,
      String kept,
      boolean mandatory,
      List<Task> tasks,
      Because why) {}

  record SiteName(
      String customer,
      String site,
      String name,
      String address,
      String visitingHours,
      Double latitude,
      Double longitude) {}

  record UnitName(String id, String customer, String site, String tag) {}

  record Task(
      String id,
      UnitName unit,
      String task,
      LocalDate due,
      LocalDate latest,
      int minutes,
      List<Because> reasons) {}

  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Because(String code, Boolean governs, LocalDate date, String text, String source) {}

  record Missed(String customer, String site, List<Task> tasks, Because why) {}

  static RoundView of(Rounds.Entry entry, MeasureSystem system) {
    Standing standing = entry.standing();
    RoundPlan plan = entry.plan().orElse(null);
    return new RoundView(
        standing.id(),
        standing.state().code(),
        standing.requested(),
        standing.from(),
        standing.to(),
        new Progress(number(standing.share(), 3), standing.found()),
        standing.revision(),
        standing.message().isEmpty() ? null : standing.message(),
        plan == null ? List.of() : days(plan, system),
        plan == null
            ? List.of()
            : plan.leftOut().stream().map(left -> missed(left, system)).toList(),
        plan == null ? List.of() : plan.notes(),
        plan == null
            ? null
            : new Travelled(km(plan.km(), system), number(plan.drivingMinutes(), 1)),
        plan == null ? null : cost(plan.cost(), plan.currency()));
  }

  private static List<Day> days(RoundPlan plan, MeasureSystem system) {
    Map<LocalDate, List<Round>> days = new TreeMap<>();
    for (RoundPlan.Round round : plan.rounds()) {
      days.computeIfAbsent(round.day(), day -> new ArrayList<>())
          .add(round(round, plan.currency(), system));
    }
    return days.entrySet().stream().map(day -> new Day(day.getKey(), day.getValue())).toList();
  }

  static Round round(RoundPlan.Round round, String currency, MeasureSystem system) {
    ZoneId zone = round.zone();
    return new Round(
        new Who(round.technician(), round.name()),
        station(round.home()),
        station(round.end()),
        time(round.leaves(), zone),
        time(round.returns(), zone),
        rest(round.rest(), zone),
        round.stops().stream().map(stop -> stop(stop, zone, system)).toList(),
        drive(round.back(), system),
        new Travelled(km(round.km(), system), number(round.drivingMinutes(), 1)),
        round.workMinutes(),
        number(round.waitingMinutes(), 1),
        cost(round.cost(), currency));
  }

  private static Station station(Place place) {
    return new Station(place.road(), place.latitude(), place.longitude());
  }

  private static Pause rest(Span rest, ZoneId zone) {
    return rest == null ? null : new Pause(time(rest.from(), zone), time(rest.to(), zone));
  }

  private static Stop stop(RoundPlan.Stop stop, ZoneId zone, MeasureSystem system) {
    String code = stop.premises().code();
    return new Stop(
        stop.call().id(),
        new SiteName(
            customer(code),
            site(code),
            stop.premises().name(),
            stop.premises().address(),
            stop.premises().hours(),
            stop.premises().place().latitude(),
            stop.premises().place().longitude()),
        drive(stop.leg(), system),
        time(stop.arrives(), zone),
        time(stop.begins(), zone),
        time(stop.leaves(), zone),
        stop.call().minutes(),
        stop.call().skills().stream().sorted().toList(),
        stop.call().kept() == null ? null : stop.call().kept().why(),
        stop.call().mandatory(),
        stop.call().jobs().stream().map(job -> task(job, system)).toList(),
        because(stop.why(), system));
  }

  private static Missed missed(RoundPlan.Missed left, MeasureSystem system) {
    return new Missed(
        customer(left.call().site()),
        site(left.call().site()),
        left.call().jobs().stream().map(job -> task(job, system)).toList(),
        because(left.why(), system));
  }

  private static Task task(Job job, MeasureSystem system) {
    return new Task(
        job.task(),
        new UnitName(job.unit(), customer(job.site()), site(job.site()), job.tag()),
        job.kind(),
        job.due(),
        job.latest(),
        job.minutes(),
        job.reasons().stream().map(why -> because(why, system)).toList());
  }

  private static Because because(Why why, MeasureSystem system) {
    return new Because(why.code(), why.governs(), why.date(), why.text(system), why.source());
  }

  static String customer(String site) {
    return site.substring(0, site.indexOf('/'));
  }

  static String site(String site) {
    return site.substring(site.indexOf('/') + 1);
  }

  private static Drive drive(Leg leg, MeasureSystem system) {
    return new Drive(number(leg.minutes(), 1), km(leg.km(), system), leg.estimated());
  }

  static Measured km(double km, MeasureSystem system) {
    Measured exact = Measured.of(new Quantity(km, Measure.KILOMETRE), system);
    return new Measured(number(exact.value().doubleValue(), 2), exact.unit());
  }

  static Cost cost(Bill bill, String currency) {
    return new Cost(
        number(bill.labour(), 2),
        number(bill.overtime(), 2),
        number(bill.driving(), 2),
        number(bill.deferring(), 2),
        number(bill.total(), 2),
        currency);
  }

  /** Rounded, so that answers do not show what nobody measured. */
  static BigDecimal number(double value, int decimals) {
    BigDecimal rounded =
        BigDecimal.valueOf(value)
            .setScale(decimals, java.math.RoundingMode.HALF_UP)
            .stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }

  static OffsetDateTime time(Instant instant, ZoneId zone) {
    return instant.plusMillis(500).truncatedTo(ChronoUnit.SECONDS).atZone(zone).toOffsetDateTime();
  }

  /** What the feed tells of rounds: when and where each technician is, and which tasks are done. */
  static List<Change> changes(String id, int revision, List<RoundPlan.Round> rounds) {
    return rounds.stream()
        .map(
            round ->
                new Change(
                    "coldround.round.planned", id + "/" + round.key(), data(id, revision, round)))
        .toList();
  }

  private static Map<String, Object> data(String id, int revision, RoundPlan.Round round) {
    Map<String, Object> data = new LinkedHashMap<>();
    data.put("plan", id);
    data.put("revision", revision);
    data.put("technician", round.technician());
    data.put("day", round.day());
    data.put("leaves", time(round.leaves(), round.zone()));
    data.put("returns", time(round.returns(), round.zone()));
    data.put(
        "stops",
        round.stops().stream()
            .map(
                stop ->
                    Map.of(
                        "id", stop.call().id(),
                        "customer", customer(stop.call().site()),
                        "site", site(stop.call().site()),
                        "begins", time(stop.begins(), round.zone()),
                        "leaves", time(stop.leaves(), round.zone()),
                        "tasks", stop.call().jobs().stream().map(Job::task).toList()))
            .toList());
    return data;
  }
}

package coldround.rounds.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Site;
import coldround.fleet.Technician;
import coldround.fleet.Today;
import coldround.fleet.TravelTime;
import coldround.fleet.UnitHistory;
import coldround.quantity.Measure;
import coldround.rounds.Call;
import coldround.rounds.Job;
import coldround.rounds.Kept;
import coldround.rounds.Order;
import coldround.rounds.Place;
import coldround.rounds.Premises;
import coldround.rounds.Prices;
import coldround.rounds.RoundRules;
import coldround.rounds.Travel;
import coldround.rounds.Worker;
import coldround.upkeep.Cost;
import coldround.upkeep.Costs;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Gathers from the fleet and its due tasks what rounds are planned from. */
@ApplicationScoped
class FleetOrder {

  private static final Pattern PUBLIC_HOLIDAY =
      Pattern.compile("\\bPH\\b", Pattern.CASE_INSENSITIVE);

  private final Fleet fleet;
  private final DueJobs due;
  private final Upkeep upkeep;
  private final RoundRules rules;
  private final Today today;
  private final EntityManager entities;

  @Inject
  FleetOrder(
      Fleet fleet,
      DueJobs due,
      Upkeep upkeep,
      RoundRules rules,
      Today today,
      EntityManager entities) {
    this.fleet = fleet;
    this.due = due;
    this.upkeep = upkeep;
    this.rules = rules;
    this.today = today;
    this.entities = entities;
  }

  /**
   * Everything for a plan: tasks that may be done in the span, those booked already as calls that
   * stay.
   *
   * @param kept calls of an earlier plan that stay
   */
  @Transactional
  Order gather(RoundRequest asked, Instant now, List<Call> kept) {
    LocalDate day = today.usually();
    LocalDate from = asked.from().isBefore(day) ? day : asked.from();
    List<Worker> workers = workers(asked);
    List<Job> jobs = new ArrayList<>(due.jobs(asked.customers(), asked.to()));
    Set<String> taken =
        kept.stream()
            .flatMap(call -> call.jobs().stream())
            .map(Job::task)
            .collect(Collectors.toSet());
    jobs.removeIf(job -> taken.contains(job.task()));
    List<Call> calls = new ArrayList<>(kept);
    calls.addAll(booked(jobs, workers, from, asked.to()));
    Set<LocalDate> holidays = holidays(asked, from, asked.to());
    return new Order(
        from, asked.to(), now, workers, premises(asked.customers(), kept), jobs, calls, holidays);
  }

  /** The people and places of a day whose calls are given. */
  @Transactional
  Order ofDay(RoundRequest asked, LocalDate day, Instant now, List<Call> calls) {
    return ofDays(asked, day, day, now, calls);
  }

  /** The same of several days. */
  @Transactional
  Order ofDays(RoundRequest asked, LocalDate from, LocalDate to, Instant now, List<Call> calls) {
    Set<LocalDate> holidays = holidays(asked, from, to);
    List<Premises> sites = premises(asked.customers(), calls);
    return new Order(from, to, now, workers(asked), sites, List.of(), calls, holidays);
  }

  private Set<LocalDate> holidays(RoundRequest asked, LocalDate from, LocalDate to) {
    Set<LocalDate> holidays = new HashSet<>(rules.holidays(from, to));
    holidays.addAll(asked.holidays());
    return holidays;
  }

  /** Takes the booked jobs out of the list; those booked within the span become calls. */
  private List<Call> booked(List<Job> jobs, List<Worker> workers, LocalDate from, LocalDate to) {
    Map<String, Worker> byCode =
        workers.stream().collect(Collectors.toMap(Worker::code, worker -> worker));
    Map<String, BookedRow> bookings = bookings();
    Map<List<Object>, List<Job>> together = new HashMap<>();
    for (Job job : jobs) {
      BookedRow row = bookings.get(job.task());
      if (row != null) {
        together
            .computeIfAbsent(
                List.of(job.site(), row.technician, row.starts), key -> new ArrayList<>())
            .add(job);
      }
    }
    jobs.removeIf(job -> bookings.containsKey(job.task()));
    List<Call> calls = new ArrayList<>();
    together.forEach(
        (key, all) -> {
          Worker worker = byCode.get((String) key.get(1));
          Instant starts = (Instant) key.get(2);
          if (worker != null && within(starts.atZone(worker.zone()).toLocalDate(), from, to)) {
            calls.add(call(all, new Kept(worker.code(), starts, starts, "booked")));
          }
        });
    calls.sort(Comparator.comparing(Call::id));
    return calls;
  }

  private static Call call(List<Job> jobs, Kept kept) {
    Job first = jobs.get(0);
    return new Call("c" + first.task(), first.site(), jobs, first.earliest(), null, true, kept);
  }

  private static boolean within(LocalDate day, LocalDate from, LocalDate to) {
    return !day.isBefore(from) && !day.isAfter(to);
  }

  /** The bookings of the scheduling system by task. */
  @Transactional
  Map<String, BookedRow> bookings() {
    return entities
        .createQuery("from BookedRow", BookedRow.class)
        .getResultStream()
        .collect(Collectors.toMap(row -> row.taskId, row -> row));
  }

  private List<Worker> workers(RoundRequest asked) {
    List<Site> sites = fleet.sites("");
    List<Technician> everybody = fleet.technicians();
    return everybody.stream()
        .filter(t -> asked.technicians().isEmpty() || asked.technicians().contains(t.code()))
        .map(t -> worker(t, sites, everybody, asked))
        .toList();
  }

  private Worker worker(
      Technician technician, List<Site> sites, List<Technician> everybody, RoundRequest asked) {
    Place home = new Place(technician.code(), technician.latitude(), technician.longitude());
    String code = technician.code();
    Place start = station(asked.starts().get(code), code + " start", sites, everybody, home);
    Place end = station(asked.ends().get(code), code + " end", sites, everybody, home);
    Set<LocalDate> daysOff = new HashSet<>(asked.daysOff().getOrDefault(code, Set.of()));
    technician
        .daysOff()
        .forEach(span -> span.within(asked.from(), asked.to()).forEach(daysOff::add));
    if (!PUBLIC_HOLIDAY.matcher(technician.hours()).find()) {
      daysOff.addAll(asked.holidays());
    }
    return new Worker(
        technician.code(),
        technician.name().isEmpty() ? technician.code() : technician.name(),
        start,
        end,
        technician.hours(),
        zone(home, sites),
        new HashSet<>(technician.competences()),
        daysOff);
  }

  /** A place of a day that is not home has a code of its own: it is no stop, even at a site. */
  private static Place station(
      Station asked, String code, List<Site> sites, List<Technician> everybody, Place home) {
    if (asked == null) {
      return home;
    }
    if (asked.place() == null) {
      return new Place(code, asked.latitude(), asked.longitude());
    }
    for (Site site : sites) {
      if (asked.place().equals(site.customer() + "/" + site.code())) {
        return new Place(code, site.latitude(), site.longitude(), asked.place());
      }
    }
    return everybody.stream()
        .filter(other -> other.code().equals(asked.place()))
        .findFirst()
        .map(other -> new Place(code, other.latitude(), other.longitude(), asked.place()))
        // a site that is gone since: named as a start without coordinates
        .orElseGet(() -> new Place(code, null, null, asked.place()));
  }

  /** A technician has no zone of his own: that of the nearest site is where he lives. */
  private ZoneId zone(Place home, List<Site> sites) {
    if (!home.located()) {
      return today.usual();
    }
    return sites.stream()
        .filter(site -> site.timeZone() != null && place(site).located())
        .min(Comparator.comparingDouble(site -> place(site).straightKm(home)))
        .map(Site::timeZone)
        .orElse(today.usual());
  }

  /** Of these customers, and those of calls: an emergency may be at another customer's. */
  private List<Premises> premises(List<String> customers, List<Call> calls) {
    Set<String> called = calls.stream().map(Call::site).collect(Collectors.toSet());
    return fleet.sites("").stream()
        .filter(
            site ->
                customers.isEmpty()
                    || customers.contains(site.customer())
                    || called.contains(site.customer() + "/" + site.code()))
        .map(this::premises)
        .toList();
  }

  private Premises premises(Site site) {
    return new Premises(
        site.customer() + "/" + site.code(),
        site.name(),
        site.address(),
        place(site),
        site.timeZone() == null ? today.usual() : site.timeZone(),
        site.visitingHours());
  }

  private static Place place(Site site) {
    return new Place(site.customer() + "/" + site.code(), site.latitude(), site.longitude());
  }

  /** Imported drives; what is missing there is estimated. */
  @Transactional
  Travel travel() {
    Travel travel = new Travel(rules.roads());
    for (TravelTime time : fleet.travelTimes()) {
      Double km = time.distance() == null ? null : time.distance().base();
      travel.put(time.from(), time.to(), time.minutes(), km);
    }
    return travel;
  }

  Prices prices() {
    Costs costs = upkeep.costs();
    Cost distance = costs.of("distance", "*");
    double kmEach = Measure.of(distance.per()).toBase(1);
    return new Prices(
        costs.of("labour", "*").amount(),
        costs.of("overtime", "*").amount(),
        distance.amount() / kmEach,
        costs.of("trip", "*").amount(),
        costs.currency());
  }

  /** The work of an emergency at a unit, or nothing if there is no such unit. */
  @Transactional
  java.util.Optional<Job> emergency(
      String unitId, String id, int minutes, String skill, String kind, LocalDate day) {
    return fleet.history(unitId).map(history -> emergency(history, id, minutes, skill, kind, day));
  }

  private Job emergency(
      UnitHistory history, String id, int minutes, String skill, String kind, LocalDate day) {
    return new Job(
        id,
        history.unit().customer() + "/" + history.unit().site(),
        history.unit().id(),
        history.unit().tag(),
        kind,
        minutes,
        due.competences(skill, history.unit().refrigerant()),
        day,
        day,
        day,
        null,
        0,
        List.of());
  }
}

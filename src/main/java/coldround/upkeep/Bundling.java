package coldround.upkeep;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Puts tasks of one site whose windows overlap together into as few visits as can be. */
public final class Bundling {

  private static final String TEMPLATE =
      "{tasks} tasks on {units} units can be done at once from {from} to {to}: that saves {trips}"
          + " trips of {trip}";

  private final Costs costs;

  public Bundling(Costs costs) {
    this.costs = costs;
  }

  private record Place(String customer, String site) {}

  /** A task with the days on which it may still be done; an overdue one today. */
  private record Open(Task task, LocalDate from, LocalDate to) {
    static Open of(Task task, LocalDate asOf) {
      return new Open(task, later(task.earliest(), asOf), later(task.latest(), asOf));
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
      return one.isBefore(other) ? other : one;
    }
  }

  /**
   * The visits by their last day. Every task is in exactly one; no task is done outside its window
   * but the overdue ones, which are done today.
   *
   * @param tasks of any units, such as a customer's or the whole fleet's
   */
  public List<BundledVisit> visits(List<Task> tasks, LocalDate asOf) {
    Map<Place, List<Open>> bySite = new LinkedHashMap<>();
    for (Task task : tasks) {
      Place place = new Place(task.unit().customer(), task.unit().site());
      bySite.computeIfAbsent(place, p -> new ArrayList<>()).add(Open.of(task, asOf));
    }
    List<BundledVisit> visits = new ArrayList<>();
    bySite.forEach((place, open) -> bundle(place, open, visits));
    visits.sort(
        Comparator.comparing(BundledVisit::to)
            .thenComparing(BundledVisit::customer)
            .thenComparing(BundledVisit::site));
    return visits;
  }

  /** The task whose window ends first cannot wait, so a visit on its last day takes what it can. */
  private void bundle(Place place, List<Open> open, List<BundledVisit> visits) {
    open.sort(Comparator.comparing(Open::to).thenComparing(task -> task.task().id()));
    List<Open> left = open;
    while (!left.isEmpty()) {
      LocalDate day = left.get(0).to();
      List<Open> together = left.stream().filter(task -> !task.from().isAfter(day)).toList();
      visits.add(visit(place, together));
      left = left.stream().filter(task -> task.from().isAfter(day)).toList();
    }
  }

  private BundledVisit visit(Place place, List<Open> open) {
    LocalDate from = open.stream().map(Open::from).max(Comparator.naturalOrder()).orElseThrow();
    LocalDate to = open.get(0).to();
    List<Task> tasks = open.stream().map(Open::task).toList();
    int trips = tasks.size() - 1;
    Cost trip = costs.of("trip", "*");
    long units = tasks.stream().map(task -> task.unit().id()).distinct().count();
    return new BundledVisit(
        place.customer,
        place.site,
        from,
        to,
        tasks,
        tasks.stream().mapToInt(Task::minutes).sum(),
        costs.money(trips * trip.amount()),
        UnitCase.reason(
            "bundled",
            TEMPLATE,
            trip.source(),
            "tasks",
            tasks.size(),
            "units",
            units,
            "from",
            from,
            "to",
            to,
            "trips",
            trips,
            "trip",
            trip.value()));
  }
}

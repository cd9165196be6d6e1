package coldround.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is to be planned.
 *
 * @param from first day
 * @param to last day
 * @param now nothing is planned before this instant
 * @param jobs work that may be done, in any order
 * @param calls made up already, as of an earlier plan, some of them kept as they are; their jobs
 *     are not among {@code jobs}
 * @param holidays days on which hours that speak of public holidays mean those
 */
public record Order(
    LocalDate from,
    LocalDate to,
    Instant now,
    List<Worker> workers,
    List<Premises> premises,
    List<Job> jobs,
    List<Call> calls,
    Set<LocalDate> holidays) {

  /**
   * @throws IllegalArgumentException when the last day is before the first
   */
  public Order {
    if (to.isBefore(from)) {
      throw new IllegalArgumentException("to lies before from");
    }
    workers = List.copyOf(workers);
    premises = List.copyOf(premises);
    jobs = List.copyOf(jobs);
    calls = List.copyOf(calls);
    holidays = Set.copyOf(holidays);
  }

  /** Days without any public holiday. */
  public Order(
      LocalDate from,
      LocalDate to,
      Instant now,
      List<Worker> workers,
      List<Premises> premises,
      List<Job> jobs,
      List<Call> calls) {
    this(from, to, now, workers, premises, jobs, calls, Set.of());
  }

  /** Where days start and end and where there is work, each place once. */
  public List<Place> places() {
    Map<String, Place> places = new LinkedHashMap<>();
    for (Worker worker : workers) {
      places.putIfAbsent(worker.home().code(), worker.home());
      places.putIfAbsent(worker.end().code(), worker.end());
    }
    Set<String> sites = new HashSet<>();
    jobs.forEach(job -> sites.add(job.site()));
    calls.forEach(call -> sites.add(call.site()));
    for (Premises site : premises) {
      if (sites.contains(site.code())) {
        places.putIfAbsent(site.place().code(), site.place());
      }
    }
    return List.copyOf(places.values());
  }

  List<LocalDate> days() {
    return from.datesUntil(to.plusDays(1)).toList();
  }
}

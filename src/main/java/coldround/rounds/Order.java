package coldround.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * What is to be planned.
 *
 * @param from first day
 * @param to last day
 * @param now nothing is planned before this instant
 * @param jobs work that may be done, in any order
 * @param calls made up already, as of an earlier plan, some of them kept as they are; their jobs
 *     are not among {@code jobs}
 */
public record Order(
    LocalDate from,
    LocalDate to,
    Instant now,
    List<Worker> workers,
    List<Premises> premises,
    List<Job> jobs,
    List<Call> calls) {

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
  }

  List<LocalDate> days() {
    return from.datesUntil(to.plusDays(1)).toList();
  }
}

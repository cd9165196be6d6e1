package coldround.fleet;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * All that is known of one unit: what every computation of a unit starts from.
 *
 * @param visits oldest first
 * @param reportedFaults rows of the fault list, oldest first
 */
public record UnitHistory(Site site, Unit unit, List<Visit> visits, List<Fault> reportedFaults) {

  private static final Comparator<Visit> BY_DATE =
      Comparator.comparing(Visit::date).thenComparing(Visit::number);
  private static final Comparator<Fault> FAULTS_BY_DATE =
      Comparator.comparing(Fault::date).thenComparing(Fault::failureMode);

  public UnitHistory {
    visits = visits.stream().sorted(BY_DATE).toList();
    reportedFaults = reportedFaults.stream().sorted(FAULTS_BY_DATE).toList();
  }

  /** What could be known at the end of that day: later visits and faults are left out. */
  public UnitHistory asOf(LocalDate day) {
    if (nothingAfter(day)) {
      return this;
    }
    return new UnitHistory(
        site,
        unit,
        visits.stream().filter(visit -> !visit.date().isAfter(day)).toList(),
        reportedFaults.stream().filter(fault -> !fault.date().isAfter(day)).toList());
  }

  private boolean nothingAfter(LocalDate day) {
    return (visits.isEmpty() || !visits.get(visits.size() - 1).date().isAfter(day))
        && (reportedFaults.isEmpty()
            || !reportedFaults.get(reportedFaults.size() - 1).date().isAfter(day));
  }

  /**
   * Faults of the fault list and those noted on visits, oldest first. The same failure mode on the
   * same day is one event; the fault list says more of it, so it wins.
   */
  public List<Fault> faults() {
    Set<List<Object>> reported = new HashSet<>();
    reportedFaults.forEach(fault -> reported.add(List.of(fault.date(), fault.failureMode())));
    Stream<Fault> noted =
        visits.stream()
            .flatMap(visit -> visit.faults().stream().map(mode -> noted(visit, mode)))
            .filter(fault -> reported.add(List.of(fault.date(), fault.failureMode())));
    return Stream.concat(reportedFaults.stream(), noted).sorted(FAULTS_BY_DATE).toList();
  }

  private static Fault noted(Visit visit, String mode) {
    return new Fault(visit.date(), mode, "", visit.date(), null, null, "visit " + visit.number());
  }

  /** The latest visit that did this work. */
  public Optional<Visit> lastWork(String workCode) {
    return lastVisit(visit -> visit.did(workCode));
  }

  /** The latest visit that the condition holds for. */
  public Optional<Visit> lastVisit(java.util.function.Predicate<Visit> condition) {
    for (int i = visits.size() - 1; i >= 0; i--) {
      if (condition.test(visits.get(i))) {
        return Optional.of(visits.get(i));
      }
    }
    return Optional.empty();
  }
}

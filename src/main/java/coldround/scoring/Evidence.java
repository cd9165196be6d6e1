package coldround.scoring;

import coldround.fleet.Site;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/**
 * What is known of a unit on a day, prepared once for all factors.
 *
 * @param history nothing in it is later than the day
 * @param figures of its visits, oldest first
 * @param gas what the unit holds on that day, as far as that can be told
 * @param gasFrom index of the first visit whose readings belong to that gas
 * @param gasChanged day of the change after which that is so
 * @param gasAfter day, later than the assessment, on which another gas was put in: then the
 *     equipment list does not tell what the unit held before
 */
record Evidence(
    UnitHistory history,
    LocalDate asOf,
    KindRule kind,
    boolean kindKnown,
    List<VisitFigures> figures,
    Gas gas,
    int gasFrom,
    Optional<LocalDate> gasChanged,
    Optional<LocalDate> gasAfter,
    double atmosphereKpa) {

  Unit unit() {
    return history.unit();
  }

  Site site() {
    return history.site();
  }

  /** Days from a past day to that of the assessment. */
  double daysSince(LocalDate day) {
    return ChronoUnit.DAYS.between(day, asOf);
  }

  /** Index of the latest visit that did this work; -1 for none. */
  int lastWork(String work) {
    for (int i = figures.size() - 1; i >= 0; i--) {
      if (figures.get(i).visit.did(work)) {
        return i;
      }
    }
    return -1;
  }

  Visit visit(int index) {
    return figures.get(index).visit;
  }

  /** First day on which the unit is on record: a visit or a fault. */
  Optional<LocalDate> firstSeen() {
    LocalDate visit = figures.isEmpty() ? null : visit(0).date();
    LocalDate fault =
        history.reportedFaults().isEmpty() ? null : history.reportedFaults().get(0).date();
    if (visit == null || fault == null) {
      return Optional.ofNullable(visit == null ? fault : visit);
    }
    return Optional.of(visit.isBefore(fault) ? visit : fault);
  }
}

package coldround.scoring;

import coldround.fleet.Fault;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes each failure of a unit one event and tells which of them came back. */
final class FaultEvents {

  private static final Comparator<Noted> BY_DATE =
      Comparator.comparing(Noted::date)
          .thenComparing(Noted::mode)
          .thenComparing(noted -> noted.repaired == null ? LocalDate.MAX : noted.repaired);

  /**
   * One mention of a failure.
   *
   * @param repaired null if unknown
   */
  private record Noted(LocalDate date, String mode, LocalDate repaired) {}

  private final double sameFaultDays;
  private final double windowDays;
  private final double didNotHoldDays;

  FaultEvents(Limits limits) {
    this.sameFaultDays = limits.value(LimitName.SAME_FAULT);
    this.windowDays = limits.value(LimitName.REPEAT_WINDOW);
    this.didNotHoldDays = limits.value(LimitName.DID_NOT_HOLD);
  }

  List<FaultEvent> of(UnitHistory history) {
    List<Noted> all = noted(history);
    if (all.isEmpty()) {
      return List.of();
    }
    Map<String, Noted> latest = new HashMap<>();
    List<FaultEvent> events = new ArrayList<>();
    for (Noted noted : all) {
      Noted before = latest.get(noted.mode);
      if (before != null && same(before, noted)) {
        latest.put(noted.mode, joined(before, noted));
      } else {
        latest.put(noted.mode, noted);
        events.add(event(before, noted));
      }
    }
    return events;
  }

  private static List<Noted> noted(UnitHistory history) {
    List<Noted> all = new ArrayList<>();
    for (Fault fault : history.reportedFaults()) {
      all.add(new Noted(fault.date(), fault.failureMode(), fault.repaired()));
    }
    for (Visit visit : history.visits()) {
      for (String mode : visit.faults()) {
        all.add(new Noted(visit.date(), mode, visit.date()));
      }
    }
    all.sort(BY_DATE);
    return all;
  }

  /** Told twice: on the same day, before the repair, or soon with no repair on record. */
  private boolean same(Noted before, Noted noted) {
    if (noted.date.equals(before.date)) {
      return true;
    }
    return before.repaired == null
        ? days(before.date, noted.date) <= sameFaultDays
        : !noted.date.isAfter(before.repaired);
  }

  /** The repair of one failure told twice is the later one known. */
  private static Noted joined(Noted before, Noted noted) {
    boolean later =
        before.repaired == null
            || (noted.repaired != null && noted.repaired.isAfter(before.repaired));
    return new Noted(before.date, before.mode, later ? noted.repaired : before.repaired);
  }

  private FaultEvent event(Noted before, Noted noted) {
    if (before == null) {
      return new FaultEvent(noted.date, noted.mode, Optional.empty(), Optional.empty());
    }
    boolean repeat = days(before.date, noted.date) <= windowDays;
    boolean didNotHold =
        before.repaired != null && days(before.repaired, noted.date) <= didNotHoldDays;
    return new FaultEvent(
        noted.date,
        noted.mode,
        repeat ? Optional.of(before.date) : Optional.empty(),
        didNotHold ? Optional.of(before.repaired) : Optional.empty());
  }

  private static long days(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to);
  }
}

package coldround.upkeep;

import coldround.fleet.Reading;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * When each kind of work, look and reading was last done on a unit; gathered once for all rules.
 */
final class WorkRecord {

  /** The latest grade of a part. */
  record Graded(String grade, LocalDate date) {}

  /** The latest usable value of a quantity. */
  record Read(Quantity value, LocalDate date) {}

  private final Map<String, LocalDate> work = new HashMap<>();
  private final Map<String, LocalDate> purposes = new HashMap<>();
  private final Map<String, Graded> findings = new HashMap<>();
  private final Map<String, Read> readings = new HashMap<>();
  private final LocalDate firstVisit;
  private final LocalDate lastVisit;

  WorkRecord(UnitHistory history) {
    List<Visit> visits = history.visits();
    // newest first: what is already there is the latest
    for (int i = visits.size() - 1; i >= 0; i--) {
      add(visits.get(i));
    }
    firstVisit = visits.isEmpty() ? null : visits.get(0).date();
    lastVisit = visits.isEmpty() ? null : visits.get(visits.size() - 1).date();
  }

  private void add(Visit visit) {
    LocalDate date = visit.date();
    for (String code : visit.work()) {
      work.putIfAbsent(code, date);
    }
    for (Map.Entry<String, String> found : visit.findings().entrySet()) {
      if (!findings.containsKey(found.getKey())) {
        findings.put(found.getKey(), new Graded(found.getValue(), date));
      }
    }
    purposes.putIfAbsent(visit.purpose(), date);
    List<Reading> taken = visit.readings();
    // of two of one quantity on a visit the last one holds
    for (int i = taken.size() - 1; i >= 0; i--) {
      Reading reading = taken.get(i);
      if (reading.usable() && !readings.containsKey(reading.quantity())) {
        readings.put(reading.quantity(), new Read(reading.value(), date));
      }
    }
  }

  /** The latest day on which something was done that counts as the task; null for never. */
  LocalDate done(TaskKind task) {
    LocalDate latest = lastWork(task.doneWork());
    for (String part : task.doneFindings()) {
      Graded graded = findings.get(part);
      latest = later(latest, graded == null ? null : graded.date);
    }
    for (String quantity : task.doneReadings()) {
      Read read = readings.get(quantity);
      latest = later(latest, read == null ? null : read.date);
    }
    for (String purpose : task.donePurposes()) {
      latest = later(latest, purposes.get(purpose));
    }
    return latest;
  }

  /** The latest day of any of these kinds of work; null for never. */
  LocalDate lastWork(Collection<String> codes) {
    LocalDate latest = null;
    for (String code : codes) {
      latest = later(latest, work.get(code));
    }
    return latest;
  }

  /** The later of two days, either of which may be null. */
  static LocalDate later(LocalDate one, LocalDate other) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return one.isBefore(other) ? other : one;
  }

  Map<String, Graded> findings() {
    return findings;
  }

  Map<String, LocalDate> work() {
    return work;
  }

  Optional<Read> latest(String quantity) {
    return Optional.ofNullable(readings.get(quantity));
  }

  /** Null when there was none. */
  LocalDate firstVisit() {
    return firstVisit;
  }

  /** Null when there was none. */
  LocalDate lastVisit() {
    return lastVisit;
  }
}

package coldround.fleet;

import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * One attendance at one unit.
 *
 * @param number natural key within the unit
 * @param technician code, empty if unknown
 * @param purpose breakdown, planned or survey; empty if unknown
 * @param findings graded observations by part: condenser_coil, evaporator_coil (clean light
 *     moderate heavy blocked), contactor, door, drain, wiring (good worn bad)
 * @param work codes of what was done, such as condenser-coil-cleaned
 * @param faults failure modes found, such as high-head-lockout
 */
public record Visit(
    String number,
    LocalDate date,
    String technician,
    String purpose,
    List<Reading> readings,
    Map<String, String> findings,
    List<String> work,
    List<String> faults,
    String note) {

  public Visit {
    readings = List.copyOf(readings);
    findings = Map.copyOf(findings);
    work = List.copyOf(work);
    faults = List.copyOf(faults);
  }

  /** In short, for those who look at what became of it. */
  public String brief() {
    return "%s%s, %d readings%s%s%s%s"
        .formatted(
            date,
            technician.isEmpty() ? "" : " by " + technician,
            readings.size(),
            findings.isEmpty() ? "" : ", findings " + new TreeMap<>(findings),
            work.isEmpty() ? "" : ", work " + work,
            faults.isEmpty() ? "" : ", faults " + faults,
            note.isEmpty() ? "" : ", with a note");
  }

  /** The value of a quantity with no part named, when it was taken and is believed. */
  public Optional<Quantity> value(String quantity) {
    for (Reading reading : readings) {
      if (reading.quantity().equals(quantity) && reading.part().isEmpty() && reading.usable()) {
        return Optional.of(reading.value());
      }
    }
    return Optional.empty();
  }

  /** The same visit with other readings. */
  public Visit with(List<Reading> others) {
    return new Visit(number, date, technician, purpose, others, findings, work, faults, note);
  }

  /** The grade of a part, when it was looked at. */
  public Optional<String> finding(String part) {
    return Optional.ofNullable(findings.get(part));
  }

  public boolean did(String workCode) {
    return work.contains(workCode);
  }
}

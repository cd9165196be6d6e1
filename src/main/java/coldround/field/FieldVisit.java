package coldround.field;

import java.util.List;
import java.util.Map;

/**
 * A visit as it was sent from the field, before anything of it was checked. What was not said is
 * empty.
 *
 * @param readings with refrigerant added and recovered among them
 * @param findings grade by part
 */
public record FieldVisit(
    String number,
    String date,
    String technician,
    String purpose,
    List<FieldReading> readings,
    Map<String, String> findings,
    List<String> work,
    List<String> faults,
    String note) {

  public FieldVisit {
    readings = List.copyOf(readings);
    findings = Map.copyOf(findings);
    work = List.copyOf(work);
    faults = List.copyOf(faults);
  }

  /** The same by a technician. */
  public FieldVisit by(String code) {
    return new FieldVisit(number, date, code, purpose, readings, findings, work, faults, note);
  }

  /** The same under a number made up for it. */
  public FieldVisit numbered(String made) {
    return new FieldVisit(made, date, technician, purpose, readings, findings, work, faults, note);
  }
}

package coldround.fleet.edge;

import coldround.fleet.Visit;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;

@Entity
@Table(name = "visit")
@IdClass(VisitRow.Key.class)
class VisitRow {

  record Key(Long unitId, String number) implements Serializable {}

  @Id Long unitId;
  @Id String number;

  LocalDate visited;
  String technician;
  String purpose;
  String readings;
  String findings;
  String work;
  String faults;
  String note;

  Visit read() {
    return new Visit(
        number,
        visited,
        technician,
        purpose,
        Packed.readings(readings),
        Packed.texts(findings),
        Packed.codes(work),
        Packed.codes(faults),
        note);
  }

  /** From columns in the order of the fields. */
  static Visit read(Object... columns) {
    return new Visit(
        (String) columns[1],
        (LocalDate) columns[2],
        (String) columns[3],
        (String) columns[4],
        Packed.readings((String) columns[5]),
        Packed.texts((String) columns[6]),
        Packed.codes((String) columns[7]),
        Packed.codes((String) columns[8]),
        (String) columns[9]);
  }

  void write(Visit visit) {
    number = visit.number();
    visited = visit.date();
    technician = visit.technician();
    purpose = visit.purpose();
    readings = Packed.readingsText(visit.readings());
    findings = Packed.textsText(visit.findings());
    work = String.join(";", visit.work());
    faults = String.join(";", visit.faults());
    note = visit.note();
  }
}

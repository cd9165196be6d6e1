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

  static VisitRow of(long unitId, Visit visit) {
    VisitRow row = new VisitRow();
    row.unitId = unitId;
    row.write(visit);
    return row;
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

package coldround.fleet.edge;

import coldround.fleet.Fault;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;

@Entity
@Table(name = "fault")
@IdClass(FaultRow.Key.class)
class FaultRow {

  record Key(Long unitId, LocalDate happened, String failureMode) implements Serializable {}

  @Id Long unitId;
  @Id LocalDate happened;
  @Id String failureMode;

  String cause;
  LocalDate repaired;
  String downtime;
  String stockLost;
  String note;

  Fault read() {
    return new Fault(
        happened,
        failureMode,
        cause,
        repaired,
        Packed.quantity(downtime),
        Packed.quantity(stockLost),
        note);
  }

  void write(Fault fault) {
    happened = fault.date();
    failureMode = fault.failureMode();
    cause = fault.cause();
    repaired = fault.repaired();
    downtime = Packed.text(fault.downtime());
    stockLost = Packed.text(fault.stockLost());
    note = fault.note();
  }
}

package coldround.fleet.edge;

import coldround.fleet.Fault;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.sql.ResultSet;
import java.sql.SQLException;
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

  /** From the columns id of the unit, happened, failure_mode, cause, repaired and so on. */
  static FaultRow of(ResultSet columns) throws SQLException {
    FaultRow row = new FaultRow();
    row.unitId = columns.getLong(1);
    row.happened = columns.getObject(2, LocalDate.class);
    row.failureMode = columns.getString(3);
    row.cause = columns.getString(4);
    row.repaired = columns.getObject(5, LocalDate.class);
    row.downtime = columns.getString(6);
    row.stockLost = columns.getString(7);
    row.note = columns.getString(8);
    return row;
  }

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

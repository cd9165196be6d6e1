package coldround.upkeep.edge;

import coldround.store.Column;
import coldround.store.OfUnits;
import coldround.store.PlainTable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

@Entity
@Table(name = "closed_task")
class ClosedTaskRow {
  static final String WITHDRAWN = "withdrawn";
  static final String COMPLETED = "completed";

  static final OfUnits OF_UNITS = new OfUnits("closed_task", "id", "sequence");
  static final PlainTable<ClosedTaskRow> TABLE =
      new PlainTable<>(
          "closed_task",
          1,
          List.of(
              Column.text("id", row -> row.id),
              Column.id("unit_id", row -> row.unitId),
              Column.text("task", row -> row.task),
              Column.day("due", row -> row.due),
              Column.whole("minutes", row -> row.minutes),
              Column.whole("sequence", row -> row.sequence),
              Column.moment("changed", row -> row.changed),
              Column.text("outcome", row -> row.outcome)));

  @Id String id;
  Long unitId;
  String task;
  LocalDate due;
  int minutes;
  int sequence;
  Instant changed;
  String outcome;

  /** Of a row of {@link #OF_UNITS} what it says. */
  static ClosedTaskRow of(ResultSet stored) throws SQLException {
    ClosedTaskRow row = new ClosedTaskRow();
    row.unitId = stored.getLong(1);
    row.id = stored.getString(2);
    row.sequence = stored.getInt(3);
    return row;
  }

  static ClosedTaskRow of(TaskRow open, Instant now, String outcome) {
    ClosedTaskRow row = new ClosedTaskRow();
    row.id = open.id;
    row.unitId = open.unitId;
    row.task = open.task;
    row.due = open.due;
    row.minutes = open.minutes;
    row.sequence = open.sequence + 1;
    row.changed = now;
    row.outcome = outcome;
    return row;
  }
}

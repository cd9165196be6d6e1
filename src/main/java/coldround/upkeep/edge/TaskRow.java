package coldround.upkeep.edge;

import coldround.fleet.UnitIds;
import coldround.store.Column;
import coldround.store.OfUnits;
import coldround.store.PlainTable;
import coldround.upkeep.Task;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;

@Entity
@Table(name = "upkeep_task")
class TaskRow {
  static final OfUnits OF_UNITS =
      new OfUnits(
          "upkeep_task",
          "id",
          "task",
          "due",
          "earliest",
          "latest",
          "minutes",
          "priority",
          "state",
          "sequence",
          "changed");
  static final PlainTable<TaskRow> TABLE =
      new PlainTable<>(
          "upkeep_task",
          1,
          List.of(
              Column.text("id", row -> row.id),
              Column.id("unit_id", row -> row.unitId),
              Column.text("task", row -> row.task),
              Column.day("due", row -> row.due),
              Column.day("earliest", row -> row.earliest),
              Column.day("latest", row -> row.latest),
              Column.whole("minutes", row -> row.minutes),
              Column.number("priority", row -> row.priority),
              Column.text("state", row -> row.state),
              Column.whole("sequence", row -> row.sequence),
              Column.moment("changed", row -> row.changed)));

  @Id String id;
  Long unitId;
  String task;
  LocalDate due;
  LocalDate earliest;
  LocalDate latest;
  int minutes;
  double priority;
  String state;
  int sequence;
  Instant changed;

  static TaskRow of(Task task) {
    TaskRow row = new TaskRow();
    row.id = task.id();
    row.unitId = UnitIds.number(task.unit().id()).orElseThrow();
    row.task = task.task();
    row.minutes = task.minutes();
    row.priority = task.priority();
    row.plan(task);
    return row;
  }

  /** A row of {@link #OF_UNITS}. */
  static TaskRow of(ResultSet stored) throws SQLException {
    TaskRow row = new TaskRow();
    row.unitId = stored.getLong(1);
    row.id = stored.getString(2);
    row.task = stored.getString(3);
    row.due = stored.getObject(4, LocalDate.class);
    row.earliest = stored.getObject(5, LocalDate.class);
    row.latest = stored.getObject(6, LocalDate.class);
    row.minutes = stored.getInt(7);
    row.priority = stored.getDouble(8);
    row.state = stored.getString(9);
    row.sequence = stored.getInt(10);
    row.changed = stored.getObject(11, OffsetDateTime.class).toInstant();
    return row;
  }

  /** Takes over the days of the task. */
  void plan(Task task) {
    due = task.due();
    earliest = task.earliest();
    latest = task.latest();
    state = task.state().code();
  }

  /** True when a reader of the feed must know: the priority moves a little every day and is not. */
  boolean differs(TaskRow other) {
    return !(due.equals(other.due)
        && earliest.equals(other.earliest)
        && latest.equals(other.latest)
        && minutes == other.minutes
        && state.equals(other.state));
  }
}

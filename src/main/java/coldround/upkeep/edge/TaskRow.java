package coldround.upkeep.edge;

import coldround.fleet.UnitIds;
import coldround.upkeep.Task;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

@Entity
@Table(name = "upkeep_task")
class TaskRow {
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

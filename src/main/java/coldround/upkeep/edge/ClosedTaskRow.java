package coldround.upkeep.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

@Entity
@Table(name = "closed_task")
class ClosedTaskRow {
  static final String WITHDRAWN = "withdrawn";
  static final String COMPLETED = "completed";

  @Id String id;
  Long unitId;
  String task;
  LocalDate due;
  int minutes;
  int sequence;
  Instant changed;
  String outcome;

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

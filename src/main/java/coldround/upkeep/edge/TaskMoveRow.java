package coldround.upkeep.edge;

import coldround.store.OfUnits;
import coldround.upkeep.Move;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;

@Entity
@Table(name = "task_move")
class TaskMoveRow {
  static final OfUnits OF_UNITS =
      new OfUnits("task_move", "task_id", "due", "moved_to", "week", "work", "capacity");

  @Id String taskId;
  Long unitId;
  LocalDate due;
  LocalDate movedTo;
  LocalDate week;
  int work;
  int capacity;

  static TaskMoveRow of(Move move, Long unitId) {
    TaskMoveRow row = new TaskMoveRow();
    row.taskId = move.taskId();
    row.unitId = unitId;
    row.due = move.due();
    row.movedTo = move.day();
    row.week = move.week();
    row.work = move.minutes();
    row.capacity = move.capacity();
    return row;
  }

  Move read() {
    return new Move(taskId, due, movedTo, week, work, capacity);
  }

  /** A row of {@link #OF_UNITS}. */
  static Move move(ResultSet stored) throws SQLException {
    return new Move(
        stored.getString(2),
        stored.getObject(3, LocalDate.class),
        stored.getObject(4, LocalDate.class),
        stored.getObject(5, LocalDate.class),
        stored.getInt(6),
        stored.getInt(7));
  }
}

package coldround.upkeep.edge;

import coldround.upkeep.Move;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;

@Entity
@Table(name = "task_move")
class TaskMoveRow {
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
}

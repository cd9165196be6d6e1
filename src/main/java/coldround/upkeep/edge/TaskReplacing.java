package coldround.upkeep.edge;

import coldround.feed.Change;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Booking;
import coldround.upkeep.Completion;
import coldround.upkeep.Task;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Puts new tasks in the place of those that some units had, and notes what the feed is to say. */
final class TaskReplacing {

  private final EntityManager entities;
  private final Set<String> counted;
  private final Instant now;
  private final Map<String, TaskRow> before;
  private final Map<String, ClosedTaskRow> closed;
  private final Map<String, BookingRow> bookings;
  private final List<TaskRow> created = new ArrayList<>();
  private final List<Change> changes = new ArrayList<>();

  TaskReplacing(
      EntityManager entities, Collection<Long> unitIds, Set<String> counted, Instant now) {
    this.entities = entities;
    this.counted = counted;
    this.now = now;
    this.before = rows(TaskRow.class, unitIds, row -> row.id);
    this.closed = rows(ClosedTaskRow.class, unitIds, row -> row.id);
    this.bookings = rows(BookingRow.class, unitIds, row -> row.taskId);
  }

  private <T> Map<String, T> rows(Class<T> kind, Collection<Long> unitIds, Function<T, String> id) {
    Map<String, T> rows = new HashMap<>();
    entities
        .createQuery("from " + kind.getSimpleName() + " where unitId in :ids", kind)
        .setParameter("ids", unitIds)
        .getResultList()
        .forEach(row -> rows.put(id.apply(row), row));
    return rows;
  }

  void put(Task task) {
    TaskRow row = before.remove(task.id());
    TaskRow now = TaskRow.of(task);
    if (row == null) {
      plan(task, now);
    } else {
      boolean differs = row.differs(now);
      now.sequence = row.sequence + (differs && !counted.contains(task.id()) ? 1 : 0);
      now.changed = differs ? this.now : row.changed;
      entities.merge(now);
      if (differs) {
        changes.add(change("changed", task));
      }
    }
  }

  /** A task may come back under its old name: calendars count on from where they were. */
  private void plan(Task task, TaskRow row) {
    ClosedTaskRow earlier = closed.get(task.id());
    row.changed = now;
    if (earlier != null) {
      row.sequence = earlier.sequence + 1;
      entities.remove(earlier);
      // what did it has been taken back
      CompletionRow done = entities.find(CompletionRow.class, task.id());
      if (done != null) {
        entities.remove(done);
      }
    }
    created.add(row);
    changes.add(change("planned", task));
  }

  private Change change(String what, Task task) {
    TaskView view = TaskView.of(task, booking(task.id()), MeasureSystem.US);
    return new Change("coldround.task." + what, task.id(), view);
  }

  private Booking booking(String taskId) {
    BookingRow row = bookings.get(taskId);
    return row == null ? null : row.read();
  }

  /** Tasks that were not there before, which the caller writes. */
  List<TaskRow> created() {
    return created;
  }

  /** Closes the tasks that were not put again. */
  List<Change> finish() {
    before.values().stream().sorted(Comparator.comparing(row -> row.id)).forEach(this::close);
    return changes;
  }

  private void close(TaskRow row) {
    CompletionRow done = entities.find(CompletionRow.class, row.id);
    Completion completion = done == null ? null : done.read();
    String outcome = done == null ? ClosedTaskRow.WITHDRAWN : ClosedTaskRow.COMPLETED;
    entities.remove(row);
    entities.persist(ClosedTaskRow.of(row, now, outcome));
    changes.add(
        TaskNotice.change(
            outcome, row.id, row.unitId, row.task, outcome, booking(row.id), completion));
  }
}

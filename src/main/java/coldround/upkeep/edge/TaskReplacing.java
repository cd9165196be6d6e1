package coldround.upkeep.edge;

import coldround.feed.Change;
import coldround.quantity.MeasureSystem;
import coldround.store.Many;
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

/** Puts new tasks in the place of those that some units had, and notes what the feed is to say. */
final class TaskReplacing {

  private final EntityManager entities;
  private final Set<String> counted;
  private final Instant now;
  private final Map<String, TaskRow> before;
  private final Map<String, ClosedTaskRow> closed;
  private final Map<String, Booking> bookings;
  private final List<TaskRow> created = new ArrayList<>();
  private final List<TaskRow> changed = new ArrayList<>();
  private final List<ClosedTaskRow> back = new ArrayList<>();
  private final List<Told> told = new ArrayList<>();

  TaskReplacing(
      EntityManager entities, Collection<Long> unitIds, Set<String> counted, Instant now) {
    this.entities = entities;
    this.counted = counted;
    this.now = now;
    // what this transaction has changed must be there to be read
    entities.flush();
    this.before = TaskRow.OF_UNITS.all(entities, unitIds, TaskRow::of, row -> row.id);
    this.closed = ClosedTaskRow.OF_UNITS.all(entities, unitIds, ClosedTaskRow::of, row -> row.id);
    this.bookings =
        BookingRow.OF_UNITS.all(entities, unitIds, BookingRow::booking, Booking::taskId);
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
      if (differs || now.priority != row.priority) {
        changed.add(now);
      }
      if (differs) {
        told.add(new Told("changed", task));
      }
    }
  }

  /** A task may come back under its old name: calendars count on from where they were. */
  private void plan(Task task, TaskRow row) {
    ClosedTaskRow earlier = closed.get(task.id());
    row.changed = now;
    if (earlier != null) {
      row.sequence = earlier.sequence + 1;
      back.add(earlier);
    }
    created.add(row);
    told.add(new Told("planned", task));
  }

  /** What the feed is to say of a task. */
  private record Told(String what, Task task) {}

  private Change change(Told told) {
    Task task = told.task();
    TaskView view = TaskView.of(task, bookings.get(task.id()), MeasureSystem.US);
    return new Change("coldround.task." + told.what(), task.id(), view);
  }

  /** Writes all of it, and closes the tasks that were not put again. */
  List<Change> finish() {
    // what did those that are back has been taken back
    if (!back.isEmpty()) {
      entities
          .createQuery("delete from CompletionRow where taskId in :ids")
          .setParameter("ids", back.stream().map(row -> row.id).toList())
          .executeUpdate();
    }
    Map<String, Completion> done = new HashMap<>();
    CompletionRow.OF_TASKS.each(
        entities,
        before.keySet(),
        stored -> {
          Completion completion = CompletionRow.completion(stored);
          done.put(completion.taskId(), completion);
        });
    // an import makes so many that all processors help
    List<Change> changes = new ArrayList<>(Many.of(told).map(this::change).toList());
    List<TaskRow> gone =
        before.values().stream().sorted(Comparator.comparing(row -> row.id)).toList();
    List<ClosedTaskRow> closing = new ArrayList<>();
    for (TaskRow row : gone) {
      Completion by = done.get(row.id);
      String outcome = by == null ? ClosedTaskRow.WITHDRAWN : ClosedTaskRow.COMPLETED;
      closing.add(ClosedTaskRow.of(row, now, outcome));
      changes.add(closed(row, outcome, by));
    }
    ClosedTaskRow.TABLE.delete(entities, back);
    TaskRow.TABLE.delete(entities, gone);
    ClosedTaskRow.TABLE.insert(entities, closing);
    TaskRow.TABLE.put(entities, changed);
    TaskRow.TABLE.insert(entities, created);
    return changes;
  }

  /**
   * @param completion null when nothing did it
   */
  private Change closed(TaskRow row, String outcome, Completion completion) {
    return TaskNotice.change(
        outcome, row.id, row.unitId, row.task, outcome, bookings.get(row.id), completion);
  }
}

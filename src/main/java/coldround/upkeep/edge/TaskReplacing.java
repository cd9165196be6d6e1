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

  // a statement takes some ten thousand parameters at most
  private static final int CHUNK = 1000;

  private final EntityManager entities;
  private final Set<String> counted;
  private final Instant now;
  private final Map<String, TaskRow> before;
  private final Map<String, ClosedTaskRow> closed;
  private final Map<String, BookingRow> bookings;
  private final List<TaskRow> created = new ArrayList<>();
  private final List<String> back = new ArrayList<>();
  private final List<Told> told = new ArrayList<>();

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
      entities.remove(earlier);
      back.add(task.id());
    }
    created.add(row);
    told.add(new Told("planned", task));
  }

  /** What the feed is to say of a task. */
  private record Told(String what, Task task) {}

  private Change change(Told told) {
    Task task = told.task();
    TaskView view = TaskView.of(task, booking(task.id()), MeasureSystem.US);
    return new Change("coldround.task." + told.what(), task.id(), view);
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
    // what did those that are back has been taken back
    completions(back).values().forEach(entities::remove);
    Map<String, CompletionRow> done = completions(before.keySet());
    // an import makes so many that all processors help
    List<Change> changes = new ArrayList<>(told.parallelStream().map(this::change).toList());
    before.values().stream()
        .sorted(Comparator.comparing(row -> row.id))
        .forEach(row -> changes.add(close(row, done.get(row.id))));
    return changes;
  }

  private Map<String, CompletionRow> completions(Collection<String> taskIds) {
    Map<String, CompletionRow> rows = new HashMap<>();
    List<String> ids = List.copyOf(taskIds);
    for (int from = 0; from < ids.size(); from += CHUNK) {
      entities
          .createQuery("from CompletionRow where taskId in :ids", CompletionRow.class)
          .setParameter("ids", ids.subList(from, Math.min(ids.size(), from + CHUNK)))
          .getResultList()
          .forEach(row -> rows.put(row.taskId, row));
    }
    return rows;
  }

  /**
   * @param done null when nothing did it
   */
  private Change close(TaskRow row, CompletionRow done) {
    Completion completion = done == null ? null : done.read();
    String outcome = done == null ? ClosedTaskRow.WITHDRAWN : ClosedTaskRow.COMPLETED;
    entities.remove(row);
    entities.persist(ClosedTaskRow.of(row, now, outcome));
    return TaskNotice.change(
        outcome, row.id, row.unitId, row.task, outcome, booking(row.id), completion);
  }
}

package coldround.upkeep.edge;

import coldround.access.Audit;
import coldround.feed.Change;
import coldround.feed.Outbox;
import coldround.fleet.UnitIds;
import coldround.upkeep.Booking;
import coldround.upkeep.Completion;
import coldround.upkeep.TaskAnswers;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** Answers of the scheduling system in the store; each is told in the feed. */
@ApplicationScoped
@Transactional(Transactional.TxType.MANDATORY)
class StoredTaskAnswers implements TaskAnswers {

  private final EntityManager entities;
  private final Outbox outbox;
  private final Reassessment reassessment;
  private final Audit audit;
  private final Clock clock;

  @Inject
  StoredTaskAnswers(
      EntityManager entities, Outbox outbox, Reassessment reassessment, Audit audit, Clock clock) {
    this.entities = entities;
    this.outbox = outbox;
    this.reassessment = reassessment;
    this.audit = audit;
    this.clock = clock;
  }

  @Override
  public Optional<Known> known(String taskId) {
    TaskRow open = entities.find(TaskRow.class, taskId);
    ClosedTaskRow closed = entities.find(ClosedTaskRow.class, taskId);
    if (open == null && closed == null) {
      return Optional.empty();
    }
    BookingRow booking = entities.find(BookingRow.class, taskId);
    CompletionRow completion = entities.find(CompletionRow.class, taskId);
    return Optional.of(
        new Known(
            taskId,
            UnitIds.text(open == null ? closed.unitId : open.unitId),
            open == null ? closed.task : open.task,
            open != null,
            booking == null ? null : booking.read(),
            completion == null ? null : completion.read()));
  }

  @Override
  public Optional<String> unit(String taskId) {
    return unit("TaskRow", taskId).or(() -> unit("ClosedTaskRow", taskId));
  }

  private Optional<String> unit(String kind, String taskId) {
    return entities
        .createQuery("select unitId from " + kind + " where id = :id", Long.class)
        .setParameter("id", taskId)
        .getResultStream()
        .findFirst()
        .map(UnitIds::text);
  }

  @Override
  public void book(Known task, Booking booking) {
    BookingRow row = entities.find(BookingRow.class, task.taskId());
    Counted counted = count(task);
    boolean isNew = row == null;
    if (isNew) {
      row = new BookingRow();
      row.taskId = task.taskId();
      row.unitId = number(task);
    } else if (!row.technician.equals(booking.technician())) {
      leave(task, row, counted);
    }
    enter(task, booking.technician());
    row.write(booking);
    if (isNew) {
      entities.persist(row);
    }
    note(task, "booking", isNew ? "made" : "changed", brief(task.booking()), brief(booking));
    tell(task, "booked", TaskNotice.BOOKED, booking);
  }

  @Override
  public void cancel(Known task) {
    BookingRow row = entities.find(BookingRow.class, task.taskId());
    Counted counted = count(task);
    leave(task, row, counted);
    entities.remove(row);
    note(task, "booking", "cancelled", brief(task.booking()), "");
    tell(task, "unbooked", counted.state(), null);
  }

  private void note(Known task, String kind, String action, String was, String became) {
    audit.noteOfUnit(task.unitId(), kind, task.taskId(), action, was, became);
  }

  private static String brief(Booking booking) {
    return booking == null
        ? ""
        : "%s for %s, reference '%s'"
            .formatted(booking.start(), booking.technician(), booking.reference());
  }

  /** The task as calendars are to see it after a change. */
  private record Counted(int minutes, int sequence, String state) {}

  private Counted count(Known task) {
    TaskRow open = entities.find(TaskRow.class, task.taskId());
    if (open != null) {
      open.sequence++;
      open.changed = clock.instant();
      return new Counted(open.minutes, open.sequence, open.state);
    }
    ClosedTaskRow closed = entities.find(ClosedTaskRow.class, task.taskId());
    closed.sequence++;
    closed.changed = clock.instant();
    return new Counted(closed.minutes, closed.sequence, closed.outcome);
  }

  /** Who subscribed to the calendar of the technician is told there that it is off. */
  private void leave(Known task, BookingRow booking, Counted counted) {
    if (!booking.technician.isEmpty()) {
      enter(task, booking.technician);
      entities.persist(
          LeftTaskRow.of(
              booking, task.task(), counted.minutes(), counted.sequence(), clock.instant()));
    }
  }

  private void enter(Known task, String technician) {
    entities
        .createQuery("delete from LeftTaskRow where taskId = :task and technician = :technician")
        .setParameter("task", task.taskId())
        .setParameter("technician", technician)
        .executeUpdate();
  }

  private void tell(Known task, String what, String state, Booking booking) {
    Change change =
        TaskNotice.change(what, task.taskId(), number(task), task.task(), state, booking, null);
    outbox.add(List.of(change));
    if (entities.find(TaskRow.class, task.taskId()) != null) {
      entities.flush();
      // its day follows the booking, and that of others may follow it
      reassessment.rearranged(task.unitId(), task.taskId());
    }
  }

  @Override
  public void complete(Known task, Completion completion) {
    CompletionRow row = new CompletionRow();
    row.taskId = task.taskId();
    row.unitId = number(task);
    row.visit = completion.visit();
    row.completed = completion.completed();
    row.recorded = clock.instant();
    entities.persist(row);
    entities.flush();
  }

  @Override
  public boolean settle(Known task, Completion completion) {
    if (entities.find(TaskRow.class, task.taskId()) != null) {
      CompletionRow none = entities.find(CompletionRow.class, task.taskId());
      if (none != null) {
        entities.remove(none);
      }
      return false;
    }
    String became = completion.completed() + " by visit " + completion.visit();
    note(task, "completion", "made", "", became);
    if (!task.open()) {
      completeClosed(task, completion);
    }
    return true;
  }

  /** One that went from the list before it was answered: its completion is told by itself. */
  private void completeClosed(Known task, Completion completion) {
    ClosedTaskRow closed = entities.find(ClosedTaskRow.class, task.taskId());
    closed.outcome = ClosedTaskRow.COMPLETED;
    closed.sequence++;
    closed.changed = clock.instant();
    outbox.add(
        List.of(
            TaskNotice.change(
                ClosedTaskRow.COMPLETED,
                task.taskId(),
                number(task),
                task.task(),
                ClosedTaskRow.COMPLETED,
                task.booking(),
                completion)));
  }

  private static long number(Known task) {
    return UnitIds.number(task.unitId()).orElseThrow();
  }
}

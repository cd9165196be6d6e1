package coldround.upkeep;

import coldround.fleet.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * One preventive cleaning or inspection of one unit.
 *
 * @param id stays the same until the task is done
 * @param task row of scoring/tasks.csv, such as condenser-coil-cleaning
 * @param due the earliest date that a rule asks for
 * @param earliest first day on which doing it makes sense
 * @param latest last day on which it may be done
 * @param minutes time on the unit
 * @param skill competence it needs at least
 * @param priority money that doing it is expected to save, per minute of work
 * @param reasons the first one governs; by date, but a booking goes before them
 */
public record Task(
    String id,
    Unit unit,
    String task,
    LocalDate due,
    LocalDate earliest,
    LocalDate latest,
    int minutes,
    String skill,
    double priority,
    State state,
    List<TaskReason> reasons,
    List<String> cautions) {

  /** Where a task stands on a day. */
  public enum State {
    /** Its window has not begun. */
    PLANNED,
    /** It may be done now. */
    DUE,
    /** Its window has ended. */
    OVERDUE;

    public static State of(LocalDate asOf, LocalDate earliest, LocalDate latest) {
      if (asOf.isAfter(latest)) {
        return OVERDUE;
      }
      return asOf.isBefore(earliest) ? PLANNED : DUE;
    }

    public String code() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * @throws IllegalArgumentException unless there is a reason and earliest ≤ due ≤ latest
   */
  public Task {
    if (reasons.isEmpty()) {
      throw new IllegalArgumentException("a task needs a reason");
    }
    if (due.isBefore(earliest) || due.isAfter(latest)) {
      throw new IllegalArgumentException(due + " is not from " + earliest + " to " + latest);
    }
    reasons = List.copyOf(reasons);
    cautions = List.copyOf(cautions);
  }

  /** The reason that decides the due date. */
  public TaskReason governing() {
    return reasons.get(0);
  }

  /**
   * The same task brought forward to a day, with why.
   *
   * @param day not after the due date; the window is widened where it begins later
   */
  Task broughtForward(LocalDate day, TaskReason why, LocalDate asOf) {
    List<TaskReason> all = new ArrayList<>(reasons);
    all.add(0, why);
    return on(day, all, asOf);
  }

  /** The same task on another day; the window is widened where that lies outside. */
  Task on(LocalDate day, List<TaskReason> why, LocalDate asOf) {
    LocalDate from = day.isBefore(earliest) ? day : earliest;
    LocalDate to = day.isAfter(latest) ? day : latest;
    State now = State.of(asOf, from, to);
    return new Task(id, unit, task, day, from, to, minutes, skill, priority, now, why, cautions);
  }
}

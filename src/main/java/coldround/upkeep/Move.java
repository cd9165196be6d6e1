package coldround.upkeep;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One task brought forward out of a week over capacity.
 *
 * @param due day that the rules asked for
 * @param day day that it is brought forward to
 * @param week Monday of the week that had too much work
 * @param minutes work of that week before
 * @param capacity work that can be done in a week, in minutes
 */
public record Move(
    String taskId, LocalDate due, LocalDate day, LocalDate week, int minutes, int capacity) {

  /**
   * @throws IllegalArgumentException when the task would be done later than the rules asked for
   */
  public Move {
    if (!day.isBefore(due)) {
      throw new IllegalArgumentException(day + " is not before " + due);
    }
  }

  /**
   * This move told from the day that the rules asked for, where the task was moved before.
   *
   * @param former counts only where the task stands on its day: else it holds no more
   */
  public Move behind(Optional<Move> former) {
    return former
        .filter(before -> before.day.equals(due))
        .map(before -> new Move(taskId, before.due, day, week, minutes, capacity))
        .orElse(this);
  }

  /** True while the rules still ask for a day behind this one, and the window has begun by then. */
  boolean holdsFor(Task task) {
    return day.isBefore(task.due()) && !day.isBefore(task.earliest());
  }
}

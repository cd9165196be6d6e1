package coldround.upkeep;

import coldround.quantity.Quantity;
import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.List;

/**
 * One attendance at a site that does every one of its tasks within that task's window.
 *
 * @param from first day on which all may be done
 * @param to last day
 * @param minutes work of all tasks together
 * @param saving trips that it saves, in money
 * @param reason how the saving comes about
 */
public record BundledVisit(
    String customer,
    String site,
    LocalDate from,
    LocalDate to,
    List<Task> tasks,
    int minutes,
    Quantity saving,
    Reason reason) {

  /**
   * @throws IllegalArgumentException when there is no task or no day for all of them
   */
  public BundledVisit {
    tasks = List.copyOf(tasks);
    if (tasks.isEmpty() || to.isBefore(from)) {
      throw new IllegalArgumentException("no day from " + from + " to " + to + " for " + tasks);
    }
  }
}

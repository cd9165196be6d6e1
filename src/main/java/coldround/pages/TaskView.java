package coldround.pages;

import coldround.quantity.MeasureSystem;
import coldround.upkeep.Task;
import coldround.upkeep.TaskReason;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * One upkeep task, ready to be shown.
 *
 * @param away how far off the due date is
 * @param window first and last day on which it makes sense
 * @param state planned, due or overdue
 * @param reasons the first one governs
 */
public record TaskView(
    String id,
    String name,
    String dueIso,
    String due,
    String away,
    String window,
    String state,
    String minutes,
    String skill,
    List<Why> reasons,
    List<String> cautions) {

  /** What one rule asks for, and why. */
  public record Why(boolean governs, String dateIso, String date, Told reason) {}

  public TaskView {
    reasons = List.copyOf(reasons);
    cautions = List.copyOf(cautions);
  }

  /** The one that decides the date. */
  public Why governing() {
    return reasons.get(0);
  }

  /** The rest, by the dates they would ask for. */
  public List<Why> others() {
    return reasons.subList(1, reasons.size());
  }

  /** "1 other reason", "3 other reasons". */
  public String othersTold() {
    return Words.count(reasons.size() - 1, "other reason", "other reasons");
  }

  public static TaskView of(Task task, LocalDate today, MeasureSystem system) {
    return new TaskView(
        task.id(),
        Words.title(task.task()),
        task.due().toString(),
        Figures.day(task.due()),
        Figures.away(task.due(), today),
        Figures.days(task.earliest(), task.latest()),
        task.state().code(),
        task.minutes() + " min",
        Words.of(task.skill()),
        whys(task, system),
        task.cautions());
  }

  private static List<Why> whys(Task task, MeasureSystem system) {
    List<Why> whys = new ArrayList<>();
    for (TaskReason reason : task.reasons()) {
      whys.add(
          new Why(
              whys.isEmpty(),
              reason.date().toString(),
              Figures.day(reason.date()),
              Told.of(reason.reason(), system)));
    }
    return whys;
  }
}

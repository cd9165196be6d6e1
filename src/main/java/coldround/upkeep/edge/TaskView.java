package coldround.upkeep.edge;

import coldround.fleet.Unit;
import coldround.http.Measured;
import coldround.http.ReasonView;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Booking;
import coldround.upkeep.Task;
import coldround.upkeep.TaskReason;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** An upkeep task as answers carry it. */
@Schema(
    name = "Task",
    requiredProperties = {
      "id",
      "unit",
      "task",
      "due",
      "earliest",
      "latest",
      "minutes",
      "priority",
      "state",
      "reasons",
      "cautions"
    })
record TaskView(
    String id,
    UnitName unit,
    String task,
    LocalDate due,
    LocalDate earliest,
    LocalDate latest,
    int minutes,
    String skill,
    BigDecimal priority,
    String state,
    @JsonInclude(JsonInclude.Include.NON_NULL) TaskNotice.BookingView booking,
    List<Why> reasons,
    List<String> cautions) {

  /** Names a unit in answers. */
  record UnitName(String id, String customer, String site, String tag) {
    static UnitName of(Unit unit) {
      return new UnitName(unit.id(), unit.customer(), unit.site(), unit.tag());
    }
  }

  /** What one rule says: exactly one governs. */
  record Why(
      String code,
      boolean governs,
      LocalDate date,
      String text,
      Map<String, Object> inputs,
      String source) {}

  /**
   * @param booking null for none
   */
  static TaskView of(Task task, Booking booking, MeasureSystem system) {
    List<TaskReason> reasons = task.reasons();
    return new TaskView(
        task.id(),
        UnitName.of(task.unit()),
        task.task(),
        task.due(),
        task.earliest(),
        task.latest(),
        task.minutes(),
        task.skill(),
        Measured.number(task.priority()),
        booking == null ? task.state().code() : TaskNotice.BOOKED,
        TaskNotice.BookingView.of(booking),
        IntStream.range(0, reasons.size())
            .mapToObj(i -> why(reasons.get(i), i == 0, system))
            .toList(),
        task.cautions());
  }

  private static Why why(TaskReason reason, boolean governs, MeasureSystem system) {
    ReasonView view = ReasonView.of(reason.reason(), system);
    return new Why(view.code(), governs, reason.date(), view.text(), view.inputs(), view.source());
  }
}

package coldround.upkeep;

import coldround.reason.Inputs;
import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.Objects;

/**
 * What one rule says of a task: the date it asks for, and why.
 *
 * @param rule why, as the rule says it
 * @param worth what the task saves, told with the reason that governs; null for the others
 */
public record TaskReason(LocalDate date, Reason rule, Worth worth) {

  public TaskReason {
    Objects.requireNonNull(date);
    Objects.requireNonNull(rule);
  }

  public TaskReason(LocalDate date, Reason rule) {
    this(date, rule, null);
  }

  TaskReason with(Worth itsWorth) {
    return new TaskReason(date, rule, itsWorth);
  }

  /** Why, with the parts of what the task is worth; put together when somebody reads it. */
  public Reason reason() {
    if (worth == null) {
      return rule;
    }
    Inputs facts =
        Inputs.plus(
            rule.inputs(),
            "breakdownsAvoided",
            worth.breakdowns(),
            "electricitySaved",
            worth.energy(),
            "refrigerantSaved",
            worth.refrigerant(),
            "savedOver",
            worth.over());
    return new Reason(rule.code(), rule.template(), facts, rule.source());
  }
}

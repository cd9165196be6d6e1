package coldround.upkeep;

import coldround.reason.Reason;
import java.time.LocalDate;

/**
 * What a rule asks for: a task by a date, and why.
 *
 * @param notAfter day after which it must not be done, by law or by the longest interval; null for
 *     the usual window
 */
record Ask(String task, TaskReason reason, LocalDate notAfter) {

  static Ask by(String task, LocalDate date, Reason reason) {
    return new Ask(task, new TaskReason(date, reason), null);
  }

  /** One whose date has no days after it. */
  static Ask strictly(String task, LocalDate date, Reason reason) {
    return new Ask(task, new TaskReason(date, reason), date);
  }

  static Ask by(String task, LocalDate date, LocalDate notAfter, Reason reason) {
    return new Ask(task, new TaskReason(date, reason), notAfter);
  }
}

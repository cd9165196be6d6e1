package coldround.upkeep;

import coldround.reason.Reason;
import java.time.LocalDate;
import java.util.Objects;

/** What one rule says of a task: the date it asks for, and why. */
public record TaskReason(LocalDate date, Reason reason) {
  public TaskReason {
    Objects.requireNonNull(date);
    Objects.requireNonNull(reason);
  }
}

package coldround.upkeep;

import java.time.OffsetDateTime;
import java.util.Objects;

/**
 * When a task will be done, as the scheduling system said.
 *
 * @param technician code, empty if not said
 * @param reference what the scheduling system calls it; empty if not said
 */
public record Booking(String taskId, OffsetDateTime start, String technician, String reference) {
  public Booking {
    Objects.requireNonNull(taskId);
    Objects.requireNonNull(start);
  }

  /** True where another order of the scheduling system stands behind the other booking. */
  public boolean isOfAnother(Booking other) {
    return !reference.equals(other.reference);
  }
}

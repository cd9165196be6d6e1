package coldround.rounds;

import java.time.Instant;
import java.time.LocalDate;

/**
 * How the planning of rounds stands.
 *
 * @param share of the time given that is spent, 0 to 1
 * @param found better plans found so far
 * @param revision rises with every change made after planning
 * @param message why it failed; empty otherwise
 */
public record Standing(
    String id,
    State state,
    Instant requested,
    LocalDate from,
    LocalDate to,
    double share,
    int found,
    int revision,
    String message) {

  /** What is going on with a plan. */
  public enum State {
    /** Other plans are being worked on. */
    WAITING,
    /** It is being improved. */
    PLANNING,
    /** The time given is spent. */
    PLANNED,
    /** Somebody was content with the best so far. */
    STOPPED,
    /** The service ended while planning: the last best plan stands. */
    INTERRUPTED,
    /** It could not be planned. */
    FAILED;

    public String code() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }

    /** True while a better plan may come. */
    public boolean open() {
      return this == WAITING || this == PLANNING;
    }
  }
}

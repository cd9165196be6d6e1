package coldround.intake;

import java.time.Duration;
import java.time.Instant;

/**
 * How far an import has come.
 *
 * @param state what is being done
 * @param rowsDone rows read so far
 * @param rowsPerSecond over the time since the first row; null before it can be told
 * @param rowsWritten of new rows that were held back; null while none are written
 * @param share of what the state has to do, 0 to 1; null where that cannot be known
 * @param secondsLeft until the end of the state at the pace so far; null where it cannot be known
 */
public record Progress(
    State state,
    long rowsDone,
    Double rowsPerSecond,
    Long rowsWritten,
    Double share,
    Long secondsLeft) {

  /** What is being done. */
  public enum State {
    /** For the files before it. */
    WAITING,
    /** Rows are read and laid over what is stored. */
    READING,
    /** New rows that were held back are written in the order of the store. */
    WRITING,
    /** Units whose history changed are assessed anew. */
    ASSESSING
  }

  /** Shorter than this says nothing of the pace. */
  private static final Duration SHORTEST = Duration.ofMillis(200);

  static Progress waiting() {
    return new Progress(State.WAITING, 0, null, null, null, null);
  }

  /**
   * @param began of the state
   * @param written null but in {@link State#WRITING}
   * @param share null where it cannot be known
   */
  static Progress of(
      State state,
      long rows,
      Double rowsPerSecond,
      Long written,
      Double share,
      Instant began,
      Instant now) {
    Duration taken = Duration.between(began, now);
    boolean told = share != null && share > 0 && taken.compareTo(SHORTEST) > 0;
    Long left = told ? Math.round(taken.toMillis() / 1000.0 * (1 - share) / share) : null;
    return new Progress(state, rows, rowsPerSecond, written, share, left);
  }
}

package coldround.rounds;

/**
 * A span of one local day.
 *
 * @param from minutes after midnight by the clock on the wall
 * @param to the same for the end; above 1440 it lies on the next day
 */
public record Hours(int from, int to) {

  public static final int DAY = 24 * 60;

  /** From midnight to midnight. */
  public static final Hours ALL_DAY = new Hours(0, DAY);

  /**
   * @throws IllegalArgumentException unless the span has a length and begins on its day
   */
  public Hours {
    if (from < 0 || from >= DAY || to <= from || to > from + DAY) {
      throw new IllegalArgumentException(from + " to " + to + " minutes is no span of a day");
    }
  }
}

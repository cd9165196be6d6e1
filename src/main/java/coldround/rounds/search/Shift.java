package coldround.rounds.search;

/**
 * The hours of one vehicle, in minutes since a zero common to the problem.
 *
 * @param begins first minute at which it may leave its start place
 * @param regularEnd minute from which work is overtime
 * @param hardEnd minute by which it must have reached its end place
 */
public record Shift(double begins, double regularEnd, double hardEnd) {

  /** Hours without end. */
  public static final Shift UNLIMITED =
      new Shift(0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Hours without overtime. */
  public static Shift regular(double begins, double ends) {
    return new Shift(begins, ends, ends);
  }

  /** True if the hours have no length. */
  public boolean empty() {
    return !(begins < hardEnd);
  }
}

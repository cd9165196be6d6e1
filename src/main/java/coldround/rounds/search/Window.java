package coldround.rounds.search;

/**
 * A span in which the service of a stop may begin, in minutes since a zero common to the problem.
 *
 * @param opens first minute at which service may begin
 * @param closes last minute at which service may begin
 */
public record Window(double opens, double closes) {

  /** A window that is always open. */
  public static final Window ALWAYS =
      new Window(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** True if no minute lies in this window, as when its start and end are swapped. */
  public boolean neverOpen() {
    return !(opens <= closes);
  }
}

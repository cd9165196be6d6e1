package coldround.rounds.search;

/**
 * When a search ends, whichever comes first.
 *
 * @param seconds time from the call
 * @param iterations steps of each worker
 */
public record Limit(double seconds, long iterations) {

  public Limit {
    if (!(seconds >= 0) || iterations < 0) {
      throw new IllegalArgumentException("a limit must be 0 or more");
    }
  }

  public static Limit seconds(double seconds) {
    return new Limit(seconds, Long.MAX_VALUE);
  }

  /** A limit that does not depend on the speed of the machine: same seed, same plan. */
  public static Limit iterations(long iterations) {
    return new Limit(Double.POSITIVE_INFINITY, iterations);
  }

  /** True if only the iterations end the search. */
  public boolean countsOnly() {
    return Double.isInfinite(seconds);
  }
}

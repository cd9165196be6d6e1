package coldround.rounds.search;

/**
 * What a round costs, in one currency.
 *
 * @param fixed once if the vehicle goes out at all
 * @param perDistance by unit of the distance matrix
 * @param perMinute by minute between leaving the start place and reaching the end place, the rest
 *     not counted
 * @param perOvertimeMinute by minute after the regular end, on top of {@code perMinute}
 */
public record Rates(double fixed, double perDistance, double perMinute, double perOvertimeMinute) {

  /** Only distance counts. */
  public static final Rates DISTANCE = new Rates(0, 1, 0, 0);

  public Rates {
    requireAmount("fixed", fixed);
    requireAmount("perDistance", perDistance);
    requireAmount("perMinute", perMinute);
    requireAmount("perOvertimeMinute", perOvertimeMinute);
  }

  private static void requireAmount(String name, double amount) {
    if (!(amount >= 0) || Double.isInfinite(amount)) {
      throw new IllegalArgumentException(name + " must be 0 or more and finite, not " + amount);
    }
  }
}

package coldround.rounds;

/**
 * One drive from place to place.
 *
 * @param minutes driving time
 * @param km distance on the road
 * @param estimated true when it was not imported but computed from coordinates
 */
public record Leg(double minutes, double km, boolean estimated) {

  /** Between places that have neither an imported time nor coordinates. */
  static final Leg UNKNOWN = new Leg(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, true);

  /** Staying where one is. */
  static final Leg NONE = new Leg(0, 0, false);

  public boolean known() {
    return minutes < Double.POSITIVE_INFINITY;
  }
}

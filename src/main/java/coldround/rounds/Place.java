package coldround.rounds;

/**
 * Somewhere to drive to.
 *
 * @param code "customer/site", or the code of a technician for where the day starts and ends
 * @param latitude degrees north, null if unknown
 * @param longitude degrees east, null if unknown
 * @param road name under which drives from and to it are known; a day may start at a site without
 *     being a stop there
 */
public record Place(String code, Double latitude, Double longitude, String road) {

  private static final double EARTH_KM = 6371.0088; // mean radius R1 of GRS 80 (Moritz, 2000)

  public Place {
    road = road == null ? code : road;
  }

  public Place(String code, Double latitude, Double longitude) {
    this(code, latitude, longitude, code);
  }

  /** True when its coordinates can be drawn and measured with. */
  public boolean located() {
    return fault().isEmpty();
  }

  /** What is wrong with the coordinates; empty if nothing is. */
  public String fault() {
    if (latitude == null || longitude == null) {
      return "has no coordinates";
    }
    boolean onEarth = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180;
    if (!onEarth || latitude.isNaN() || longitude.isNaN()) {
      return "has coordinates that are nowhere on Earth";
    }
    // where an empty cell was read as nought: in the Atlantic, 600 km from land
    return latitude == 0 && longitude == 0 ? "lies at 0, 0, in the sea" : "";
  }

  /** The great circle between two located places, by the haversine. */
  public double straightKm(Place other) {
    double north = Math.sin(Math.toRadians(other.latitude - latitude) / 2);
    double east = Math.sin(Math.toRadians(other.longitude - longitude) / 2);
    double narrowing =
        Math.cos(Math.toRadians(latitude)) * Math.cos(Math.toRadians(other.latitude));
    double h = north * north + narrowing * east * east;
    return 2 * EARTH_KM * Math.asin(Math.min(1, Math.sqrt(h)));
  }
}

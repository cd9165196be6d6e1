package coldround.rounds;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Drives between places: as imported; where a pair is missing there, the opposite direction; where
 * that is missing too, an estimate from coordinates.
 */
public final class Travel {

  private record Pair(String from, String to) {}

  private final Roads roads;
  private final Map<Pair, Leg> imported = new HashMap<>();
  private final Set<String> known = new HashSet<>();

  public Travel(Roads roads) {
    this.roads = roads;
  }

  /**
   * Adds an imported drive.
   *
   * @param km null if unknown
   */
  public void put(String from, String to, double minutes, Double km) {
    double road = km == null ? roads.kmIn(minutes) : km;
    imported.put(new Pair(from, to), new Leg(minutes, road, false));
    known.add(from);
    known.add(to);
  }

  /** True when a drive from or to the place was imported. */
  boolean knows(String place) {
    return known.contains(place);
  }

  /** True when anything was imported, so that a missing pair is worth telling. */
  public boolean hasMatrix() {
    return !imported.isEmpty();
  }

  /** The drive, unknown when there is no way to tell. */
  public Leg between(Place from, Place to) {
    if (from.code().equals(to.code())) {
      return Leg.NONE;
    }
    Leg leg = imported.get(new Pair(from.code(), to.code()));
    leg = leg != null ? leg : imported.get(new Pair(to.code(), from.code()));
    if (leg != null) {
      return leg;
    }
    return from.located() && to.located() ? roads.over(from.straightKm(to)) : Leg.UNKNOWN;
  }
}

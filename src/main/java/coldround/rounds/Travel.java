package coldround.rounds;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Drives between places: as imported; where a pair is missing there, as an outside source told it;
 * else as imported for the opposite direction; where that is missing too, an estimate from
 * coordinates.
 */
public final class Travel {

  private record Pair(String from, String to) {}

  private final Roads roads;
  private final Map<Pair, Leg> imported = new HashMap<>();
  private final Map<Pair, Leg> told = new HashMap<>();
  private final Set<String> known = new HashSet<>();
  private String trouble = "";

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

  /**
   * Adds a drive that an outside source has told; what was imported goes before it.
   *
   * @param km null if unknown
   */
  public void told(Place from, Place to, double minutes, Double km) {
    double road = km == null ? roads.kmIn(minutes) : km;
    told.put(new Pair(from.road(), to.road()), new Leg(minutes, road, false));
  }

  /** True when the drive has neither been imported nor told. */
  public boolean wants(Place from, Place to) {
    Pair pair = new Pair(from.road(), to.road());
    return !from.road().equals(to.road()) && !imported.containsKey(pair) && !told.containsKey(pair);
  }

  /** The outside source has failed: what it has not told is estimated. */
  public void sourceFailed(String why) {
    trouble = why;
  }

  /** Why the outside source has failed; empty if it has not. */
  String trouble() {
    return trouble;
  }

  /** True when a drive from or to the place was imported. */
  boolean knows(Place place) {
    return known.contains(place.road());
  }

  /** True when anything was imported, so that a missing pair is worth telling. */
  public boolean hasMatrix() {
    return !imported.isEmpty();
  }

  /** The drive, unknown when there is no way to tell. */
  public Leg between(Place from, Place to) {
    if (from.road().equals(to.road())) {
      return Leg.NONE;
    }
    Leg leg = imported.get(new Pair(from.road(), to.road()));
    leg = leg != null ? leg : told.get(new Pair(from.road(), to.road()));
    leg = leg != null ? leg : imported.get(new Pair(to.road(), from.road()));
    if (leg != null) {
      return leg;
    }
    return from.located() && to.located() ? roads.over(from.straightKm(to)) : Leg.UNKNOWN;
  }
}

package coldround.intake;

import coldround.fleet.UnitNames.UnitName;
import java.util.List;

/**
 * Units in use that a list of units no longer has. They are told and nothing else: who is no longer
 * on a list may have been forgotten; who has gone has a day in the column retired.
 *
 * @param count units of the sites of the list that it does not name
 * @param units the first of them, at most {@link #MOST}
 * @param siteCount sites of the customers of the list, with units in use, of which it names none
 * @param sites the first of them, at most {@link #MOST}
 */
public record Vanished(long count, List<UnitName> units, long siteCount, List<Place> sites) {

  /** How many are told one by one. */
  public static final int MOST = 200;

  /** The file was no list of units, or lacks nothing. */
  public static final Vanished NONE = new Vanished(0, List.of(), 0, List.of());

  /**
   * A site.
   *
   * @param units in use there
   */
  public record Place(String customer, String site, long units) {}

  public Vanished {
    units = List.copyOf(units);
    sites = List.copyOf(sites);
  }
}

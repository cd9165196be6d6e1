package coldround.replacement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Where several units of a site are to be replaced in one year, so that one shutdown does. */
final class SharedShutdowns {

  /**
   * Units that share one.
   *
   * @param units their numbers, two or more
   */
  record Group(int year, List<Integer> units) {}

  private SharedShutdowns() {}

  /**
   * @param years of replacement of each unit; the horizon for never
   */
  static List<Group> of(List<UnitOutlook> units, int[] years, int horizon) {
    Map<String, Group> bySiteAndYear = new LinkedHashMap<>();
    for (int u = 0; u < years.length; u++) {
      if (years[u] < horizon) {
        String key = years[u] + " " + units.get(u).siteKey();
        int year = years[u];
        bySiteAndYear.computeIfAbsent(key, k -> new Group(year, new ArrayList<>())).units.add(u);
      }
    }
    return bySiteAndYear.values().stream().filter(group -> group.units.size() > 1).toList();
  }

  /** Shutdowns to be expected less than one for each unit, when some may die before that year. */
  static double saved(Group group, List<UnitOutlook> units) {
    double living = 0;
    double none = 1;
    for (int u : group.units) {
      double alive = units.get(u).aliveAt(group.year);
      living += alive;
      none *= 1 - alive;
    }
    return living - (1 - none);
  }
}

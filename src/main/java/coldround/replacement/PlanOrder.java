package coldround.replacement;

import java.util.Map;

/**
 * What a plan has to keep to.
 *
 * @param limits on what replacements cost in each year, in the money the plan is told in; infinity
 *     for none
 * @param carryOver share of what is left of a limit that may be spent the year after
 * @param must last year of the plan, from 0, by which a unit must be replaced, by unit
 * @param mustNot first year in which a unit may be replaced, by unit; the horizon for never
 * @param seed of the random numbers
 * @param runs of the simulation
 * @param seconds longest time to search for a plan
 * @param moved factors on the costs of the tables, which the outlooks were made with
 */
public record PlanOrder(
    Terms terms,
    double[] limits,
    double carryOver,
    Map<String, Integer> must,
    Map<String, Integer> mustNot,
    long seed,
    int runs,
    double seconds,
    Moved moved) {

  public PlanOrder {
    must = Map.copyOf(must);
    mustNot = Map.copyOf(mustNot);
    if (limits.length != terms.horizon()) {
      throw new IllegalArgumentException("as many limits as years, please");
    }
  }

  /** With the costs of the tables. */
  public PlanOrder(
      Terms terms,
      double[] limits,
      double carryOver,
      Map<String, Integer> must,
      Map<String, Integer> mustNot,
      long seed,
      int runs,
      double seconds) {
    this(terms, limits, carryOver, must, mustNot, seed, runs, seconds, Moved.NOT);
  }

  boolean allows(String unitId, int year) {
    boolean late = must.containsKey(unitId) && year > must.get(unitId);
    boolean early = year < terms.horizon() && year < mustNot.getOrDefault(unitId, 0);
    return !late && !early;
  }
}

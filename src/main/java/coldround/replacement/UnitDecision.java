package coldround.replacement;

import java.util.OptionalInt;

/**
 * What the plan does about one unit.
 *
 * @param best when it would be replaced if there were no limit and no other unit
 * @param year of the plan, from 0, in which it is replaced; the horizon for keeping it
 * @param must last year by which it must be replaced
 * @param mustNot first year in which it may be
 */
public record UnitDecision(
    UnitOutlook outlook, BestYear best, int year, OptionalInt must, OptionalInt mustNot) {

  public boolean replaced() {
    return year < outlook.horizon();
  }

  /** What the year of the plan costs more than the best year, by itself. */
  public double forgone() {
    return best.totals()[year] - best.least();
  }
}

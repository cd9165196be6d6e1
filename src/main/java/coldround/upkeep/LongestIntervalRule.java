package coldround.upkeep;

import java.util.List;

/** Condenser cleaning by the longest interval that is allowed whatever the condition. */
final class LongestIntervalRule implements UpkeepRule {

  private static final String CODE = "longest-interval";
  private static final String SINCE =
      "Cleaned on {from}; in {surroundings} surroundings not more than {days} go by between cleanings";
  private static final String NEVER =
      "No cleaning on record since {from}; in {surroundings} surroundings not more than {days} go by"
          + " between cleanings";

  @Override
  public List<Ask> asks(UnitCase unit) {
    Interval interval =
        unit.tables().intervals().find(TaskCode.CONDENSER, unit.unit().kind()).orElse(null);
    if (interval == null) {
      return List.of();
    }
    int days = interval.longestDays(unit.surroundings());
    return List.of(Counted.from(unit, interval, days).ask(CODE, SINCE, NEVER));
  }
}

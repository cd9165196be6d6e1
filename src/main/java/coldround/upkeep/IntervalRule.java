package coldround.upkeep;

import java.util.ArrayList;
import java.util.List;

/** Every task but the cleaning of condensers by its usual interval, and never past its longest. */
final class IntervalRule implements UpkeepRule {

  private static final String CODE = "usual-interval";
  private static final String SINCE =
      "Last done on {from}; in {surroundings} surroundings it is usual every {days}";
  private static final String NEVER =
      "Not on record since {from}; in {surroundings} surroundings it is usual every {days}";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<Interval> intervals = unit.tables().intervals().usual(unit.unit().kind());
    List<Ask> asks = new ArrayList<>(intervals.size());
    for (Interval interval : intervals) {
      int days = interval.usualDays(unit.surroundings());
      asks.add(Counted.from(unit, interval, days).ask(CODE, SINCE, NEVER));
    }
    return asks;
  }
}

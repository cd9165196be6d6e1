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
    List<Ask> asks = new ArrayList<>();
    for (TaskKind task : unit.tables().catalogue().all()) {
      if (task.code().equals(TaskCode.CONDENSER) || !unit.has(task)) {
        continue;
      }
      unit.tables()
          .intervals()
          .find(task.code(), unit.unit().kind())
          .ifPresent(
              interval ->
                  asks.addAll(
                      Counted.from(unit, interval, interval.usualDays(unit.surroundings()))
                          .ask(CODE, SINCE, NEVER)));
    }
    return asks;
  }
}

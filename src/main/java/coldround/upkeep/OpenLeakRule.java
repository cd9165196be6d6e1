package coldround.upkeep;

import coldround.scoring.FaultEvent;
import coldround.scoring.LeakState;
import java.time.LocalDate;
import java.util.List;

/** Leak inspection where the latest leak on record was not followed by a repair. */
final class OpenLeakRule implements UpkeepRule {

  private static final String LEAK_MODE = "refrigerant-leak";
  private static final String TEMPLATE =
      "A leak on record since {since} was not followed by a repair";

  @Override
  public List<Ask> asks(UnitCase unit) {
    LeakState leak = unit.assessment().leak();
    LocalDate since = leak.openLeak() ? since(unit, leak) : null;
    if (since == null) {
      return List.of();
    }
    UpkeepLimits limits = unit.tables().limits();
    LocalDate date = limits.after(since, UpkeepLimit.OPEN_LEAK_AFTER);
    return List.of(
        Ask.by(
            TaskCode.LEAK,
            date,
            UnitCase.reason(
                "leak-not-repaired",
                TEMPLATE,
                limits.source(UpkeepLimit.OPEN_LEAK_AFTER),
                "since",
                since,
                "date",
                date)));
  }

  private static LocalDate since(UnitCase unit, LeakState leak) {
    List<FaultEvent> events = unit.assessment().faults().events();
    for (int i = events.size() - 1; i >= 0; i--) {
      if (events.get(i).mode().equals(LEAK_MODE)) {
        return events.get(i).date();
      }
    }
    int last = leak.additions().size() - 1;
    return last < 0 ? null : leak.additions().get(last).date();
  }
}

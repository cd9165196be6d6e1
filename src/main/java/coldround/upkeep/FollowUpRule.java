package coldround.upkeep;

import coldround.scoring.FaultEvent;
import java.time.LocalDate;
import java.util.List;

/** Follow-up inspection after a repair that did not hold. */
final class FollowUpRule implements UpkeepRule {

  private static final String TEMPLATE =
      "{mode} came back on {happened}, soon after the repair of {repaired}: the repair did not hold,"
          + " its cause is still there";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<FaultEvent> events = unit.assessment().faults().events();
    LocalDate done = unit.done(TaskCode.FOLLOW_UP);
    for (int i = events.size() - 1; i >= 0; i--) {
      FaultEvent event = events.get(i);
      if (event.didNotHold()) {
        boolean followed = done != null && done.isAfter(event.date());
        return followed ? List.of() : List.of(ask(unit, event));
      }
    }
    return List.of();
  }

  private static Ask ask(UnitCase unit, FaultEvent event) {
    UpkeepLimits limits = unit.tables().limits();
    LocalDate date = limits.after(event.date(), UpkeepLimit.FOLLOW_UP_AFTER);
    return Ask.by(
        TaskCode.FOLLOW_UP,
        date,
        UnitCase.reason(
            "repair-did-not-hold",
            TEMPLATE,
            limits.source(UpkeepLimit.FOLLOW_UP_AFTER),
            "mode",
            event.mode().replace('-', ' '),
            "happened",
            event.date(),
            "repaired",
            event.repairThatDidNotHold().orElseThrow(),
            "date",
            date));
  }
}

package coldround.upkeep;

import coldround.scoring.FaultEvent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Tasks by the latest fault of each mode that nothing on record has settled. */
final class FaultRule implements UpkeepRule {

  private static final String TEMPLATE =
      "{mode} on {happened}, and nothing on record since then settles it";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<FaultEvent> events = unit.assessment().faults().events();
    if (events.isEmpty()) {
      return List.of();
    }
    List<Ask> asks = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int i = events.size() - 1; i >= 0; i--) {
      FaultEvent event = events.get(i);
      if (seen.add(event.mode())) {
        for (Trigger trigger : unit.tables().triggers().ofFault(event.mode())) {
          add(unit, trigger, event.date(), asks);
        }
      }
    }
    return asks;
  }

  private static void add(UnitCase unit, Trigger trigger, LocalDate happened, List<Ask> asks) {
    if (Settled.since(unit, trigger, happened)) {
      return;
    }
    LocalDate date = happened.plusDays(trigger.days());
    asks.add(
        Ask.by(
            trigger.task(),
            date,
            UnitCase.reason(
                trigger.key(),
                TEMPLATE,
                trigger.source(),
                "mode",
                trigger.what().replace('-', ' '),
                "happened",
                happened,
                "date",
                date)));
  }
}

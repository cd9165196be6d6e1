package coldround.upkeep;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Tasks by work that wants a look afterwards, such as a cut-out that was reset. */
final class WorkRule implements UpkeepRule {

  private static final String TEMPLATE =
      "{work} on {done}, and nothing on record since then settles it";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<Ask> asks = new ArrayList<>();
    unit.record()
        .work()
        .forEach(
            (work, done) -> {
              for (Trigger trigger : unit.tables().triggers().ofWork(work)) {
                add(unit, trigger, done, asks);
              }
            });
    return asks;
  }

  private static void add(UnitCase unit, Trigger trigger, LocalDate done, List<Ask> asks) {
    if (Settled.since(unit, trigger, done)) {
      return;
    }
    LocalDate date = done.plusDays(trigger.days());
    asks.add(
        Ask.by(
            trigger.task(),
            date,
            UnitCase.reason(
                trigger.key(),
                TEMPLATE,
                trigger.source(),
                "work",
                trigger.what().replace('-', ' '),
                "done",
                done,
                "date",
                date)));
  }
}

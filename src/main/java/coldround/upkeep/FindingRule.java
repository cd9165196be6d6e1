package coldround.upkeep;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Tasks by the latest grade of a coil or part, as scoring/task-triggers.csv wants them. */
final class FindingRule implements UpkeepRule {

  private static final String TEMPLATE = "{part} was graded {grade} on {seen}";

  @Override
  public List<Ask> asks(UnitCase unit) {
    List<Ask> asks = new ArrayList<>();
    unit.record()
        .findings()
        .forEach(
            (part, graded) -> {
              for (Trigger trigger : unit.tables().triggers().ofFinding(part, graded.grade())) {
                add(unit, trigger, graded.date(), asks);
              }
            });
    return asks;
  }

  private static void add(UnitCase unit, Trigger trigger, LocalDate seen, List<Ask> asks) {
    if (Settled.since(unit, trigger, seen)) {
      return;
    }
    LocalDate date = seen.plusDays(trigger.days());
    asks.add(
        Ask.by(
            trigger.task(),
            date,
            UnitCase.reason(
                trigger.key(),
                TEMPLATE,
                trigger.source(),
                "part",
                trigger.what().replace('_', ' '),
                "grade",
                trigger.grade(),
                "seen",
                seen,
                "date",
                date)));
  }
}

package coldround.upkeep;

import coldround.fleet.UnitHistory;
import coldround.quantity.MeasureSystem;
import coldround.reason.Source;
import coldround.upkeep.BacktestReport.Verdict;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Prints the tasks of the demo fleet on a day, and how plans of the day would have fared. */
public final class DemoPlan {

  private DemoPlan() {}

  /**
   * @param arguments day of the tasks; day of the first plan and last day of the backtest
   */
  public static void main(String... arguments) {
    List<UnitHistory> fleet = DemoFleet.read();
    LocalDate day = LocalDate.parse(arguments[0]);
    List<Task> tasks = new ArrayList<>();
    fleet.forEach(unit -> tasks.addAll(Rules.UPKEEP.tasks(Rules.SCORING.assess(unit, day), day)));
    Map<String, Integer> counts = new TreeMap<>();
    for (Task task : tasks) {
      String rule = task.task() + " " + task.governing().reason().code() + " " + task.state();
      counts.merge(rule, 1, Integer::sum);
      if (task.task().equals("condenser-coil-cleaning")) {
        task.reasons().forEach(reason -> System.out.println(told(task, reason)));
      }
    }
    counts.forEach((rule, count) -> System.out.println(count + " " + rule));
    BacktestReport report =
        Backtest.run(
            Rules.SCORING,
            Rules.UPKEEP,
            fleet,
            LocalDate.parse(arguments[1]),
            LocalDate.parse(arguments[2]));
    System.out.printf(
        "%d units, %d lockouts, %d foreseen, median lead %s days; %d cleanings planned: %d needed,"
            + " %d needless, %d unknown%n",
        report.units(),
        report.lockouts().size(),
        report.foreseen(),
        report.medianLeadDays(),
        report.cleanings().size(),
        report.count(Verdict.NEEDED),
        report.count(Verdict.NEEDLESS),
        report.count(Verdict.UNKNOWN));
    whatIf(fleet, day);
  }

  private static void whatIf(List<UnitHistory> fleet, LocalDate day) {
    List<UnitHistory> known = fleet.stream().map(unit -> unit.asOf(day)).toList();
    // four technicians with 30 hours a week on units
    WhatIf whatIf =
        new WhatIf(
            Rules.SCORING, Rules.UPKEEP, 4 * 30 * 60, new Source("technicians", "all", "demo"));
    List.of(
            WhatIf.Change.none(day),
            new WhatIf.Change(day.plusMonths(6), 0, false, 1),
            new WhatIf.Change(day, 5 / 1.8, false, 1),
            new WhatIf.Change(day, 0, true, 1),
            new WhatIf.Change(day, 0, false, 2))
        .forEach(change -> System.out.println(change + " " + whatIf.outlook(known, change)));
  }

  private static String told(Task task, TaskReason reason) {
    return task.id() + " " + reason.date() + " " + reason.reason().text(MeasureSystem.US);
  }
}

package coldround.pages;

import coldround.fleet.UnitHistory;
import coldround.scoring.Assessment;
import coldround.scoring.Condition;
import coldround.upkeep.Task;
import java.util.List;

/**
 * All that the page of one unit is made of.
 *
 * @param tasks in the order in which they fall due
 */
public record UnitReport(
    UnitHistory history, Condition condition, List<Task> tasks, SplitSeries splits) {
  public UnitReport {
    tasks = List.copyOf(tasks);
  }

  /**
   * @param excessLimitK excess of the split at which a cleaning is due
   */
  public static UnitReport of(Assessment assessment, List<Task> tasks, double excessLimitK) {
    return new UnitReport(
        assessment.history(),
        assessment.condition(),
        tasks,
        SplitSeries.of(assessment, excessLimitK));
  }
}

package coldround.pages;

import coldround.fleet.UnitHistory;
import coldround.scoring.Assessment;
import coldround.scoring.Condition;
import coldround.scoring.NextReading;
import coldround.upkeep.Task;
import java.util.List;

/**
 * All that the page of one unit is made of.
 *
 * @param tasks in the order in which they fall due
 * @param next what to read or enter next, the best first
 * @param scores days on which the score changed, oldest first
 */
public record UnitReport(
    UnitHistory history,
    Condition condition,
    List<Task> tasks,
    SplitSeries splits,
    List<NextReading> next,
    List<ScoreCurve.Day> scores) {
  public UnitReport {
    tasks = List.copyOf(tasks);
    next = List.copyOf(next);
    scores = List.copyOf(scores);
  }

  /**
   * @param excessLimitK excess of the split at which a cleaning is due
   */
  public static UnitReport of(
      Assessment assessment,
      List<Task> tasks,
      List<NextReading> next,
      List<ScoreCurve.Day> scores,
      double excessLimitK) {
    return new UnitReport(
        assessment.history(),
        assessment.condition(),
        tasks,
        SplitSeries.of(assessment, excessLimitK),
        next,
        scores);
  }
}

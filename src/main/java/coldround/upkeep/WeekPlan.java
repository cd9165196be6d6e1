package coldround.upkeep;

import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;

/**
 * The work of the coming weeks against what the technicians can do.
 *
 * @param pulled tasks brought forward before the hot months
 * @param moved tasks brought forward out of a week over capacity
 * @param minutesOver work in these weeks that nobody has time for
 */
public record WeekPlan(List<Week> weeks, int pulled, int moved, int minutesOver) {

  /** What technicians can do in a week, and the row that says so. */
  public record Capacity(int minutes, Source source) {}

  /** One week from its Monday, with its tasks by due date; overdue ones stand in the first. */
  public record Week(LocalDate monday, int minutes, int capacity, List<Task> tasks) {
    public Week {
      tasks = List.copyOf(tasks);
    }

    public boolean over() {
      return minutes > capacity;
    }
  }

  public WeekPlan {
    weeks = List.copyOf(weeks);
  }

  /**
   * @param tasks as planned, by due date
   * @param count weeks that are shown, the one of the day first
   */
  public static WeekPlan of(List<Task> tasks, LocalDate asOf, Capacity capacity, int count) {
    LocalDate first = monday(asOf);
    List<Week> weeks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      LocalDate monday = first.plusWeeks(i);
      List<Task> its =
          tasks.stream().filter(task -> monday(later(task.due(), asOf)).equals(monday)).toList();
      int minutes = its.stream().mapToInt(Task::minutes).sum();
      weeks.add(new Week(monday, minutes, capacity.minutes(), its));
    }
    return new WeekPlan(
        weeks,
        count(weeks, Season.CODE),
        count(weeks, Levelling.CODE),
        weeks.stream().mapToInt(week -> Math.max(0, week.minutes() - week.capacity())).sum());
  }

  /** True for a reason that moved a task, before the hot months or out of a full week. */
  public static boolean isMove(Reason reason) {
    return reason.code().equals(Season.CODE) || reason.code().equals(Levelling.CODE);
  }

  private static int count(List<Week> weeks, String reason) {
    return (int)
        weeks.stream()
            .flatMap(week -> week.tasks().stream())
            .filter(task -> task.reasons().stream().anyMatch(r -> r.reason().code().equals(reason)))
            .count();
  }

  private static LocalDate monday(LocalDate day) {
    return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
  }

  private static LocalDate later(LocalDate one, LocalDate other) {
    return one.isBefore(other) ? other : one;
  }
}

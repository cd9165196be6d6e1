package coldround.upkeep;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/**
 * On which day each task gets done when no week does more than it can: what saves most a minute
 * goes first, and what is left waits for the next week.
 */
final class Workload {

  private static final int WEEKS = 53;
  private static final Comparator<Task> BEST_FIRST =
      Comparator.comparingDouble(Task::priority).reversed().thenComparing(Task::id);

  private Workload() {}

  /** Days by task; a task that nobody gets to within a year is not in it. */
  static Map<String, LocalDate> days(List<Task> tasks, LocalDate asOf, int minutesPerWeek) {
    Map<LocalDate, List<Task>> byWeek =
        tasks.stream()
            .collect(java.util.stream.Collectors.groupingBy(task -> week(task.due(), asOf)));
    Map<String, LocalDate> days = new HashMap<>();
    PriorityQueue<Task> waiting = new PriorityQueue<>(BEST_FIRST);
    // what a week leaves of its time goes to a task that takes longer than a week
    long spare = 0;
    for (int i = 0; i < WEEKS; i++) {
      LocalDate week = Levelling.monday(asOf).plusWeeks(i);
      waiting.addAll(byWeek.getOrDefault(week, List.of()));
      spare = Math.min(spare, 0) + minutesPerWeek;
      while (!waiting.isEmpty() && (spare >= waiting.peek().minutes() || spare == minutesPerWeek)) {
        Task task = waiting.poll();
        spare -= task.minutes();
        days.put(task.id(), task.due().isBefore(week) ? later(week, asOf) : task.due());
      }
    }
    return days;
  }

  private static LocalDate week(LocalDate due, LocalDate asOf) {
    return Levelling.monday(later(due, asOf));
  }

  private static LocalDate later(LocalDate one, LocalDate other) {
    return one.isBefore(other) ? other : one;
  }
}

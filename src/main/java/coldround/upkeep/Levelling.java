package coldround.upkeep;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Levels the work of the weeks: a week over capacity moves its most movable tasks earlier. */
public final class Levelling {

  static final String CODE = "week-over-capacity";

  private static final String TEMPLATE =
      "The week of {week} has {load} of work for {capacity}: brought forward from {due} to {date}";
  private static final int WORKING_DAYS = 4;

  /**
   * The tasks on their new days.
   *
   * @param tasks by due date
   * @param over minutes over capacity that could not be moved, by Monday of their week
   */
  public record Level(List<Task> tasks, Map<LocalDate, Integer> over) {
    public Level {
      tasks = List.copyOf(tasks);
      over = Map.copyOf(over);
    }
  }

  private final int capacity;
  private final Source source;
  private final LocalDate asOf;
  private final TreeMap<LocalDate, List<Task>> weeks = new TreeMap<>();

  private Levelling(int minutesPerWeek, Source source, LocalDate asOf) {
    this.capacity = minutesPerWeek;
    this.source = source;
    this.asOf = asOf;
  }

  /**
   * Never moves a task later, nor before its window or the day of asking.
   *
   * @param minutesPerWeek work that can be done in a week
   * @param source where that capacity comes from, such as the list of technicians
   */
  public static Level level(List<Task> tasks, LocalDate asOf, int minutesPerWeek, Source source) {
    if (minutesPerWeek <= 0) {
      throw new IllegalArgumentException("capacity must be above 0, not " + minutesPerWeek);
    }
    Levelling levelling = new Levelling(minutesPerWeek, source, asOf);
    tasks.forEach(levelling::put);
    return levelling.level();
  }

  private void put(Task task) {
    LocalDate day = task.due().isBefore(asOf) ? asOf : task.due();
    weeks.computeIfAbsent(monday(day), week -> new ArrayList<>()).add(task);
  }

  private static LocalDate monday(LocalDate day) {
    return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
  }

  /** From the last week to the first, so that what is moved is looked at again where it lands. */
  private Level level() {
    Map<LocalDate, Integer> over = new TreeMap<>();
    LocalDate week = weeks.isEmpty() ? null : weeks.lastKey();
    while (week != null) {
      relieve(week);
      int spare = capacity - load(week);
      if (spare < 0) {
        over.put(week, -spare);
      }
      week = weeks.lowerKey(week);
    }
    List<Task> tasks = new ArrayList<>();
    weeks.values().forEach(tasks::addAll);
    tasks.sort(Comparator.comparing(Task::due).thenComparing(Task::id));
    return new Level(tasks, over);
  }

  private int load(LocalDate week) {
    return weeks.getOrDefault(week, List.of()).stream().mapToInt(Task::minutes).sum();
  }

  private void relieve(LocalDate week) {
    List<Task> movable = new ArrayList<>(weeks.get(week));
    movable.sort(Comparator.comparing(Levelling::roomDays).reversed().thenComparing(Task::id));
    for (Task task : movable) {
      int load = load(week);
      if (load <= capacity) {
        return;
      }
      LocalDate to = weekWithRoom(task, week);
      if (to != null) {
        weeks.get(week).remove(task);
        weeks.computeIfAbsent(to, w -> new ArrayList<>()).add(moved(task, week, load, to));
      }
    }
  }

  private static long roomDays(Task task) {
    return ChronoUnit.DAYS.between(task.earliest(), task.due());
  }

  /** The nearest earlier week that has room, within the window; null for none. */
  private LocalDate weekWithRoom(Task task, LocalDate week) {
    LocalDate first = monday(task.earliest().isBefore(asOf) ? asOf : task.earliest());
    for (LocalDate to = week.minusWeeks(1); !to.isBefore(first); to = to.minusWeeks(1)) {
      if (load(to) + task.minutes() <= capacity) {
        return to;
      }
    }
    return null;
  }

  private Task moved(Task task, LocalDate week, int load, LocalDate to) {
    LocalDate first = task.earliest().isBefore(asOf) ? asOf : task.earliest();
    LocalDate friday = to.plusDays(WORKING_DAYS);
    LocalDate day = friday.isBefore(first) ? first : friday;
    Reason why =
        UnitCase.reason(
            CODE,
            TEMPLATE,
            source,
            "week",
            week,
            "load",
            new Quantity(load, Measure.MINUTE),
            "capacity",
            new Quantity(capacity, Measure.MINUTE),
            "due",
            task.due(),
            "date",
            day);
    return task.broughtForward(day, new TaskReason(day, why), asOf);
  }
}

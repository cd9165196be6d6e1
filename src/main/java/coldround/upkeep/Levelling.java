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
import java.util.HashMap;
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
   * What of a task decides where it may go.
   *
   * @param fixed true for one that is booked and so stays
   */
  public record Slot(String taskId, LocalDate due, LocalDate earliest, int minutes, boolean fixed) {
    static Slot of(Task task) {
      return new Slot(task.id(), task.due(), task.earliest(), task.minutes(), false);
    }

    private long roomDays() {
      return ChronoUnit.DAYS.between(earliest, due);
    }
  }

  /**
   * What is to be moved.
   *
   * @param over minutes over capacity that could not be moved, by Monday of their week
   */
  public record Plan(List<Move> moves, Map<LocalDate, Integer> over) {
    public Plan {
      moves = List.copyOf(moves);
      over = Map.copyOf(over);
    }

    /** Work over capacity in all weeks, in minutes. */
    public int minutesOver() {
      return over.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  /** The tasks on their new days, by due date. */
  public record Level(List<Task> tasks, Map<LocalDate, Integer> over) {
    public Level {
      tasks = List.copyOf(tasks);
      over = Map.copyOf(over);
    }
  }

  private final int capacity;
  private final LocalDate asOf;
  private final TreeMap<LocalDate, List<Slot>> weeks = new TreeMap<>();
  private final Map<LocalDate, Integer> loads = new HashMap<>();
  private final Map<String, Move> moves = new TreeMap<>();

  private Levelling(int minutesPerWeek, LocalDate asOf) {
    this.capacity = minutesPerWeek;
    this.asOf = asOf;
  }

  /**
   * Never moves a task later, nor before its window or the day of asking.
   *
   * @param minutesPerWeek work that can be done in a week
   */
  public static Plan plan(List<Slot> slots, LocalDate asOf, int minutesPerWeek) {
    if (minutesPerWeek <= 0) {
      throw new IllegalArgumentException("capacity must be above 0, not " + minutesPerWeek);
    }
    Levelling levelling = new Levelling(minutesPerWeek, asOf);
    for (Slot slot : slots) {
      levelling.put(monday(later(slot.due, asOf)), slot);
    }
    return levelling.plan();
  }

  /** The same with the tasks themselves, which then say why they were moved. */
  static Level level(List<Task> tasks, LocalDate asOf, int minutesPerWeek, Source source) {
    Plan plan = plan(tasks.stream().map(Slot::of).toList(), asOf, minutesPerWeek);
    Map<String, Move> moves = new HashMap<>();
    plan.moves.forEach(move -> moves.put(move.taskId(), move));
    List<Task> level = new ArrayList<>();
    for (Task task : tasks) {
      Move move = moves.get(task.id());
      level.add(move == null ? task : moved(task, move, source, asOf));
    }
    level.sort(Comparator.comparing(Task::due).thenComparing(Task::id));
    return new Level(level, plan.over);
  }

  private void put(LocalDate week, Slot slot) {
    weeks.computeIfAbsent(week, monday -> new ArrayList<>()).add(slot);
    loads.merge(week, slot.minutes, Integer::sum);
  }

  static LocalDate monday(LocalDate day) {
    return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
  }

  private static LocalDate later(LocalDate one, LocalDate other) {
    return one.isBefore(other) ? other : one;
  }

  /** From the last week to the first, so that what is moved is looked at again where it lands. */
  private Plan plan() {
    Map<LocalDate, Integer> over = new TreeMap<>();
    LocalDate week = weeks.isEmpty() ? null : weeks.lastKey();
    while (week != null) {
      relieve(week);
      int spare = capacity - loads.get(week);
      if (spare < 0) {
        over.put(week, -spare);
      }
      week = weeks.lowerKey(week);
    }
    return new Plan(new ArrayList<>(moves.values()), over);
  }

  private void relieve(LocalDate week) {
    if (loads.get(week) <= capacity) {
      return;
    }
    List<Slot> movable = new ArrayList<>(weeks.get(week));
    movable.removeIf(Slot::fixed);
    movable.sort(Comparator.comparing(Slot::roomDays).reversed().thenComparing(Slot::taskId));
    for (Slot slot : movable) {
      int load = loads.get(week);
      LocalDate to = load > capacity ? weekWithRoom(slot, week) : null;
      if (to != null) {
        loads.merge(week, -slot.minutes, Integer::sum);
        put(to, move(slot, week, load, to));
      }
    }
  }

  /** The nearest earlier week that has room, within the window; null for none. */
  private LocalDate weekWithRoom(Slot slot, LocalDate week) {
    LocalDate first = monday(later(slot.earliest, asOf));
    for (LocalDate to = week.minusWeeks(1); !to.isBefore(first); to = to.minusWeeks(1)) {
      if (loads.getOrDefault(to, 0) + slot.minutes <= capacity) {
        return to;
      }
    }
    return null;
  }

  private Slot move(Slot slot, LocalDate week, int load, LocalDate to) {
    LocalDate day = later(to.plusDays(WORKING_DAYS), later(slot.earliest, asOf));
    moves.put(slot.taskId, new Move(slot.taskId, slot.due, day, week, load, capacity));
    return new Slot(slot.taskId, day, slot.earliest, slot.minutes, true);
  }

  /** The task on the day of its move, with why. */
  static Task moved(Task task, Move move, Source source, LocalDate asOf) {
    Reason why =
        UnitCase.reason(
            CODE,
            TEMPLATE,
            source,
            "week",
            move.week(),
            "load",
            new Quantity(move.minutes(), Measure.MINUTE),
            "capacity",
            new Quantity(move.capacity(), Measure.MINUTE),
            "due",
            task.due(),
            "date",
            move.day());
    return task.broughtForward(move.day(), new TaskReason(move.day(), why), asOf);
  }
}

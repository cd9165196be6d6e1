package coldround.pages;

import coldround.fleet.Unit;
import coldround.quantity.MeasureSystem;
import coldround.reason.Reason;
import coldround.upkeep.Task;
import coldround.upkeep.WeekPlan;
import java.util.List;
import java.util.function.Function;

/**
 * One week of the calendar, ready to be shown.
 *
 * @param share of the bar that the work fills, 0 to 100; the bar is as long as the fullest week
 * @param capacityAt where along the bar the capacity ends, 0 to 100
 * @param told the bar in words
 */
public record WeekView(
    String mondayIso,
    String monday,
    String load,
    boolean over,
    double share,
    double capacityAt,
    String told,
    List<Line> tasks) {

  /**
   * One task.
   *
   * @param place name of the site and of its customer
   * @param why the reason that decides its date; where it was moved, why it was
   */
  public record Line(
      String unitId,
      String tag,
      String place,
      String task,
      String due,
      String minutes,
      String state,
      boolean moved,
      Told why) {}

  public WeekView {
    tasks = List.copyOf(tasks);
  }

  /**
   * All weeks, on one scale.
   *
   * @param places where a unit stands, as people call it
   */
  public static List<WeekView> of(
      WeekPlan plan, MeasureSystem system, Function<Unit, String> places) {
    int most =
        plan.weeks().stream().mapToInt(w -> Math.max(w.minutes(), w.capacity())).max().orElse(1);
    return plan.weeks().stream().map(week -> of(week, Math.max(1, most), system, places)).toList();
  }

  private static WeekView of(
      WeekPlan.Week week, int most, MeasureSystem system, Function<Unit, String> places) {
    String load = hours(week.minutes()) + " of " + hours(week.capacity());
    String tasks = Words.count(week.tasks().size(), "task", "tasks");
    return new WeekView(
        week.monday().toString(),
        Figures.day(week.monday()),
        load,
        week.over(),
        tenth(100.0 * week.minutes() / most),
        tenth(100.0 * week.capacity() / most),
        tasks + ", " + load + (week.over() ? ", more than there is time for" : ""),
        week.tasks().stream().map(task -> line(task, system, places)).toList());
  }

  private static double tenth(double share) {
    return Math.round(share * 10) / 10.0;
  }

  private static String hours(int minutes) {
    return Figures.decimal(minutes / 60.0, 1) + " h";
  }

  private static Line line(Task task, MeasureSystem system, Function<Unit, String> places) {
    Reason reason = task.governing().reason();
    boolean moved = WeekPlan.isMove(reason);
    return new Line(
        task.unit().id(),
        task.unit().tag(),
        places.apply(task.unit()),
        Words.title(task.task()),
        Figures.day(task.due()),
        task.minutes() + " min",
        task.state().code(),
        moved,
        Told.of(reason, system));
  }
}

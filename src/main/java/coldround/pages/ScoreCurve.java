package coldround.pages;

import coldround.pages.CurveDrawing.Line;
import coldround.pages.CurveDrawing.Scale;
import coldround.pages.CurveDrawing.Step;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Draws how the score of a unit went. */
public final class ScoreCurve {

  private static final int NAMES = 12;
  private static final int MARKS = 8;
  private static final Map<Double, String> POINTS =
      new TreeMap<>(Map.of(0.0, "0", 25.0, "25", 50.0, "50", 75.0, "75", 100.0, "100"));

  /**
   * The score from a day on.
   *
   * @param what it came with, such as a visit
   */
  public record Day(LocalDate day, double score, String what) {}

  private ScoreCurve() {}

  /**
   * @param days oldest first, one at least
   * @param until last day that the last score holds
   */
  public static CurvePicture draw(List<Day> days, LocalDate until, int width, int height) {
    LocalDate from = days.get(0).day().withDayOfMonth(1);
    LocalDate to = until.isAfter(from) ? until : from.plusDays(1);
    Map<Double, String> months = new TreeMap<>();
    int most = Math.max(2, width / 100);
    Axis.months(from, to, Math.min(MARKS, most))
        .forEach(mark -> months.put((double) mark.day().toEpochDay(), mark.label()));
    Scale across = new Scale(from.toEpochDay(), to.toEpochDay(), months);
    List<Step> steps = new ArrayList<>();
    days.forEach(day -> steps.add(new Step(day.day().toEpochDay(), day.score(), told(day))));
    return new CurveDrawing(across, new Scale(0, 100, POINTS), width, height, NAMES)
        .draw(List.of(new Line("", steps, to.toEpochDay())), "score", sentence(days));
  }

  private static String told(Day day) {
    return Figures.day(day.day())
        + ": "
        + Figures.decimal(day.score(), 1)
        + (day.what().isEmpty() ? "" : ", " + day.what());
  }

  private static String sentence(List<Day> days) {
    Day first = days.get(0);
    Day last = days.get(days.size() - 1);
    return "Condition score from "
        + Figures.decimal(first.score(), 1)
        + " on "
        + Figures.day(first.day())
        + " to "
        + Figures.decimal(last.score(), 1)
        + " on "
        + Figures.day(last.day())
        + ", changed on "
        + Words.count(days.size() - 1, "day", "days")
        + " in between.";
  }
}

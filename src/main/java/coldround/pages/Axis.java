package coldround.pages;

import java.time.LocalDate;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Where the marks of a scale go. */
public final class Axis {

  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM", Locale.UK);
  private static final int[] MONTHS = {1, 2, 3, 6, 12, 24, 60, 120};

  /** A mark of a scale of days. */
  public record DayMark(LocalDate day, String label) {}

  private Axis() {}

  /**
   * Distance of marks that are 1, 2 or 5 times a power of ten.
   *
   * @param span what the scale covers
   * @param most number of distances at most
   */
  public static double step(double span, int most) {
    double least = span / most;
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (int factor : new int[] {1, 2, 5}) {
      if (factor * power >= least * (1 - 1e-9)) {
        return factor * power;
      }
    }
    return 10 * power;
  }

  /** Whole multiples of the step from the one below the low end to the one above the high end. */
  public static List<Double> marks(double low, double high, int most) {
    double step = step(Math.max(high - low, 1), most);
    List<Double> marks = new ArrayList<>();
    double first = Math.floor(low / step);
    double last = Math.max(first + 1, Math.ceil(high / step));
    for (double n = first; n <= last; n++) {
      marks.add(n * step);
    }
    return marks;
  }

  /** First days of months, evenly apart, at most so many. */
  public static List<DayMark> months(LocalDate from, LocalDate to, int most) {
    int step = monthStep(ChronoUnit.MONTHS.between(from, to) + 1, most);
    List<DayMark> marks = new ArrayList<>();
    for (LocalDate day = first(from, step); !day.isAfter(to); day = day.plusMonths(step)) {
      marks.add(new DayMark(day, label(day)));
    }
    return marks;
  }

  private static int monthStep(long span, int most) {
    for (int months : MONTHS) {
      if (span <= (long) months * most) {
        return months;
      }
    }
    int decade = MONTHS[MONTHS.length - 1];
    return decade * (int) Math.ceil((double) span / (decade * most));
  }

  private static LocalDate first(LocalDate from, int step) {
    LocalDate day = LocalDate.of(from.getYear(), Month.JANUARY, 1);
    while (day.isBefore(from)) {
      day = day.plusMonths(step);
    }
    return day;
  }

  // a year once, where it begins
  private static String label(LocalDate day) {
    String year = String.valueOf(day.getYear());
    return day.getMonth() == Month.JANUARY ? year : MONTH.format(day).replace("Sept", "Sep");
  }
}

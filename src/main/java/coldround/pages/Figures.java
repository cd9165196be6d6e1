package coldround.pages;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Numbers and days as a person reads them. */
public final class Figures {

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.UK);
  // from here on weeks say more than days, and from there on months more than weeks
  private static final int DAYS_TOLD = 21;
  private static final int WEEKS_TOLD = 182;
  private static final double DAYS_A_MONTH = 365.25 / 12;

  private Figures() {}

  /** Points of a score with one decimal, rounded half up: "41.7". */
  public static String points(double points) {
    return decimal(points, 1);
  }

  public static String decimal(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /** A share of 0 to 1 in whole percent: "83 %". */
  public static String percent(double share) {
    return decimal(100 * share, 0) + " %";
  }

  /** "12 May 2026"; "not known" for none. */
  public static String day(LocalDate day) {
    return day == null ? "not known" : DAY.format(day).replace("Sept", "Sep");
  }

  /** "21 Apr 2026 to 26 May 2026". */
  public static String days(LocalDate from, LocalDate to) {
    return from.equals(to) ? day(from) : day(from) + " to " + day(to);
  }

  /** How far off a day is: "today", "in 12 days", "6 weeks late". */
  public static String away(LocalDate day, LocalDate today) {
    long days = ChronoUnit.DAYS.between(today, day);
    if (days == 0) {
      return "today";
    }
    return days > 0 ? "in " + span(days) : span(-days) + " late";
  }

  private static String span(long days) {
    if (days <= DAYS_TOLD) {
      return Words.count(days, "day", "days");
    }
    return days <= WEEKS_TOLD
        ? Words.count(Math.round(days / 7.0), "week", "weeks")
        : Words.count(Math.round(days / DAYS_A_MONTH), "month", "months");
  }

  /** With its unit of measure, in the reader's: "148 psig". */
  public static String quantity(Quantity quantity, MeasureSystem system) {
    return quantity.in(system).toString();
  }

  /** A difference of temperatures in the reader's unit: "31.4 °F". */
  public static String split(double splitK, MeasureSystem system) {
    return quantity(new Quantity(splitK, Measure.DELTA_K), system);
  }
}

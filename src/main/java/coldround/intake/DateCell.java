package coldround.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A day: year first always, other orders by the profile. A time of day behind it is dropped. Years
 * of two digits are of the last hundred years up to the year of the import.
 */
final class DateCell implements CellReader {

  private static final Pattern PARTS =
      Pattern.compile("(\\d{1,4})([-/. ])(\\d{1,2})\\2(\\d{1,4})(?:[T ]\\d{1,2}:\\d{2}.{0,20})?");
  private static final Pattern SERIAL = Pattern.compile("[1-6]\\d{4}(\\.\\d+)?");
  private static final String TODAY = "today";

  private final DateOrder order;
  private final LocalDate earliest;
  private final LocalDate latest;
  private final LocalDate today;

  private DateCell(DateOrder order, LocalDate earliest, LocalDate latest, LocalDate today) {
    this.order = order;
    this.earliest = earliest;
    this.latest = latest;
    this.today = today;
  }

  static DateCell of(Column column, CellRules rules) {
    return new DateCell(
        rules.profile().dates(),
        limit(column.least(), rules.today(), LocalDate.of(1, 1, 1)),
        limit(column.greatest(), rules.today(), LocalDate.of(9999, 12, 31)),
        rules.today());
  }

  /** In the east of the contractor's zone the next day has begun: today allows one day more. */
  private static LocalDate limit(String cell, LocalDate today, LocalDate none) {
    if (cell.isEmpty()) {
      return none;
    }
    return cell.equals(TODAY) ? today.plusDays(1) : LocalDate.parse(cell);
  }

  @Override
  public Object read(String text, Refusals refusals) {
    Matcher parts = PARTS.matcher(text);
    if (!parts.matches()) {
      return refuse(refusals, "'%s' is not a date.%s".formatted(shown(text), serialHint(text)));
    }
    int first = Integer.parseInt(parts.group(1));
    int second = Integer.parseInt(parts.group(3));
    int third = Integer.parseInt(parts.group(4));
    if (parts.group(1).length() == 4 && parts.group(4).length() <= 2) {
      return day(first, second, third, text, refusals);
    }
    boolean yearLast = parts.group(1).length() <= 2 && parts.group(4).length() % 2 == 0;
    int year = parts.group(4).length() == 2 ? century(third) : third;
    if (!yearLast || order == DateOrder.YEAR_MONTH_DAY) {
      return otherOrder(first, second, yearLast ? year : 0, text, refusals);
    }
    return order == DateOrder.DAY_MONTH_YEAR
        ? day(year, second, first, text, refusals)
        : day(year, first, second, text, refusals);
  }

  private int century(int twoDigits) {
    int year = today.getYear() / 100 * 100 + twoDigits;
    return year > today.getYear() ? year - 100 : year;
  }

  private LocalDate day(int year, int month, int day, String text, Refusals refusals) {
    if (month < 1 || month > 12) {
      return refuse(refusals, "'%s': there is no month %d.".formatted(shown(text), month));
    }
    if (!exists(year, month, day)) {
      String place = YearMonth.of(year, month).toString();
      return refuse(refusals, "'%s': there is no day %d in %s.".formatted(shown(text), day, place));
    }
    LocalDate made = LocalDate.of(year, month, day);
    if (made.isBefore(earliest) || made.isAfter(latest)) {
      refusals.add(
          ProblemCode.OUT_OF_RANGE,
          "%s is not between %s and %s. Mend the year.".formatted(made, earliest, latest));
      return null;
    }
    return made;
  }

  /**
   * Two numbers before a year, where the year should come first.
   *
   * @param year 0 when there is none at the end
   */
  private LocalDate otherOrder(int first, int second, int year, String text, Refusals refusals) {
    boolean dayFirst = exists(year, second, first);
    boolean monthFirst = exists(year, first, second);
    if (dayFirst && monthFirst && first != second) {
      refusals.add(
          ProblemCode.AMBIGUOUS_DATE, "'%s' can be two days.%s".formatted(shown(text), mend()));
      return null;
    }
    boolean impossible = year > 0 && !dayFirst && !monthFirst;
    String fault = impossible ? "'%s' is a day of no calendar." : "'%s' has another order.";
    return refuse(refusals, fault.formatted(shown(text)));
  }

  private static boolean exists(int year, int month, int day) {
    try {
      LocalDate.of(year, month, day);
      return year > 0;
    } catch (DateTimeException e) {
      return false;
    }
  }

  private static String serialHint(String text) {
    return SERIAL.matcher(text).matches() ? " It looks like a spreadsheet's number of a day." : "";
  }

  private LocalDate refuse(Refusals refusals, String fault) {
    refusals.add(ProblemCode.NOT_A_DATE, fault + mend());
    return null;
  }

  private String mend() {
    return " Write it %s, such as %s, or name a profile with the order of its dates."
        .formatted(order.code(), order.example());
  }

  private static String shown(String text) {
    return RowProblem.shown(text);
  }
}

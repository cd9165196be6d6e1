package coldround.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A day: ISO 8601 always, other orders by the profile. A time of day behind it is dropped. Years of
 * two digits are of the last hundred years up to the year of the import.
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

  /** Where the day has ended in the east it goes on in the west: today allows one day more. */
  private static LocalDate limit(String cell, LocalDate today, LocalDate none) {
    if (cell.isEmpty()) {
      return none;
    }
    return cell.equals(TODAY) ? today.plusDays(1) : LocalDate.parse(cell);
  }

  @Override
  public Object read(String text, Refusals refusals) {
    Matcher parts = PARTS.matcher(text);
    LocalDate day = parts.matches() ? day(parts, text, refusals) : notADate(text, refusals);
    if (day != null && (day.isBefore(earliest) || day.isAfter(latest))) {
      refusals.add(
          ProblemCode.OUT_OF_RANGE,
          "%s is not between %s and %s. Mend the year.".formatted(day, earliest, latest));
      return null;
    }
    return day;
  }

  private LocalDate day(Matcher parts, String text, Refusals refusals) {
    int first = Integer.parseInt(parts.group(1));
    int second = Integer.parseInt(parts.group(3));
    int third = Integer.parseInt(parts.group(4));
    if (parts.group(1).length() == 4 && parts.group(4).length() <= 2) {
      return day(first, second, third, text, refusals);
    }
    boolean yearLast = parts.group(1).length() <= 2 && parts.group(4).length() % 2 == 0;
    if (!yearLast || order == DateOrder.YEAR_MONTH_DAY) {
      return otherOrder(first, second, third, yearLast, text, refusals);
    }
    int year = parts.group(4).length() == 2 ? century(third) : third;
    return order == DateOrder.DAY_MONTH_YEAR
        ? day(year, second, first, text, refusals)
        : day(year, first, second, text, refusals);
  }

  private int century(int twoDigits) {
    int year = today.getYear() / 100 * 100 + twoDigits;
    return year > today.getYear() ? year - 100 : year;
  }

  private LocalDate day(int year, int month, int day, String text, Refusals refusals) {
    if (exists(year, month, day)) {
      return LocalDate.of(year, month, day);
    }
    refusals.add(ProblemCode.NOT_A_DATE, "'" + text + "': " + why(year, month, day));
    return null;
  }

  private String why(int year, int month, int day) {
    if (month < 1 || month > 12) {
      return "there is no month %d. Dates are written %s.".formatted(month, written());
    }
    return "there is no day %d in %s. Mend the day.".formatted(day, YearMonth.of(year, month));
  }

  private LocalDate otherOrder(
      int first, int second, int third, boolean yearLast, String text, Refusals refusals) {
    boolean dayFirst = yearLast && exists(century(third, yearLast), second, first);
    boolean monthFirst = yearLast && exists(century(third, yearLast), first, second);
    if (dayFirst && monthFirst && first != second) {
      refusals.add(
          ProblemCode.AMBIGUOUS_DATE,
          "'%s' can be two days. Write it %s, or name a profile with the order of its dates."
              .formatted(text, written()));
    } else {
      String impossible = yearLast && !dayFirst && !monthFirst ? "is a day of no calendar" : "";
      String otherwise = "is not written in the order " + DateOrder.YEAR_MONTH_DAY.code();
      refusals.add(
          ProblemCode.NOT_A_DATE,
          "'%s' %s. Write it %s, or name a profile with the order of its dates."
              .formatted(text, impossible.isEmpty() ? otherwise : impossible, written()));
    }
    return null;
  }

  private int century(int year, boolean short2) {
    return year < 100 && short2 ? century(year) : year;
  }

  private static boolean exists(int year, int month, int day) {
    try {
      LocalDate.of(year, month, day);
      return year > 0;
    } catch (DateTimeException e) {
      return false;
    }
  }

  private LocalDate notADate(String text, Refusals refusals) {
    String hint =
        SERIAL.matcher(text).matches() ? " It looks like a spreadsheet's number of a day." : "";
    refusals.add(
        ProblemCode.NOT_A_DATE,
        "'%s' is not a date.%s Write it %s.".formatted(RowProblem.shown(text), hint, written()));
    return null;
  }

  private String written() {
    return order.code() + ", such as " + order.example();
  }
}

package coldround.intake;

import coldround.sheet.ExcelCells;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A day: year first always, other orders by the profile or as the column proves, and the numbers by
 * which spreadsheets keep days. A time of day behind it is dropped, unless it says how far it is
 * from UTC: the site then decides which day it was. Years of two digits are of the hundred years
 * that end with the last one the column takes.
 */
final class DateCell implements CellReader {

  private static final Pattern SERIAL = Pattern.compile("[1-6]\\d{4}(\\.\\d+)?");
  private static final Pattern MOMENT =
      Pattern.compile(
          "(.+?)[T ](\\d{1,2}:\\d{2}(?::\\d{2}(?:\\.\\d{1,9})?)?) ?(Z|[+-]\\d{2}:?\\d{2})");
  private static final String TODAY = "today";
  private static final Pattern YEARS_AHEAD = Pattern.compile("today\\+(\\d{1,3})a");

  private final DateOrder order;
  private final LocalDate earliest;
  private final LocalDate latest;
  private final int lastYear;
  private final Supplier<DateEvidence> evidence;
  private final Set<ProblemCode> told = EnumSet.noneOf(ProblemCode.class);

  private DateCell(
      DateOrder order,
      LocalDate earliest,
      LocalDate latest,
      int lastYear,
      Supplier<DateEvidence> evidence) {
    this.order = order;
    this.evidence = evidence;
    this.earliest = earliest;
    this.latest = latest;
    this.lastYear = lastYear;
  }

  static DateCell of(Column column, CellRules rules) {
    return new DateCell(
        rules.profile().dates(),
        limit(column.least(), rules.today(), LocalDate.of(1, 1, 1)),
        limit(column.greatest(), rules.today(), LocalDate.of(9999, 12, 31)),
        lastYear(column, rules.today()),
        () -> rules.dates().apply(column.name()));
  }

  /**
   * A day, "today" or "today+20a". In the east of the contractor's zone the next day has begun:
   * today allows one day more.
   */
  private static LocalDate limit(String cell, LocalDate today, LocalDate none) {
    if (cell.isEmpty()) {
      return none;
    }
    Matcher ahead = YEARS_AHEAD.matcher(cell);
    if (ahead.matches()) {
      return today.plusYears(Integer.parseInt(ahead.group(1)));
    }
    return cell.equals(TODAY) ? today.plusDays(1) : LocalDate.parse(cell);
  }

  /** The latest year that two digits can mean: that of the last day which the column takes. */
  private static int lastYear(Column column, LocalDate today) {
    boolean ahead = YEARS_AHEAD.matcher(column.greatest()).matches();
    return ahead ? limit(column.greatest(), today, today).getYear() : today.getYear();
  }

  /** The day of a value that {@link #read} made: of a moment that which it was written with. */
  static LocalDate day(Object value) {
    if (value instanceof OffsetDateTime moment) {
      return moment.toLocalDate();
    }
    return value instanceof LocalDate day ? day : null;
  }

  @Override
  public Object read(String text, Refusals refusals) {
    Matcher moment = MOMENT.matcher(text);
    LocalDate day = dayOf(moment.matches() ? moment.group(1) : text, text, refusals);
    return day == null || !moment.matches() ? day : moment(day, moment, text, refusals);
  }

  /** A time with its distance from UTC may lie on another day at the site. */
  private Object moment(LocalDate day, Matcher moment, String text, Refusals refusals) {
    try {
      String time = moment.group(2).length() == 4 ? "0" + moment.group(2) : moment.group(2);
      return OffsetDateTime.of(day, LocalTime.parse(time), ZoneOffset.of(moment.group(3)));
    } catch (DateTimeException e) {
      refusals.add(
          ProblemCode.NOT_A_DATE,
          "'%s': there is no such time of day. Write it as 2026-05-31T14:30:00Z, or leave it out."
              .formatted(shown(text)));
      return null;
    }
  }

  private LocalDate dayOf(String written, String text, Refusals refusals) {
    DateParts parts = DateParts.of(written);
    if (parts == null) {
      return SERIAL.matcher(text).matches()
          ? serial(text, refusals)
          : refuse(refusals, "'%s' is not a date.".formatted(shown(text)));
    }
    if (parts.yearFirst()) {
      return day(parts.first(), parts.second(), parts.third(), text, refusals);
    }
    int year = parts.twoDigits() ? century(parts.third()) : parts.third();
    if (!parts.yearLast() || order == DateOrder.YEAR_MONTH_DAY) {
      return otherOrder(parts, parts.yearLast() ? year : 0, text, refusals);
    }
    if (order == DateOrder.FROM_COLUMN) {
      return byColumn(parts, year, text, refusals);
    }
    return inOrder(order, parts, year, text, refusals);
  }

  private LocalDate inOrder(
      DateOrder known, DateParts parts, int year, String text, Refusals refusals) {
    LocalDate day =
        known == DateOrder.DAY_MONTH_YEAR
            ? day(year, parts.second(), parts.first(), text, refusals)
            : day(year, parts.first(), parts.second(), text, refusals);
    if (day != null && parts.twoDigits()) {
      tellOnce(
          refusals,
          ProblemCode.TWO_DIGIT_YEARS,
          "'%s' was read as %s: years of two digits are those from %d to %d."
              .formatted(shown(text), day, lastYear - 99, lastYear));
    }
    return day;
  }

  /** A date that can be one day only is that day; others are read as the column proves. */
  private LocalDate byColumn(DateParts parts, int year, String text, Refusals refusals) {
    boolean dayFirst = exists(year, parts.second(), parts.first());
    boolean monthFirst = exists(year, parts.first(), parts.second());
    if (!dayFirst && !monthFirst) {
      return otherOrder(parts, year, text, refusals);
    }
    boolean two = dayFirst && monthFirst && parts.first() != parts.second();
    if (!two && !parts.mayStartWithYear()) {
      DateOrder only = dayFirst ? DateOrder.DAY_MONTH_YEAR : DateOrder.MONTH_DAY_YEAR;
      return inOrder(only, parts, year, text, refusals);
    }
    DateEvidence proven = evidence.get();
    if (parts.mayStartWithYear() || proven.order().isEmpty()) {
      return ambiguous(parts, proven, text, refusals);
    }
    DateOrder found = proven.order().get();
    tellOnce(
        refusals,
        ProblemCode.DATE_ORDER_FOUND,
        "'%s' was read as %s, like all dates of the column: '%s' can be no other."
            .formatted(shown(text), found.code(), proven.proof()));
    return inOrder(found, parts, year, text, refusals);
  }

  private LocalDate ambiguous(
      DateParts parts, DateEvidence proven, String text, Refusals refusals) {
    String why = parts.mayStartWithYear() ? "and may start with its year" : proven.whyNot();
    refusals.add(
        ProblemCode.AMBIGUOUS_DATE,
        "'%s' can be two days, %s.%s".formatted(shown(text), why, mend()));
    return null;
  }

  /** The number by which spreadsheets keep a day. */
  private LocalDate serial(String text, Refusals refusals) {
    LocalDate day =
        ExcelCells.moment(Double.parseDouble(text)).map(LocalDateTime::toLocalDate).orElseThrow();
    tellOnce(
        refusals,
        ProblemCode.SERIAL_DATE,
        "'%s' is a spreadsheet's number of a day and was read as %s, counted from 1900."
            .formatted(shown(text), day));
    return day(day.getYear(), day.getMonthValue(), day.getDayOfMonth(), text, refusals);
  }

  /** What holds for a whole column is told for its first cell. */
  private void tellOnce(Refusals refusals, ProblemCode code, String message) {
    if (told.add(code)) {
      refusals.add(code, message + " Told once for the column.");
    }
  }

  private int century(int twoDigits) {
    int year = lastYear / 100 * 100 + twoDigits;
    return year > lastYear ? year - 100 : year;
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
  private LocalDate otherOrder(DateParts parts, int year, String text, Refusals refusals) {
    boolean dayFirst = exists(year, parts.second(), parts.first());
    boolean monthFirst = exists(year, parts.first(), parts.second());
    if (dayFirst && monthFirst && parts.first() != parts.second()) {
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

  private LocalDate refuse(Refusals refusals, String fault) {
    refusals.add(ProblemCode.NOT_A_DATE, fault + mend());
    return null;
  }

  private String mend() {
    return " Write it %s, such as %s, or name a profile with the order of its dates."
        .formatted(order.asked().code(), order.example());
  }

  private static String shown(String text) {
    return RowProblem.shown(text);
  }
}

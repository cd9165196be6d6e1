package coldround.intake;

import coldround.fleet.DaySpan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Days and spans of days, separated by semicolons: a span has its first and last day, year first,
 * with a slash between. A day alone is read as any other date.
 */
record DaysCell(DateCell dates) implements CellReader {

  /** As many as the store keeps. */
  private static final int MOST = 180;

  private static final String DAY = "(\\d{4}-\\d{1,2}-\\d{1,2})";
  private static final Pattern SPAN = Pattern.compile(DAY + "\\s*/\\s*" + DAY);

  @Override
  public Object read(String text, Refusals refusals) {
    List<DaySpan> days = new ArrayList<>();
    boolean refused = false;
    for (String part : text.split(";")) {
      DaySpan span = part.isBlank() ? null : span(part.strip(), refusals);
      refused |= span == null && !part.isBlank();
      if (span != null && !days.contains(span)) {
        days.add(span);
      }
    }
    if (days.isEmpty() && !refused) {
      refuse(text, "'%s' names no day.", refusals);
    }
    if (days.size() > MOST) {
      String many = "%d days and spans are more than the %d that are kept. Write spans.";
      refusals.add(ProblemCode.TOO_LONG, many.formatted(days.size(), MOST));
    }
    return refused || days.isEmpty() || days.size() > MOST ? null : days;
  }

  private DaySpan span(String text, Refusals refusals) {
    Matcher span = SPAN.matcher(text);
    boolean single = !span.matches();
    if (single && text.matches(".*\\d{4}-.*/.*")) {
      return refuse(text, "'%s' is no span of days.", refusals);
    }
    LocalDate from = day(single ? text : span.group(1), refusals);
    LocalDate to = single ? from : day(span.group(2), refusals);
    if (from == null || to == null) {
      return null;
    }
    return to.isBefore(from)
        ? refuse(text, "'%s' ends before it begins.", refusals)
        : new DaySpan(from, to);
  }

  private LocalDate day(String text, Refusals refusals) {
    return DateCell.day(dates.read(text, refusals));
  }

  private static DaySpan refuse(String text, String what, Refusals refusals) {
    refusals.add(
        ProblemCode.NOT_A_DATE,
        what.formatted(RowProblem.shown(text))
            + " Write days such as 2026-11-27;2026-12-24/2027-01-02.");
    return null;
  }
}

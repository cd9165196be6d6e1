package coldround.fleet;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.stream.Stream;

/** Days one after the other, first and last included: an interval of ISO 8601, or one day. */
public record DaySpan(LocalDate from, LocalDate to) {

  /**
   * @throws IllegalArgumentException when it ends before it begins
   */
  public DaySpan {
    if (to.isBefore(from)) {
      throw new IllegalArgumentException(to + " lies before " + from);
    }
  }

  public static DaySpan of(LocalDate day) {
    return new DaySpan(day, day);
  }

  /**
   * Reads what {@link #toString} writes.
   *
   * @throws DateTimeParseException for a text that is no day
   */
  public static DaySpan parse(String text) {
    String[] ends = text.split("/", 2);
    return new DaySpan(LocalDate.parse(ends[0]), LocalDate.parse(ends[ends.length - 1]));
  }

  /** Those of its days that lie within two others. */
  public Stream<LocalDate> within(LocalDate first, LocalDate last) {
    LocalDate begin = from.isBefore(first) ? first : from;
    LocalDate end = to.isAfter(last) ? last : to;
    return end.isBefore(begin) ? Stream.empty() : begin.datesUntil(end.plusDays(1));
  }

  @Override
  public String toString() {
    return from.equals(to) ? from.toString() : from + "/" + to;
  }
}

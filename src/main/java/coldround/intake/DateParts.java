package coldround.intake;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Three numbers with one sign between them, a time of day behind them dropped.
 *
 * @param yearFirst the first has four digits, so that it is a year
 * @param yearLast the last has two or four digits and the first no more than two
 * @param twoDigits the last has two
 */
record DateParts(
    int first,
    int second,
    int third,
    char sign,
    boolean yearFirst,
    boolean yearLast,
    boolean twoDigits) {

  private static final Pattern PARTS =
      Pattern.compile("(\\d{1,4})([-/. ])(\\d{1,2})\\2(\\d{1,4})(?:[T ]\\d{1,2}:\\d{2}.{0,20})?");

  // the basic form of ISO 8601
  private static final Pattern BASIC = Pattern.compile("[12]\\d{7}");

  private static final int MONTHS = 12;
  private static final int DAYS = 31;

  /** Null for a text of another form. */
  static DateParts of(String text) {
    if (BASIC.matcher(text).matches()) {
      int day = Integer.parseInt(text);
      return new DateParts(day / 10_000, day / 100 % 100, day % 100, '-', true, false, false);
    }
    Matcher parts = PARTS.matcher(text);
    if (!parts.matches()) {
      return null;
    }
    int firstDigits = parts.group(1).length();
    int lastDigits = parts.group(4).length();
    return new DateParts(
        Integer.parseInt(parts.group(1)),
        Integer.parseInt(parts.group(3)),
        Integer.parseInt(parts.group(4)),
        parts.group(2).charAt(0),
        firstDigits == 4 && lastDigits <= 2,
        firstDigits <= 2 && lastDigits % 2 == 0,
        lastDigits == 2);
  }

  /** 26-05-31 may be an ISO date whose century was left out: nobody should guess. */
  boolean mayStartWithYear() {
    return twoDigits && sign == '-' && second <= MONTHS && third <= DAYS;
  }
}

package coldround.sheet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes back what spreadsheet programs do to cells when they export them. */
public final class ExcelCells {

  private static final Pattern TEXT_FORMULA = Pattern.compile("=\"((?:[^\"]|\"\")*)\"");
  private static final Pattern SCIENTIFIC =
      Pattern.compile("(\\d)(?:[.,](\\d+))?[eE]\\+(\\d{1,2})");

  /** Day 60 is 29 February 1900, which never was (ECMA-376 part 1, 18.17.4.1; from memory). */
  private static final int FALSE_LEAP_DAY = 60;

  /** 31 December 9999, the last day a spreadsheet date can be (ECMA-376 part 1, 18.17.4.1). */
  private static final int LAST_DAY = 2_958_465;

  private static final long SECONDS_PER_DAY = 86_400;

  private ExcelCells() {}

  /**
   * The cell as it was meant: {@code ="00123"} is 00123, and an apostrophe that keeps a spreadsheet
   * from reading a formula is gone.
   */
  public static String meant(String cell) {
    Matcher formula = TEXT_FORMULA.matcher(cell.strip());
    if (formula.matches()) {
      return formula.group(1).replace("\"\"", "\"");
    }
    return FormulaGuard.undo(cell);
  }

  /**
   * The whole number a spreadsheet has shown in scientific form, for example 120000 for 1.2E+05.
   *
   * @return empty if the cell is not of that form or the number is not whole
   */
  public static Optional<String> expanded(String cell) {
    Matcher number = SCIENTIFIC.matcher(cell.strip());
    if (!number.matches()) {
      return Optional.empty();
    }
    BigDecimal value = new BigDecimal(cell.strip().replace(',', '.'));
    boolean whole = value.stripTrailingZeros().scale() <= 0;
    return whole ? Optional.of(value.toBigInteger().toString()) : Optional.empty();
  }

  /**
   * Whether digits of a serial number are lost for good: 1.2E+05 may have been any number from
   * 115000 to 124999.
   */
  public static boolean hasLostDigits(String cell) {
    Matcher number = SCIENTIFIC.matcher(cell.strip());
    if (!number.matches()) {
      return false;
    }
    int shown = number.group(2) == null ? 0 : number.group(2).length();
    return Integer.parseInt(number.group(3)) > shown;
  }

  /**
   * The moment a serial number of days stands for, in the calendar that counts from 1900.
   *
   * @return empty for the day that never was and for what lies outside the calendar
   */
  public static Optional<LocalDateTime> moment(double serialDays) {
    int day = (int) Math.floor(serialDays);
    if (!(serialDays >= 1) || day > LAST_DAY || day == FALSE_LEAP_DAY) {
      return Optional.empty();
    }
    LocalDate start = LocalDate.of(1899, 12, day < FALSE_LEAP_DAY ? 31 : 30);
    long seconds = Math.round((serialDays - day) * SECONDS_PER_DAY);
    return Optional.of(start.plusDays(day).atStartOfDay().plusSeconds(seconds));
  }
}

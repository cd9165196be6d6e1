package coldround.sheet;

import java.util.regex.Pattern;

/**
 * Keeps a spreadsheet program from taking a cell for a formula (CWE-1236): an apostrophe is put
 * before a cell that starts with one of the characters that begin a formula, unless the cell is a
 * plain number. {@link #undo} takes away exactly what {@link #guard} put there.
 */
public final class FormulaGuard {

  /** The characters named by CWE-1236, tab, carriage return and NUL, and the full-width forms. */
  private static final String TRIGGERS = "=+-@\t\r\0\uFF1D\uFF0B\uFF0D\uFF20";

  private static final Pattern NUMBER = Pattern.compile("[-+]?\\d+([.,]\\d+)?([eE][-+]?\\d{1,3})?");

  private FormulaGuard() {}

  /** The cell made harmless. */
  public static String guard(String cell) {
    return isRisky(cell, 0) && !NUMBER.matcher(cell).matches() ? "'" + cell : cell;
  }

  /** The cell as it was before {@link #guard}. */
  public static String undo(String cell) {
    return cell.startsWith("'") && isRisky(cell, 1) ? cell.substring(1) : cell;
  }

  /** A cell that has apostrophes before the trigger of its own gets one more, to be told apart. */
  private static boolean isRisky(String cell, int from) {
    int at = from;
    while (at < cell.length() && cell.charAt(at) == '\'') {
      at++;
    }
    return at < cell.length() && TRIGGERS.indexOf(cell.charAt(at)) >= 0;
  }
}

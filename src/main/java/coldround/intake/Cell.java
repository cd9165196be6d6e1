package coldround.intake;

/** A cell as it stands in a file, and what spreadsheets put around its content. */
final class Cell {

  private static final String FORMULA = "=+-@\t\r";

  private Cell() {}

  /** The content: without blanks around it, and out of the ="00123" that keeps zeros. */
  static String content(String raw) {
    String text = trimmed(raw);
    if (text.length() >= 3 && text.startsWith("=\"") && text.endsWith("\"")) {
      return trimmed(text.substring(2, text.length() - 1));
    }
    return text;
  }

  private static String trimmed(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && isBlank(text.charAt(from))) {
      from++;
    }
    while (to > from && isBlank(text.charAt(to - 1))) {
      to--;
    }
    return text.substring(from, to);
  }

  private static boolean isBlank(char c) {
    return c <= ' ' ? c != 0 : c == '\u00A0' || c == '\uFEFF' || Character.isWhitespace(c);
  }

  /**
   * As it may be written to a file that a spreadsheet program opens: a cell that would be taken for
   * a formula gets an apostrophe in front. Numbers, and the lone hyphen that erases, stay.
   */
  static String harmless(String raw) {
    return isFormula(raw) ? "'" + raw : raw;
  }

  /** Undoes {@link #harmless}. */
  static String unharmed(String raw) {
    boolean marked = raw.startsWith("'") && isFormula(raw.substring(1));
    return marked ? raw.substring(1) : raw;
  }

  private static boolean isFormula(String raw) {
    int start = 0;
    while (start < raw.length() && raw.charAt(start) == '\'') {
      start++;
    }
    if (start == raw.length() || FORMULA.indexOf(raw.charAt(start)) < 0) {
      return false;
    }
    return start > 0 || !(raw.equals("-") || Numbers.isNumber(raw));
  }
}

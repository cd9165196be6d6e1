package coldround.intake;

import coldround.sheet.ExcelCells;

/** The content of a cell as it stands in a file. */
final class Cell {

  private Cell() {}

  /**
   * Without blanks around it, out of the ="00123" by which spreadsheets keep zeros, and without the
   * apostrophe that does the same.
   */
  static String content(String raw) {
    String text = trimmed(raw);
    if (text.startsWith("=\"")) {
      return trimmed(ExcelCells.meant(text));
    }
    return text.startsWith("'") && Numbers.isNumber(text.substring(1)) ? text.substring(1) : text;
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

  /** White space, a space that does not break, or a byte order mark. */
  private static boolean isBlank(char c) {
    return Character.isWhitespace(c) || c == '\u00A0' || c == '\uFEFF';
  }
}

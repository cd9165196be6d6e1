package coldround.sheet;

import java.util.regex.Pattern;

/** How far a piece of text looks like one whole cell rather than half of one or two of them. */
final class CellTypes {

  private static final double CERTAIN = 1;
  private static final double LIKELY = 0.9;
  private static final double TEXT = 0.75;
  private static final double ODD = 0.1;

  private static final Pattern NUMBER =
      Pattern.compile(
          "[<>~]?=?\\s?[-+]?\\p{Sc}?\\s?[-+]?(\\d{1,3}([,. ' ]\\d{3})+|\\d+)?([.,]\\d+)?([eE][-+]?\\d+)?\\s?(%|\\p{Sc})?");
  private static final Pattern DATE =
      Pattern.compile(
          "\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4}([ T]\\d{1,2}:\\d{2}(:\\d{2}([.,]\\d+)?)?\\s?([AaPp][Mm]|Z|[-+]\\d{2}:?\\d{2})?)?"
              + "|\\d{1,2}:\\d{2}(:\\d{2}([.,]\\d+)?)?\\s?([AaPp][Mm])?|\\d{1,2}[- ]\\p{L}{3,9}[- ]\\d{2,4}");
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\d_\\-./#&+()'’@:°%\\[\\]=*?!$]+");

  private CellTypes() {}

  static double likeness(String cell) {
    String trimmed = cell.strip();
    if (trimmed.isEmpty() || isNumber(trimmed) || DATE.matcher(trimmed).matches()) {
      return CERTAIN;
    }
    if (WORD.matcher(trimmed).matches()) {
      return LIKELY;
    }
    return isOdd(trimmed) ? ODD : TEXT;
  }

  static boolean isNumber(String text) {
    return text.length() < 40 && hasDigit(text) && NUMBER.matcher(text).matches();
  }

  private static boolean hasDigit(String text) {
    return text.chars().anyMatch(Character::isDigit);
  }

  /** Holds what separates or wraps cells, or begins or ends in the middle of something. */
  private static boolean isOdd(String text) {
    char last = text.charAt(text.length() - 1);
    return text.indexOf(';') >= 0
        || text.indexOf('\t') >= 0
        || text.indexOf('|') >= 0
        || text.charAt(0) == '"'
        || last == '"'
        || text.charAt(0) == ','
        || last == ',';
  }
}

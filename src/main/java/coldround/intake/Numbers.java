package coldround.intake;

/** Numbers as they stand in cells. */
final class Numbers {

  private Numbers() {}

  /** Digits with one point at most, a sign and an exponent allowed; nothing else. */
  static boolean isNumber(String text) {
    boolean digit = false;
    boolean point = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9') {
        digit = true;
      } else if (c == '.' && !point) {
        point = true;
      } else if ((c == 'e' || c == 'E') && digit) {
        return isExponent(text, i + 1);
      } else if (i > 0 || (c != '-' && c != '+')) {
        return false;
      }
    }
    return digit;
  }

  private static boolean isExponent(String text, int start) {
    boolean signed = start < text.length() && "+-".indexOf(text.charAt(start)) >= 0;
    int from = signed ? start + 1 : start;
    for (int i = from; i < text.length(); i++) {
      if (text.charAt(i) < '0' || text.charAt(i) > '9') {
        return false;
      }
    }
    return from < text.length();
  }

  /**
   * @param decimalSign point or comma
   * @return NaN for a text that is no finite number
   */
  static double parse(String text, char decimalSign) {
    String plain = text.indexOf('\u2212') < 0 ? text : text.replace('\u2212', '-');
    if (decimalSign == ',') {
      plain = plain.indexOf('.') >= 0 ? "" : plain.replace(',', '.');
    }
    if (!isNumber(plain)) {
      return Double.NaN;
    }
    double value = Double.parseDouble(plain);
    return Double.isFinite(value) ? value + 0.0 : Double.NaN;
  }

  /** Why it is none, for its writer. */
  static String refusal(String text, char decimalSign, String example) {
    String shown = "'" + RowProblem.shown(text) + "' is not a number";
    if (text.matches("[+-]?[0-9.,\u00A0' ]+")) {
      String sign = decimalSign == '.' ? "a point" : "a comma";
      return shown
          + "; decimals are written with "
          + sign
          + " and thousands without any sign. Write it so, or name a profile that reads it.";
    }
    return shown + "; write one such as " + example + ".";
  }
}

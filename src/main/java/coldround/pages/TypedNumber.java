package coldround.pages;

import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.regex.Pattern;

/** Numbers as people type them, with the decimal sign of their language or a plain point. */
public final class TypedNumber {

  private TypedNumber() {}

  /**
   * The same with a decimal point and nothing between the thousands; what is no number stays as it
   * was typed.
   */
  public static String plain(String typed, Locale language) {
    String text = typed.strip().replaceAll("[\\s\\u00a0\\u202f]", "").replace('\u2212', '-');
    char decimal = decimal(language);
    char thousands = decimal == ',' ? '.' : ',';
    if (grouped(thousands, decimal).matcher(text).matches()) {
      text = text.replace(String.valueOf(thousands), "");
    }
    boolean one = text.indexOf(',') >= 0 && text.indexOf(',') == text.lastIndexOf(',');
    return one && text.indexOf('.') < 0 ? text.replace(',', '.') : numberOr(text, typed);
  }

  private static char decimal(Locale language) {
    return DecimalFormatSymbols.getInstance(language).getDecimalSeparator() == ',' ? ',' : '.';
  }

  /** A plain number as a field shows it, so that it is read back as what it is. */
  static String written(String plain, Locale language) {
    return plain.replace('.', decimal(language));
  }

  private static String numberOr(String text, String typed) {
    return text.matches("[+-]?\\d*\\.?\\d*") ? text : typed.strip();
  }

  // 1,234 and 1,234,567.8 but not 0,123: nobody writes thousands that begin with nothing
  private static Pattern grouped(char thousands, char decimal) {
    return Pattern.compile(
        "[+-]?[1-9]\\d{0,2}(?:\\%c\\d{3})+(?:\\%c\\d*)?".formatted(thousands, decimal));
  }
}

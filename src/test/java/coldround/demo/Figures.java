package coldround.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as they are written down in the field: no more digits than the instrument shows. */
final class Figures {

  private Figures() {}

  static String whole(double value) {
    return rounded(value, 0);
  }

  static String amps(double value) {
    return rounded(value, value < 3 ? 2 : 1);
  }

  static String rounded(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** Nameplate figures: without needless zeros. */
  static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  static String fahrenheit(double celsius) {
    return whole(celsius * 1.8 + 32);
  }
}

package coldround.http;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;

/** A measured value as answers carry it: {"value": 148, "unit": "psig"}. */
public record Measured(BigDecimal value, String unit) {

  // beyond what any gauge resolves, short of the noise of binary fractions
  private static final MathContext DIGITS = new MathContext(7);

  /** In the units of the system asked for; null stays null. */
  public static Measured of(Quantity quantity, MeasureSystem system) {
    return quantity == null ? null : asGiven(quantity.in(system));
  }

  /** In the unit it was given in. */
  public static Measured asGiven(Quantity quantity) {
    return new Measured(number(quantity.value()), quantity.measure().code());
  }

  /** Seven digits, without needless zeros. */
  public static BigDecimal number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}

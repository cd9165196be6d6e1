package coldround.intake;

import coldround.quantity.Atmosphere;
import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import java.math.BigDecimal;
import java.math.MathContext;

/** Least and greatest value of a column, in the measure a file uses. */
record Limits(double least, double greatest) {

  private static final MathContext SHOWN = new MathContext(5);
  private static final double ROUNDING = 1e-9;

  /** Limits of a table row converted to another measure of the same kind. */
  static Limits of(Column column, Measure measure) {
    return new Limits(
        converted(of(column.least(), Double.NEGATIVE_INFINITY), column.measure(), measure),
        converted(of(column.greatest(), Double.POSITIVE_INFINITY), column.measure(), measure));
  }

  /**
   * @throws IllegalArgumentException for a cell of the table that is no number
   */
  static double of(String cell, double none) {
    if (cell.isEmpty()) {
      return none;
    }
    double value = Numbers.parse(cell, '.');
    if (Double.isNaN(value)) {
      throw new IllegalArgumentException("the limit '" + cell + "' is not a number");
    }
    return value;
  }

  private static double converted(double limit, Measure from, Measure to) {
    if (from.equals(to) || Double.isInfinite(limit)) {
      return limit;
    }
    return to.fromBase(from.toBase(limit) + air(from) - air(to));
  }

  /** Limits are no readings: between gauge and absolute the air at sea level is close enough. */
  private static double air(Measure measure) {
    return measure.dimension() == Dimension.PRESSURE_GAUGE ? Atmosphere.SEA_LEVEL_KPA : 0;
  }

  boolean hold(double value) {
    double slack = ROUNDING * Math.max(1, Math.abs(value));
    return value >= least - slack && value <= greatest + slack;
  }

  String refusal(String text, Measure measure) {
    return refusal(text, least, greatest, " " + measure);
  }

  static String refusal(String text, double least, double greatest, String unit) {
    String bounds =
        Double.isInfinite(greatest)
            ? "at least " + shown(least)
            : Double.isInfinite(least)
                ? "at most " + shown(greatest)
                : "from " + shown(least) + " to " + shown(greatest);
    return "'%s' is out of range; a value here is %s%s. Mend the number or the unit of measure."
        .formatted(RowProblem.shown(text), bounds, unit);
  }

  private static String shown(double limit) {
    BigDecimal rounded = new BigDecimal(limit).round(SHOWN).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.toBigInteger().toString() : rounded.toPlainString();
  }
}

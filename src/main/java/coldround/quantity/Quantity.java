package coldround.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A measured value with its unit of measure, kept as it was given so that an export returns what
 * was read.
 */
public record Quantity(double value, Measure measure) {

  /**
   * @throws IllegalArgumentException for a value that is not a finite number
   */
  public Quantity {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a measured value must be a finite number, not " + value);
    }
  }

  public static Quantity of(double value, String measure) {
    return new Quantity(value, Measure.of(measure));
  }

  /** In degC, K, kPa (gauge stays gauge), kg, A, V, %, d or km. */
  public double base() {
    return measure.toBase(value);
  }

  /**
   * Absolute pressure in kPa.
   *
   * @param atmosphereKpa air pressure of the place, which gauge readings are over
   */
  public double pressureKpa(double atmosphereKpa) {
    return switch (measure.dimension()) {
      case PRESSURE_ABSOLUTE -> base();
      case PRESSURE_GAUGE -> base() + atmosphereKpa;
      default -> throw new IllegalStateException(measure + " is no pressure");
    };
  }

  /**
   * @throws IllegalArgumentException when the dimensions differ
   */
  public Quantity to(Measure other) {
    if (other.equals(measure)) {
      return this;
    }
    if (other.dimension() != measure.dimension()) {
      throw new IllegalArgumentException(measure + " cannot be told in " + other);
    }
    return new Quantity(other.fromBase(base()), other);
  }

  /** The same value in the units of the system asked for. */
  public Quantity in(MeasureSystem system) {
    return to(system.measureFor(measure));
  }

  /** Rounded half up to the decimals usual for the measure. */
  public BigDecimal rounded() {
    return BigDecimal.valueOf(value).setScale(measure.decimals(), RoundingMode.HALF_UP);
  }

  /** For a person: "148 psig". */
  @Override
  public String toString() {
    String number = rounded().toPlainString();
    return measure.label().isEmpty() ? number : number + " " + measure.label();
  }
}

package coldround.quantity;

import static javax.measure.MetricPrefix.KILO;

import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import tech.units.indriya.unit.Units;

/**
 * A unit of measure as written in files and answers, with its conversion to the unit used inside:
 * degC, K, kPa, kg, A, V, %, %/a, d, km. Conversion is by JSR 385 (indriya).
 */
public final class Measure {

  private static final Map<String, Measure> KNOWN = new LinkedHashMap<>();

  // exact by definition: pound 0.45359237 kg, inch 0.0254 m, standard gravity 9.80665 m/s2 (NIST SP
  // 811)
  private static final double KG_PER_LB = 0.45359237;
  private static final double KPA_PER_PSI = KG_PER_LB * 9.80665 / (0.0254 * 0.0254) / 1000;

  public static final Measure DEG_C =
      linear("degC", "°C", 1, Dimension.TEMPERATURE, Units.CELSIUS, Units.CELSIUS);
  public static final Measure DEG_F =
      linear(
          "degF",
          "°F",
          1,
          Dimension.TEMPERATURE,
          Units.CELSIUS.shift(-32 / 1.8).divide(1.8),
          Units.CELSIUS);
  public static final Measure KELVIN =
      linear("K", "K", 1, Dimension.TEMPERATURE, Units.KELVIN, Units.CELSIUS);
  public static final Measure DELTA_K =
      linear("deltaK", "K", 1, Dimension.TEMPERATURE_DIFFERENCE, Units.KELVIN, Units.KELVIN);
  public static final Measure DELTA_F =
      linear(
          "deltaF",
          "°F",
          1,
          Dimension.TEMPERATURE_DIFFERENCE,
          Units.KELVIN.divide(1.8),
          Units.KELVIN);
  public static final Measure DELTA_K_PER_DAY = rise("deltaK/d", "K a day", Units.KELVIN);
  public static final Measure DELTA_F_PER_DAY =
      rise("deltaF/d", "°F a day", Units.KELVIN.divide(1.8));
  public static final Measure KPA = pressure("kPa", "kPa abs", 0, Dimension.PRESSURE_ABSOLUTE, 1);
  public static final Measure PSIA =
      pressure("psia", "psia", 0, Dimension.PRESSURE_ABSOLUTE, KPA_PER_PSI);
  public static final Measure BAR = pressure("bar", "bar abs", 2, Dimension.PRESSURE_ABSOLUTE, 100);
  public static final Measure KPAG = pressure("kPag", "kPag", 0, Dimension.PRESSURE_GAUGE, 1);
  public static final Measure PSIG =
      pressure("psig", "psig", 0, Dimension.PRESSURE_GAUGE, KPA_PER_PSI);
  public static final Measure BARG = pressure("barg", "barg", 2, Dimension.PRESSURE_GAUGE, 100);
  public static final Measure DELTA_KPA =
      pressure("deltaKPa", "kPa", 0, Dimension.PRESSURE_DIFFERENCE, 1);
  public static final Measure DELTA_PSI =
      pressure("deltaPsi", "psi", 0, Dimension.PRESSURE_DIFFERENCE, KPA_PER_PSI);
  public static final Measure KG =
      linear("kg", "kg", 2, Dimension.MASS, Units.KILOGRAM, Units.KILOGRAM);
  public static final Measure GRAM =
      linear("g", "g", 0, Dimension.MASS, Units.GRAM, Units.KILOGRAM);
  public static final Measure POUND =
      linear("lb", "lb", 1, Dimension.MASS, Units.KILOGRAM.multiply(KG_PER_LB), Units.KILOGRAM);
  public static final Measure OUNCE =
      linear(
          "oz", "oz", 0, Dimension.MASS, Units.KILOGRAM.multiply(KG_PER_LB / 16), Units.KILOGRAM);
  public static final Measure AMPERE =
      linear("A", "A", 2, Dimension.CURRENT, Units.AMPERE, Units.AMPERE);
  public static final Measure VOLT = linear("V", "V", 0, Dimension.VOLTAGE, Units.VOLT, Units.VOLT);
  public static final Measure PERCENT =
      linear("%", "%", 1, Dimension.SHARE, Units.PERCENT, Units.PERCENT);
  public static final Measure PERCENT_PER_YEAR =
      linear("%/a", "% a year", 1, Dimension.SHARE_PER_YEAR, Units.PERCENT, Units.PERCENT);
  public static final Measure YEAR =
      linear("a", "years", 1, Dimension.TIME, Units.DAY.multiply(365.25), Units.DAY);
  public static final Measure DAY = linear("d", "days", 0, Dimension.TIME, Units.DAY, Units.DAY);
  public static final Measure HOUR = linear("h", "h", 1, Dimension.TIME, Units.HOUR, Units.DAY);
  public static final Measure MINUTE =
      linear("min", "min", 0, Dimension.TIME, Units.MINUTE, Units.DAY);
  public static final Measure KILOMETRE =
      linear("km", "km", 1, Dimension.LENGTH, KILO(Units.METRE), KILO(Units.METRE));
  public static final Measure METRE =
      linear("m", "m", 0, Dimension.LENGTH, Units.METRE, KILO(Units.METRE));
  public static final Measure FOOT =
      linear("ft", "ft", 0, Dimension.LENGTH, Units.METRE.multiply(0.3048), KILO(Units.METRE));
  public static final Measure MILE =
      linear("mi", "mi", 1, Dimension.LENGTH, Units.METRE.multiply(1609.344), KILO(Units.METRE));
  public static final Measure PER_YEAR =
      linear("1/a", "a year", 2, Dimension.RATE, Units.PERCENT, Units.PERCENT);
  public static final Measure COUNT =
      linear("1", "", 0, Dimension.COUNT, Units.PERCENT, Units.PERCENT);

  private final String code;
  private final String label;
  private final int decimals;
  private final Dimension dimension;
  private final double zero;
  private final double factor;

  private Measure(
      String code,
      String label,
      int decimals,
      Dimension dimension,
      UnitConverter toBase,
      UnitConverter fromBase) {
    // asked of the converter once: it computes with BigDecimal, a thousand times slower
    // rounded, for its scales are shifted by fractions that are not whole in binary
    this.zero = Math.rint(fromBase.convert(0.0) * 1e9) / 1e9;
    // far from zero, where the scale's offset costs no digits
    this.factor = zero == 0 ? toBase.convert(1.0) : toBase.convert(zero + 1800) / 1800;
    this.code = code;
    this.label = label;
    this.decimals = decimals;
    this.dimension = dimension;
  }

  private static <Q extends javax.measure.Quantity<Q>> Measure linear(
      String code, String label, int decimals, Dimension dimension, Unit<Q> unit, Unit<Q> base) {
    Measure measure =
        new Measure(
            code, label, decimals, dimension, unit.getConverterTo(base), base.getConverterTo(unit));
    KNOWN.put(code, measure);
    return measure;
  }

  private static Measure rise(
      String code, String label, Unit<javax.measure.quantity.Temperature> unit) {
    return linear(code, label, 3, Dimension.TEMPERATURE_RISE, unit, Units.KELVIN);
  }

  private static Measure pressure(
      String code, String label, int decimals, Dimension dimension, double kpa) {
    Unit<javax.measure.quantity.Pressure> base = KILO(Units.PASCAL);
    return linear(code, label, decimals, dimension, base.multiply(kpa), base);
  }

  /** All that have a name of their own; a currency has its ISO 4217 code instead. */
  public static List<Measure> all() {
    return List.copyOf(KNOWN.values());
  }

  /** The measure of that code, a currency by its ISO 4217 code included. */
  public static Optional<Measure> find(String code) {
    Measure measure = KNOWN.get(code);
    return measure != null ? Optional.of(measure) : currency(code);
  }

  /**
   * @throws IllegalArgumentException for a code that is no measure
   */
  public static Measure of(String code) {
    return find(code)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "'" + code + "' is no unit of measure; known are " + KNOWN.keySet()));
  }

  private static Optional<Measure> currency(String code) {
    if (code == null || !code.matches("[A-Z]{3}")) {
      return Optional.empty();
    }
    try {
      Currency.getInstance(code);
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
    UnitConverter same = Units.PERCENT.getConverterTo(Units.PERCENT);
    return Optional.of(new Measure(code, code, 0, Dimension.MONEY, same, same));
  }

  public String code() {
    return code;
  }

  /** How the measure is written behind a number for a person to read. */
  public String label() {
    return label;
  }

  /** Decimals that make sense to a reader of a value in this measure. */
  public int decimals() {
    return decimals;
  }

  public Dimension dimension() {
    return dimension;
  }

  /** From this measure to the one used inside for its dimension. */
  public double toBase(double value) {
    return (value - zero) * factor;
  }

  /** From the measure used inside to this one. */
  public double fromBase(double value) {
    return value / factor + zero;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Measure that && code.equals(that.code);
  }

  @Override
  public int hashCode() {
    return Objects.hashCode(code);
  }

  @Override
  public String toString() {
    return code;
  }
}

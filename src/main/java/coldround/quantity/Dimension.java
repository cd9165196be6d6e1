package coldround.quantity;

/** What a measure measures. Gauge and absolute pressure differ by the air pressure of the place. */
public enum Dimension {
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  /** Difference of temperature per time. */
  TEMPERATURE_RISE,
  PRESSURE_ABSOLUTE,
  PRESSURE_GAUGE,
  PRESSURE_DIFFERENCE,
  MASS,
  CURRENT,
  VOLTAGE,
  SHARE,
  SHARE_PER_YEAR,
  TIME,
  LENGTH,
  MONEY,
  /** Expected events per year. */
  RATE,
  COUNT;

  /** True for both kinds of pressure: a gauge reading may stand where a pressure is asked for. */
  public boolean isPressure() {
    return this == PRESSURE_ABSOLUTE || this == PRESSURE_GAUGE;
  }

  /** True when a value of the other dimension may be given for this one. */
  public boolean accepts(Dimension other) {
    return this == other || (isPressure() && other.isPressure());
  }
}

package coldround.quantity;

import java.util.Map;

/** The units in which answers are given. */
public enum MeasureSystem {
  US(
      Map.of(
          Dimension.TEMPERATURE, Measure.DEG_F,
          Dimension.TEMPERATURE_DIFFERENCE, Measure.DELTA_F,
          Dimension.TEMPERATURE_RISE, Measure.DELTA_F_PER_DAY,
          Dimension.PRESSURE_ABSOLUTE, Measure.PSIA,
          Dimension.PRESSURE_GAUGE, Measure.PSIG,
          Dimension.PRESSURE_DIFFERENCE, Measure.DELTA_PSI,
          Dimension.MASS, Measure.POUND,
          Dimension.LENGTH, Measure.MILE)),
  SI(
      Map.of(
          Dimension.TEMPERATURE, Measure.DEG_C,
          Dimension.TEMPERATURE_DIFFERENCE, Measure.DELTA_K,
          Dimension.TEMPERATURE_RISE, Measure.DELTA_K_PER_DAY,
          Dimension.PRESSURE_ABSOLUTE, Measure.KPA,
          Dimension.PRESSURE_GAUGE, Measure.KPAG,
          Dimension.PRESSURE_DIFFERENCE, Measure.DELTA_KPA,
          Dimension.MASS, Measure.KG,
          Dimension.LENGTH, Measure.KILOMETRE));

  private final Map<Dimension, Measure> measures;

  MeasureSystem(Map<Dimension, Measure> measures) {
    this.measures = measures;
  }

  /** The measure of this system for the dimension, or the given one where the system has none. */
  public Measure measureFor(Measure given) {
    return measures.getOrDefault(given.dimension(), given);
  }
}

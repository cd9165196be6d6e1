package coldround.refrigerant;

import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import java.util.OptionalDouble;

/**
 * Saturation pressure of one refrigerant over temperature and back: bubble for subcooling, dew for
 * superheat, midpoint of both at one pressure for splits. Pressures are kPa absolute. Nothing is
 * extrapolated; outside the table every method throws {@link OutsideTable}.
 */
public final class SaturationCurve {

  // so close to the critical point that the table's end is nature's and not the table's
  private static final double NEAR_CRITICAL_K = 3;

  // nobody reads the digits of what is nonsense anyway
  private static final double TOLD_IN_FULL = 1e6;

  private final String designation;
  private final String quality;
  private final double uncertaintyK;
  private final OptionalDouble criticalC;
  private final Source source;
  private final VapourPressureLine bubble;
  private final VapourPressureLine dew;
  private final VapourPressureLine midpoint;

  SaturationCurve(
      String designation,
      String quality,
      double uncertaintyK,
      OptionalDouble criticalC,
      Source source,
      VapourPressureLine bubble,
      VapourPressureLine dew) {
    this.designation = designation;
    this.quality = quality;
    this.uncertaintyK = uncertaintyK;
    this.criticalC = criticalC;
    this.source = source;
    this.bubble = bubble;
    this.dew = dew;
    this.midpoint = VapourPressureLine.midpoint(bubble, dew);
  }

  public double bubblePressureKpa(double temperatureC) {
    return pressure(bubble, temperatureC);
  }

  public double dewPressureKpa(double temperatureC) {
    return pressure(dew, temperatureC);
  }

  /** Pressure at which the mean of bubble and dew temperature is the given one. */
  public double midpointPressureKpa(double temperatureC) {
    return pressure(midpoint, temperatureC);
  }

  public double bubbleTemperatureC(double pressureKpa) {
    return temperature(bubble, pressureKpa);
  }

  public double dewTemperatureC(double pressureKpa) {
    return temperature(dew, pressureKpa);
  }

  /** Mean of bubble and dew temperature at the pressure. */
  public double midpointTemperatureC(double pressureKpa) {
    return temperature(midpoint, pressureKpa);
  }

  /** Temperatures of the nodes of the midpoint line, ascending, between which it is computed. */
  public double[] midpointNodesC() {
    return midpoint.nodesC();
  }

  /** Absolute pressures at the same nodes. */
  public double[] midpointNodesKpa() {
    return midpoint.nodesKpa();
  }

  /** Lowest temperature of the bubble and dew tables. */
  public double lowestC() {
    return bubble.lowestC();
  }

  /** Highest temperature of the bubble and dew tables. */
  public double highestC() {
    return bubble.highestC();
  }

  /** Reference for an equation of state; fitted where a pair of a blend was estimated. */
  public String quality() {
    return quality;
  }

  /** How far the curve may be off, whatever the reading's own error. */
  public double uncertaintyK() {
    return uncertaintyK;
  }

  public String designation() {
    return designation;
  }

  /** Row of scoring/saturation-sources.csv. */
  public Source source() {
    return source;
  }

  private double pressure(VapourPressureLine line, double temperatureC) {
    double kpa = line.pressureKpa(temperatureC);
    if (Double.isNaN(kpa)) {
      throw outside(line, temperatureC);
    }
    return kpa;
  }

  private double temperature(VapourPressureLine line, double pressureKpa) {
    double celsius = line.temperatureC(pressureKpa);
    if (Double.isNaN(celsius)) {
      throw outsidePressure(line, pressureKpa);
    }
    return celsius;
  }

  private OutsideTable outside(VapourPressureLine line, double temperatureC) {
    double lowest = line.lowestC();
    double highest = line.highestC();
    String range = both(lowest, Measure.DEG_C) + " to " + both(highest, Measure.DEG_C);
    String advice = temperatureC > highest ? tooHigh() : "";
    String message =
        "%s at %s: the saturation table runs from %s.%s Check the reading, its unit and the refrigerant."
            .formatted(designation, both(temperatureC, Measure.DEG_C), range, advice);
    return new OutsideTable(designation, lowest, highest, message);
  }

  private OutsideTable outsidePressure(VapourPressureLine line, double kpa) {
    double lowest = line.lowestKpa();
    double highest = line.highestKpa();
    String range = both(lowest, Measure.KPA) + " to " + both(highest, Measure.KPA);
    String advice = kpa > highest ? tooHigh() : "";
    String message =
        ("%s at %s: the saturation table runs from %s.%s Check the reading, its unit, whether it is"
                + " gauge or absolute, and the refrigerant.")
            .formatted(designation, both(kpa, Measure.KPA), range, advice);
    return new OutsideTable(designation, lowest, highest, message);
  }

  private String tooHigh() {
    if (criticalC.isEmpty() || criticalC.getAsDouble() - highestC() > NEAR_CRITICAL_K) {
      return "";
    }
    String critical = both(criticalC.getAsDouble(), Measure.DEG_C);
    return designation.equals("R-744")
        ? " Above its critical point at %s carbon dioxide does not condense and has no saturation temperature: read gas cooler pressure and outlet temperature each for itself."
            .formatted(critical)
        : " Above its critical point at %s it does not condense and has no saturation temperature."
            .formatted(critical);
  }

  private static String both(double value, Measure measure) {
    if (!(Math.abs(value) < TOLD_IN_FULL)) {
      return value + " " + measure.label();
    }
    Quantity given = new Quantity(value, measure);
    Measure us = measure.equals(Measure.DEG_C) ? Measure.DEG_F : Measure.PSIA;
    return given + " (" + given.to(us) + ")";
  }
}

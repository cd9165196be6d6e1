package coldround.scoring;

import coldround.refrigerant.OutsideTable;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.SaturationCurve;

/**
 * The refrigerant of a unit as far as the tables know it.
 *
 * @param written as in the equipment list
 * @param refrigerant null when unknown
 * @param curve null when there is none to trust
 */
record Gas(String written, Refrigerant refrigerant, SaturationCurve curve) {

  static final Gas NONE = new Gas("", null, null);

  /** What is between a pressure and a temperature of saturation. */
  enum Side {
    BUBBLE,
    DEW,
    MIDPOINT
  }

  /** NaN where there is no curve or the pressure lies outside it. */
  double temperatureC(Side side, double pressureKpa) {
    if (curve == null || Double.isNaN(pressureKpa)) {
      return Double.NaN;
    }
    try {
      return switch (side) {
        case BUBBLE -> curve.bubbleTemperatureC(pressureKpa);
        case DEW -> curve.dewTemperatureC(pressureKpa);
        case MIDPOINT -> curve.midpointTemperatureC(pressureKpa);
      };
    } catch (OutsideTable e) {
      return Double.NaN;
    }
  }

  /** Pressure at a midpoint temperature; NaN where there is no curve or it lies outside. */
  double pressureKpa(double temperatureC) {
    if (curve == null) {
      return Double.NaN;
    }
    try {
      return curve.midpointPressureKpa(temperatureC);
    } catch (OutsideTable e) {
      return Double.NaN;
    }
  }

  /** Why a pressure has no saturation temperature, in the words of the table. */
  String whyOutside(double pressureKpa) {
    try {
      curve.midpointTemperatureC(pressureKpa);
      return "";
    } catch (OutsideTable e) {
      return e.getMessage();
    }
  }
}

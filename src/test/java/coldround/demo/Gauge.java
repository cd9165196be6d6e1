package coldround.demo;

import coldround.quantity.Atmosphere;
import coldround.quantity.Measure;
import coldround.refrigerant.SaturationCurve;

/** A gauge on a unit: what it shows, in psig, when the refrigerant condenses or boils. */
record Gauge(SaturationCurve curve, double atmosphereKpa) {

  // below the critical temperature of every refrigerant of the story but CO2
  static final double HOTTEST_C = 69;

  static Gauge at(SaturationCurve curve, double elevationM) {
    return new Gauge(curve, Atmosphere.pressureKpa(elevationM));
  }

  double headPsig(double condensingC) {
    return psig(curve.midpointPressureKpa(condensingC));
  }

  double suctionPsig(double evaporatingC) {
    return psig(curve.dewPressureKpa(evaporatingC));
  }

  private double psig(double absoluteKpa) {
    return Measure.PSIG.fromBase(absoluteKpa - atmosphereKpa);
  }

  /** Condensing temperature, midpoint of bubble and dew, at which the gauge shows that pressure. */
  double condensingC(double psig) {
    return curve.midpointTemperatureC(Measure.PSIG.toBase(psig) + atmosphereKpa);
  }

  /** Temperature at which gas condensing there has all turned to liquid. */
  double bubbleC(double condensingC) {
    return curve.bubbleTemperatureC(curve.midpointPressureKpa(condensingC));
  }
}

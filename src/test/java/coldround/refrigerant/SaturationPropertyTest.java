package coldround.refrigerant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class SaturationPropertyTest {

  private static final List<SaturationCurve> CURVES =
      Tables.REFRIGERANTS.all().stream()
          .flatMap(r -> Tables.REFRIGERANTS.curve(r.designation()).stream())
          .toList();

  @Provide
  Arbitrary<SaturationCurve> curves() {
    return Arbitraries.of(CURVES);
  }

  private static double at(SaturationCurve curve, double share) {
    return curve.lowestC() + share * (curve.highestC() - curve.lowestC());
  }

  @Property
  void pressureAndBackIsTheSameTemperature(
      @ForAll("curves") SaturationCurve curve,
      @ForAll @DoubleRange(max = 1) @Scale(6) double share) {
    double celsius = at(curve, share);
    assertEquals(celsius, curve.bubbleTemperatureC(curve.bubblePressureKpa(celsius)), 1e-9);
    assertEquals(celsius, curve.dewTemperatureC(curve.dewPressureKpa(celsius)), 1e-9);
    double kpa = curve.dewPressureKpa(celsius);
    if (kpa > curve.bubblePressureKpa(curve.lowestC())) {
      double midpoint = curve.midpointTemperatureC(kpa);
      assertEquals(1, curve.midpointPressureKpa(midpoint) / kpa, 1e-9);
    }
  }

  @Property
  void warmerMeansMorePressure(
      @ForAll("curves") SaturationCurve curve,
      @ForAll @DoubleRange(max = 0.99) @Scale(6) double share,
      @ForAll @DoubleRange(min = 0.0001, max = 0.01) @Scale(6) double more) {
    double cold = at(curve, share);
    double warm = at(curve, share + more);
    assertTrue(curve.bubblePressureKpa(warm) > curve.bubblePressureKpa(cold));
    assertTrue(curve.dewPressureKpa(warm) > curve.dewPressureKpa(cold));
  }

  @Property
  void bubblePressureIsNeverBelowDewPressure(
      @ForAll("curves") SaturationCurve curve,
      @ForAll @DoubleRange(max = 1) @Scale(6) double share) {
    double celsius = at(curve, share);
    assertTrue(curve.bubblePressureKpa(celsius) >= curve.dewPressureKpa(celsius) * (1 - 1e-12));
  }

  @Property
  void theMidpointIsTheMeanOfBoth(
      @ForAll("curves") SaturationCurve curve,
      @ForAll @DoubleRange(max = 1) @Scale(6) double share) {
    double kpa = curve.dewPressureKpa(at(curve, share));
    if (kpa > curve.bubblePressureKpa(curve.lowestC())) {
      double mean = (curve.bubbleTemperatureC(kpa) + curve.dewTemperatureC(kpa)) / 2;
      assertEquals(mean, curve.midpointTemperatureC(kpa), 0.005);
    }
  }
}

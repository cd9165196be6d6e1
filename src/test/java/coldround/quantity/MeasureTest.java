package coldround.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasureTest {

  // NIST Special Publication 811, appendix B: exact factors, or exact by definition
  @ParameterizedTest
  @CsvSource({
    "212, degF, 100",
    "32, degF, 0",
    "-40, degF, -40",
    "273.15, K, 0",
    "18, deltaF, 10",
    "0.18, deltaF/d, 0.1",
    "1, psia, 6.894757293168361",
    "14.695948775513, psia, 101.325",
    "1, bar, 100",
    "2, kPag, 2",
    "1, lb, 0.45359237",
    "16, oz, 0.45359237",
    "1500, g, 1.5",
    "1, mi, 1.609344",
    "1000, ft, 0.3048",
    "2, a, 730.5",
    "36, h, 1.5",
    "90, min, 0.0625",
    "75, USD, 75",
    "12, %, 12"
  })
  void convertsToTheUnitUsedInside(double given, String code, double base) {
    Measure measure = Measure.of(code);
    assertEquals(base, measure.toBase(given), 1e-9);
    assertEquals(given, measure.fromBase(base), 1e-9);
  }

  // whole degrees Fahrenheit come back whole: no trace of binary fractions in an answer
  @ParameterizedTest
  @CsvSource({"95, 35", "212, 100", "32, 0", "-40, -40", "59, 15"})
  void fahrenheitIsConvertedWithoutATrace(double fahrenheit, double celsius) {
    assertEquals(celsius, Measure.DEG_F.toBase(fahrenheit));
    assertEquals(fahrenheit, Measure.DEG_F.fromBase(celsius));
  }

  @Test
  void gaugePressureIsOverTheAirPressureOfThePlace() {
    // 117.2 psig at sea level is 131.9 psia
    assertEquals(909.4, Quantity.of(117.2, "psig").pressureKpa(Atmosphere.SEA_LEVEL_KPA), 0.05);
    assertEquals(800, Quantity.of(8, "bar").pressureKpa(85), 1e-9);
  }

  // U.S. Standard Atmosphere 1976 / ICAO Doc 7488 table values
  @ParameterizedTest
  @CsvSource({"0, 101.325", "1000, 89.874", "2000, 79.495", "5000, 54.020"})
  void airPressureFallsWithElevation(double metres, double kpa) {
    assertEquals(kpa, Atmosphere.pressureKpa(metres), 0.003);
  }

  @Test
  void unknownMeasureIsRefusedWithTheKnownOnes() {
    String message =
        assertThrows(IllegalArgumentException.class, () -> Measure.of("psi?")).getMessage();
    assertTrue(message.contains("psig"), message);
  }

  @Test
  void aQuantityIsToldInTheReadersUnits() {
    Quantity quantity = Quantity.of(1020.43, "kPag");
    assertEquals("148 psig", quantity.in(MeasureSystem.US).toString());
    assertEquals("1020 kPag", quantity.in(MeasureSystem.SI).toString());
  }

  @Test
  void dimensionsDoNotMix() {
    assertThrows(IllegalArgumentException.class, () -> Quantity.of(1, "A").to(Measure.VOLT));
    assertThrows(IllegalArgumentException.class, () -> Quantity.of(Double.NaN, "A"));
  }
}

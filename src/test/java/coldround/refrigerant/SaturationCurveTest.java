package coldround.refrigerant;

import static coldround.refrigerant.Tables.REFRIGERANTS;
import static coldround.refrigerant.Tables.curve;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Atmosphere;
import coldround.quantity.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class SaturationCurveTest {

  private static double celsius(double degF) {
    return Quantity.of(degF, "degF").base();
  }

  private static double psig(double kpa) {
    return (kpa - Atmosphere.SEA_LEVEL_KPA) / Quantity.of(1, "psia").base();
  }

  // six temperatures a refrigerant that are no nodes of ours: CoolProp 8.0.0, computed every kelvin
  @ParameterizedTest
  @CsvFileSource(resources = "/refrigerant/saturation-off-grid.csv", numLinesToSkip = 1)
  void betweenNodesItAgreesWithTheReferenceEquations(
      String refrigerant, double celsius, double bubbleKpa, double dewKpa) {
    SaturationCurve curve = curve(refrigerant);
    assertEquals(celsius, curve.bubbleTemperatureC(bubbleKpa), 0.05);
    assertEquals(celsius, curve.dewTemperatureC(dewKpa), 0.05);
    assertEquals(1, curve.bubblePressureKpa(celsius) / bubbleKpa, 0.003);
    assertEquals(1, curve.dewPressureKpa(celsius) / dewKpa, 0.003);
  }

  @Test
  void everyRefrigerantButTwoHasACurve() {
    assertEquals(86, REFRIGERANTS.all().size());
    assertEquals(84, REFRIGERANTS.all().stream().filter(r -> has(r)).count());
    assertTrue(REFRIGERANTS.curve("R-403B").isEmpty());
    assertTrue(REFRIGERANTS.curve("R-413A").isEmpty());
    assertEquals("none", Tables.refrigerant("R-413A").curveQuality());
  }

  private static boolean has(Refrigerant refrigerant) {
    return REFRIGERANTS.curve(refrigerant.designation()).isPresent();
  }

  // handbook or public-chart gauge pressures; the last three from memory, so with a wider margin
  @ParameterizedTest
  @CsvSource({
    "R-22, 0, 24.0, 0.2",
    "R-22, 40, 68.6, 0.2",
    "R-22, 100, 195.9, 0.3",
    "R-134a, 0, 6.5, 0.2",
    "R-134a, 40, 35.0, 0.2",
    "R-134a, 100, 124.2, 0.3",
    "R-410A, 40, 118.8, 0.7",
    "R-410A, 100, 318.5, 1.6",
    "R-12, 100, 117.2, 0.5",
    "R-502, 100, 216.2, 2.5",
    "R-507A, 100, 241.8, 1.5"
  })
  void printedGaugePressuresAreMet(String refrigerant, double degF, double psig, double withinPsi) {
    double midpoint = curve(refrigerant).midpointPressureKpa(celsius(degF));
    assertEquals(psig, psig(midpoint), withinPsi);
  }

  // public chart of R-404A: 85 F is 189.5 psig bubble and 187.5 psig dew, 0 F is 33.7 psig
  @Test
  void bubbleAndDewOfABlendAreNotSwapped() {
    SaturationCurve curve = curve("R-404A");
    assertEquals(189.5, psig(curve.bubblePressureKpa(celsius(85))), 1);
    assertEquals(187.5, psig(curve.dewPressureKpa(celsius(85))), 1);
    assertEquals(33.7, psig(curve.bubblePressureKpa(celsius(0))), 0.7);
  }

  // normal boiling points and glide: ASHRAE Handbook Fundamentals 2017 ch. 29 tables 1 and 2
  @ParameterizedTest
  @CsvSource({
    "R-12, -29.8, -29.8",
    "R-22, -40.8, -40.8",
    "R-134a, -26.1, -26.1",
    "R-404A, -46.2, -45.5",
    "R-407C, -43.6, -36.6",
    "R-717, -33.3, -33.3"
  })
  void boilingPointsAtOneAtmosphereAreTheHandbooks(
      String refrigerant, double bubbleC, double dewC) {
    SaturationCurve curve = curve(refrigerant);
    assertEquals(bubbleC, curve.bubbleTemperatureC(Atmosphere.SEA_LEVEL_KPA), 0.3);
    assertEquals(dewC, curve.dewTemperatureC(Atmosphere.SEA_LEVEL_KPA), 0.3);
  }

  // glide at constant pressure, computed with CoolProp 8 at the dew temperature given
  @ParameterizedTest
  @CsvSource({
    "R-404A, 40, 0.3",
    "R-407A, 40, 4.5",
    "R-448A, 40, 5.2",
    "R-448A, -7, 6.2",
    "R-454C, 40, 7.6",
    "R-455A, 40, 11.2",
    "R-409A, 40, 6.7"
  })
  void glideIsThatOfTheBlend(String refrigerant, double dewC, double glideK) {
    SaturationCurve curve = curve(refrigerant);
    double kpa = curve.dewPressureKpa(dewC);
    double bubbleC = curve.bubbleTemperatureC(kpa);
    assertEquals(glideK, dewC - bubbleC, 0.06);
    assertEquals((dewC + bubbleC) / 2, curve.midpointTemperatureC(kpa), 0.001);
  }

  @Test
  void estimatedCurvesSaySo() {
    assertEquals("fitted", curve("R-502").quality());
    assertEquals(0.7, curve("R-502").uncertaintyK());
    assertEquals("reference", curve("R-12").quality());
    assertTrue(curve("R-502").source().citation().contains("fitted"));
  }

  @Test
  void outsideTheTableIsAnErrorThatSaysWhatToCheck() {
    SaturationCurve curve = curve("R-134a");
    OutsideTable cold = assertThrows(OutsideTable.class, () -> curve.dewPressureKpa(-50.1));
    assertEquals(-50, cold.lowest());
    assertTrue(cold.getMessage().contains("-50.0 °C (-58.0 °F) to 75.0 °C (167.0 °F)"));
    assertTrue(cold.getMessage().contains("Check the reading, its unit"), cold.getMessage());
    OutsideTable high = assertThrows(OutsideTable.class, () -> curve.bubbleTemperatureC(2500));
    assertTrue(high.getMessage().contains("gauge or absolute"), high.getMessage());
    assertThrows(OutsideTable.class, () -> curve.bubbleTemperatureC(-5));
    assertThrows(OutsideTable.class, () -> curve.midpointTemperatureC(Double.NaN));
    assertThrows(OutsideTable.class, () -> curve.bubblePressureKpa(Double.NaN));
  }

  @Test
  void carbonDioxideAboveThirtyDegreesHasNoSaturationTemperature() {
    SaturationCurve curve = curve("R-744");
    assertEquals(30, curve.highestC());
    OutsideTable warm = assertThrows(OutsideTable.class, () -> curve.bubblePressureKpa(35));
    assertTrue(warm.getMessage().contains("does not condense"), warm.getMessage());
    OutsideTable high = assertThrows(OutsideTable.class, () -> curve.midpointTemperatureC(9000));
    assertTrue(high.getMessage().contains("gas cooler"), high.getMessage());
  }

  @Test
  void theEndsOfTheTableBelongToIt() {
    for (Refrigerant refrigerant : REFRIGERANTS.all()) {
      REFRIGERANTS
          .curve(refrigerant.designation())
          .ifPresent(
              curve -> {
                for (double end : new double[] {curve.lowestC(), curve.highestC()}) {
                  double there = curve.bubbleTemperatureC(curve.bubblePressureKpa(end));
                  assertEquals(end, there, 1e-9, refrigerant.designation());
                }
              });
    }
  }
}

package coldround.refrigerant;

import static coldround.refrigerant.Tables.refrigerant;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.table.RuleTables;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeakInspectionsTest {

  private static final LeakInspections INSPECTIONS = load();
  private static final LocalDate DAY = LocalDate.of(2026, 7, 1);

  private static LeakInspections load() {
    RuleTables tables = new RuleTables("scoring", null);
    LeakInspections read = LeakInspections.load(tables);
    tables.check();
    return read;
  }

  private static InspectionDuty inUnion(String gas, String kg, boolean detector, boolean hermetic) {
    ChargedCircuit circuit =
        new ChargedCircuit(
            refrigerant(gas),
            new BigDecimal(kg),
            "commercial-refrigeration",
            "DE",
            detector,
            hermetic);
    return INSPECTIONS.duty(circuit, false, DAY);
  }

  private static void assertMonths(Integer months, InspectionDuty duty) {
    assertEquals(
        months == null ? 0 : months,
        duty.everyMonths().orElse(0),
        duty.reason().text(MeasureSystem.SI));
  }

  // Regulation (EU) 2024/573 art. 5: from 5, 50 and 500 t CO2e. R-404A (3922): 1.27, 12.75 and
  // 127.49 kg; R-134a (1430): 3.50, 34.97 and 349.65 kg; R-410A (2088): 2.39, 23.95, 239.46 kg, as
  // a government table rounds them; the exact bounds are 5000 / GWP and so on
  @ParameterizedTest
  @CsvSource({
    "R-404A, 1.27, , ",
    "R-404A, 1.275, 12, 24",
    "R-404A, 12.74, 12, 24",
    "R-404A, 12.75, 6, 12",
    "R-404A, 127.48, 6, 12",
    "R-404A, 127.49, 3, 6",
    "R-134a, 3.49, , ",
    "R-134a, 3.50, 12, 24",
    "R-134a, 34.96, 12, 24",
    "R-134a, 34.97, 6, 12",
    "R-134a, 349.65, 6, 12",
    "R-134a, 349.66, 3, 6",
    "R-410A, 2.39, , ",
    "R-410A, 2.395, 12, 24",
    "R-410A, 23.95, 6, 12",
    "R-410A, 239.47, 3, 6",
    "R-32, 7.407, , ",
    "R-32, 7.408, 12, 24"
  })
  void unionChecksGoByTonnesOfCarbonDioxide(String gas, String kg, Integer without, Integer with) {
    assertMonths(without, inUnion(gas, kg, false, false));
    assertMonths(with, inUnion(gas, kg, true, false));
  }

  // art. 5 for unsaturated gases, by mass: from 1, 10 and 100 kg, the lower value included
  @ParameterizedTest
  @CsvSource({"0.999, , ", "1, 12, 24", "9.999, 12, 24", "10, 6, 12", "100, 3, 6"})
  void unionChecksOfOlefinsGoByMass(String kg, Integer without, Integer with) {
    assertMonths(without, inUnion("R-1234yf", kg, false, false));
    assertMonths(with, inUnion("R-1234yf", kg, true, false));
  }

  // Regulation (EC) 1005/2009 art. 23 for HCFC: from 3, 30 and 300 kg
  @ParameterizedTest
  @CsvSource({"2.999, ", "3, 12", "29.99, 12", "30, 6", "300, 3"})
  void unionChecksOfHcfcGoByMass(String kg, Integer months) {
    assertMonths(months, inUnion("R-22", kg, false, false));
  }

  @Test
  void fromFiveHundredTonnesADetectorIsMandatory() {
    assertTrue(inUnion("R-404A", "130", true, false).detectorMandatory());
    assertFalse(inUnion("R-404A", "120", true, false).detectorMandatory());
  }

  // below 10 t CO2e, 2 kg HFO or 6 kg HCFC sealed and labelled units are exempt
  @ParameterizedTest
  @CsvSource({
    "R-404A, 2.5, ",
    "R-404A, 2.55, 12",
    "R-1234yf, 1.9, ",
    "R-1234yf, 2, 12",
    "R-22, 5.9, ",
    "R-22, 6, 12"
  })
  void sealedUnitsAreExemptUpToALimit(String gas, String kg, Integer months) {
    InspectionDuty duty = inUnion(gas, kg, false, true);
    assertMonths(months, duty);
    assertEquals(months == null, duty.reason().code().equals("leak-inspection-exempt"));
  }

  @Test
  void naturalGasesAndOtherPlacesHaveNoRule() {
    assertEquals("no-leak-inspection", inUnion("R-744", "500", false, false).reason().code());
    ChargedCircuit elsewhere =
        ChargedCircuit.of(
            refrigerant("R-404A"), new BigDecimal("500"), "commercial-refrigeration", "NZ");
    assertEquals("no-leak-inspection", INSPECTIONS.duty(elsewhere, true, DAY).reason().code());
  }

  // 40 CFR 82.157(g) and 84.106(g), from memory: after exceeding, quarterly from 500 lb for
  // commercial and process refrigeration, else yearly
  @ParameterizedTest
  @CsvSource({
    "R-22, 49, commercial-refrigeration, ",
    "R-22, 50, commercial-refrigeration, 12",
    "R-22, 499.999, commercial-refrigeration, 12",
    "R-22, 500, commercial-refrigeration, 3",
    "R-22, 500, industrial-process-refrigeration, 3",
    "R-22, 600, comfort-cooling, 12",
    "R-404A, 14, commercial-refrigeration, ",
    "R-404A, 15, commercial-refrigeration, 12",
    "R-404A, 500, commercial-refrigeration, 3",
    "R-410A, 600, comfort-cooling, 12",
    "R-410A, 600, light-commercial-air-conditioning, ",
    "R-717, 6000, industrial-process-refrigeration, "
  })
  void inspectionsInTheUnitedStatesFollowAnExceededRate(
      String gas, String pounds, String category, Integer months) {
    ChargedCircuit circuit =
        ChargedCircuit.of(
            refrigerant(gas),
            ExactMass.kg(new BigDecimal(pounds), Measure.POUND),
            category,
            "US-TX");
    assertMonths(months, INSPECTIONS.duty(circuit, true, DAY));
    assertMonths(null, INSPECTIONS.duty(circuit, false, DAY));
  }

  @Test
  void theHydrofluorocarbonRuleStartsIn2026AndADetectorStandsIn() {
    ChargedCircuit circuit =
        ChargedCircuit.of(
            refrigerant("R-404A"), new BigDecimal("300"), "commercial-refrigeration", "US");
    assertMonths(null, INSPECTIONS.duty(circuit, true, LocalDate.of(2025, 12, 31)));
    assertMonths(3, INSPECTIONS.duty(circuit, true, LocalDate.of(2026, 1, 1)));
    ChargedCircuit watched =
        new ChargedCircuit(
            circuit.gas(), circuit.chargeKg(), circuit.category(), "US", true, false);
    InspectionDuty duty = INSPECTIONS.duty(watched, true, DAY);
    assertEquals("leak-detector-instead", duty.reason().code());
    assertTrue(duty.reason().source().citation().contains("from memory: check"));
  }
}

package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InspectionRulesTest {

  // 0.84 A nameplate. 75 and 110 %: common practice, no source; below 65 % it wants replacing: a
  // motor at 0.51 A of 0.84 A (60.7 %) does
  @ParameterizedTest(name = "{0} A of 0.84 A: look {1}, replace {2}")
  @CsvSource({
    "0.84, '', ''",
    "0.63, '', ''", // 75 %
    "0.629, 2026-05-01, ''",
    "0.924, '', ''", // 110 %
    "0.925, 2026-05-01, ''",
    "0.546, 2026-05-01, ''", // 65 %
    "0.545, '', 2026-04-08",
    "0.51, '', 2026-04-08",
    "1.05, 2026-05-01, ''", // 125 %
    "1.06, '', 2026-04-08"
  })
  void aFanMotorIsSeenToByItsAmpsAgainstTheNameplate(double amps, String look, String replace) {
    AUnit unit = AUnit.asOf("2026-04-15").fan("condenser_fan", amps, 0.84, "2026-04-01");
    assertEquals(look, unit.date("fan-motor-inspection", "condenser-fan-load"));
    assertEquals(replace, unit.date("fan-motor-inspection", "condenser-fan-replace"));
  }

  // NEMA MG 1, read in trade articles: derating above 1 %, not to be run above 5 %; 2 % is the
  // trade's limit (common practice)
  @ParameterizedTest(name = "{0} % off balance: look {1}, stop {2}")
  @CsvSource({
    "0.5, '', ''",
    "1.96, '', ''", // 460, 467, 450 V: the example of NEMA MG 1, from memory
    "2, '', ''",
    "2.01, 2026-05-01, ''",
    "5, 2026-05-01, ''",
    "5.01, '', 2026-04-01"
  })
  void lineVoltagesOffBalanceWantAnElectricalInspection(double percent, String look, String stop) {
    AUnit unit = AUnit.asOf("2026-04-15");
    unit.imbalance = OptionalDouble.of(percent);
    unit.voltagesRead = LocalDate.parse("2026-04-01");
    assertEquals(look, unit.date("electrical-inspection", "voltage-imbalance"));
    assertEquals(stop, unit.date("electrical-inspection", "voltage-imbalance-stop"));
  }

  @ParameterizedTest(name = "compressor amps {0} % off: {1}")
  @CsvSource({"15, ''", "15.1, 2026-05-01", "-15.1, 2026-05-01", "-10, ''"})
  void compressorAmpsOffTheirUsualValueAreLookedInto(double change, String date) {
    AUnit unit = AUnit.asOf("2026-04-15");
    unit.compressorChange = OptionalDouble.of(change);
    unit.compressorRead = LocalDate.parse("2026-04-01");
    assertEquals(date, unit.date("electrical-inspection", "compressor-amps"));
  }

  // FDA Food Code 3-501.16(A)(2), read in state adoptions: 5 °C (41 °F) or less
  @ParameterizedTest(name = "a box at {0} {1}: {2}")
  @CsvSource({
    "41, degF, ''",
    "41.1, degF, 2026-04-01",
    "5, degC, ''",
    "5.1, degC, 2026-04-01",
    "36, degF, ''"
  })
  void aBoxOverTheFoodLimitIsSeenToAtOnce(double box, String measure, String date) {
    AUnit unit = AUnit.asOf("2026-04-02").read("2026-04-01", "box", box, measure);
    assertEquals(date, unit.date("thermostat-check", "box-over-food-limit"));
  }

  @ParameterizedTest(name = "a {0} at {1} °F: {2}")
  @CsvSource({
    "walk-in-freezer, 0, ''",
    "walk-in-freezer, 1, 2026-04-02",
    "walk-in-cooler, 1, ''",
    "ice-machine, 30, ''"
  })
  void aFreezerOverItsUsualAlarmLimitIsSeenToTheNextDay(String kind, double box, String date) {
    AUnit unit = AUnit.asOf("2026-04-02").read("2026-04-01", "box", box, "degF");
    unit.kind = kind;
    assertEquals(date, unit.date("thermostat-check", "box-over-frozen-limit"));
  }

  @ParameterizedTest(name = "set to 36 °F, at {0} °F: {1}")
  @CsvSource({"40, ''", "40.1, 2026-04-15", "32, ''", "31.9, 2026-04-15"})
  void aBoxOffItsSetPointWantsItsThermostatChecked(double box, String date) {
    AUnit unit =
        AUnit.asOf("2026-04-02")
            .plate("box_setpoint", 36, "degF")
            .read("2026-04-01", "box", box, "degF");
    assertEquals(date, unit.date("thermostat-check", "box-off-set-point"));
  }

  @ParameterizedTest(name = "set to {0} °F: {1}")
  @CsvSource({"41, ''", "42, 2026-04-15"})
  void aSetPointOverTheFoodLimitIsAFindingInItself(double setPoint, String date) {
    AUnit unit =
        AUnit.asOf("2026-04-02")
            .plate("box_setpoint", setPoint, "degF")
            .read("2026-04-01", "box", 38, "degF");
    assertEquals(date, unit.date("thermostat-check", "set-point-over-food-limit"));
  }

  // 125 to 157 °F = 51.67 to 69.44 °C; ammonia 110 to 140 °F = 43.33 to 60 °C (common practice)
  @ParameterizedTest(name = "{0} opens at {1} °C condensing: {2}")
  @CsvSource({
    "R-404A, 51.6, cut-out-too-low",
    "R-404A, 51.7, ''",
    "R-404A, 69.4, ''",
    "R-404A, 69.5, cut-out-too-high",
    "R-717, 51.6, ''",
    "R-717, 60.1, cut-out-too-high"
  })
  void aCutOutSetWhereTheRefrigerantDoesNotWantItIsChecked(
      String refrigerant, double cutOutC, String code) {
    AUnit unit = AUnit.asOf("2026-04-15").did("2026-01-10", "inspected");
    unit.refrigerant = refrigerant;
    unit.cutOutC = OptionalDouble.of(cutOutC);
    List<String> codes =
        unit.task("pressure-control-check").orElseThrow().reasons().stream()
            .map(reason -> reason.reason().code())
            .filter(found -> found.startsWith("cut-out-too"))
            .toList();
    assertEquals(code.isEmpty() ? List.of() : List.of(code), codes);
    if (!code.isEmpty()) {
      assertEquals("2026-02-09", unit.date("pressure-control-check", code));
    }
  }

  // cut-out 62 °C less a clean split of 15 K: 47 °C
  @ParameterizedTest(name = "design day {0} °C: {1}")
  @CsvSource({"47, ''", "47.1, 2026-02-09"})
  void aCutOutThatACleanCoilTripsOnADesignDayIsChecked(double designC, String date) {
    AUnit unit = AUnit.asOf("2026-04-15").did("2026-01-10", "inspected");
    unit.monthlyDesignC[6] = designC;
    assertEquals(date, unit.date("pressure-control-check", "cut-out-below-design-day"));
  }

  @Test
  void aCutOutThatWasResetIsCheckedUnlessSomebodyLookedSince() {
    AUnit reset = AUnit.asOf("2026-04-15").did("2026-04-01", "cut-out-reset");
    assertEquals("2026-05-01", reset.date("pressure-control-check", "reset-pressure-control"));
    reset.did("2026-04-10", "inspected");
    assertEquals("", reset.date("pressure-control-check", "reset-pressure-control"));
  }

  @ParameterizedTest(name = "{0} asks for {1} by {3}")
  @CsvSource({
    "high-head-lockout, pressure-control-check, lockout-pressure-control, 2026-05-01",
    "low-pressure-trip, leak-inspection, low-trip-leak, 2026-04-15",
    "refrigerant-leak, leak-inspection, leak-fault, 2026-05-01",
    "contactor-failed, electrical-inspection, contactor-fault, 2026-04-15",
    "condenser-fan-failed, fan-motor-inspection, condenser-fan-fault, 2026-04-15",
    "coil-iced, evaporator-coil-cleaning, iced-evaporator, 2026-05-01",
    "drain-blocked, drain-clearing, drain-fault, 2026-04-08",
    "door-not-sealing, door-inspection, door-fault, 2026-04-08",
    "box-too-warm, thermostat-check, warm-thermostat, 2026-04-08"
  })
  void aFaultAsksForALookAtItsUsualCause(String mode, String task, String code, String date) {
    AUnit unit = AUnit.asOf("2026-04-15").fault("2026-04-01", mode);
    assertEquals(date, unit.date(task, code));
    AUnit old = AUnit.asOf("2026-04-15").fault("2026-04-01", "other");
    assertEquals("", old.date(task, code));
  }

  @Test
  void aFaultWhoseCauseWasMendedAsksForNothing() {
    AUnit unit =
        AUnit.asOf("2026-04-15").fault("2026-04-01", "contactor-failed", "contactor-replaced");
    assertEquals("", unit.date("electrical-inspection", "contactor-fault"));
  }

  @Test
  void aFreezerWithAFailedDefrostHasItsDefrostChecked() {
    AUnit unit = AUnit.asOf("2026-04-15").fault("2026-04-01", "defrost-failed");
    unit.kind = "walk-in-freezer";
    assertEquals("2026-04-15", unit.date("defrost-check", "defrost-fault"));
    unit.kind = "walk-in-cooler";
    assertTrue(unit.task("defrost-check").isEmpty(), "a cooler has no defrost to check");
  }

  @ParameterizedTest(name = "{0} {1}: {2} by {3}")
  @CsvSource({
    "contactor, good, electrical-inspection, ''",
    "contactor, worn, electrical-inspection, 2026-05-31",
    "contactor, bad, electrical-inspection, 2026-04-01",
    "wiring, worn, electrical-inspection, 2026-05-31",
    "wiring, bad, electrical-inspection, 2026-04-01",
    "door, good, door-inspection, ''",
    "door, bad, door-inspection, 2026-04-08",
    "drain, worn, drain-clearing, 2026-05-01",
    "drain, bad, drain-clearing, 2026-04-01",
    "evaporator_coil, light, evaporator-coil-cleaning, ''",
    "evaporator_coil, moderate, evaporator-coil-cleaning, 2026-05-31",
    "evaporator_coil, blocked, evaporator-coil-cleaning, 2026-04-01"
  })
  void aPartIsSeenToByItsGrade(String part, String grade, String task, String date) {
    AUnit unit = AUnit.asOf("2026-04-15").graded("2026-04-01", part, grade);
    assertEquals(date, unit.date(task, part.replace('_', '-') + "-" + grade));
  }

  @Test
  void aLaterGradeTakesThePlaceOfAnEarlierOne() {
    AUnit unit =
        AUnit.asOf("2026-04-15")
            .graded("2026-04-01", "contactor", "bad")
            .graded("2026-04-10", "contactor", "good");
    assertEquals("", unit.date("electrical-inspection", "contactor-bad"));
  }

  @Test
  void aRepairThatDidNotHoldIsFollowedUpOnce() {
    AUnit unit = AUnit.asOf("2026-04-15").cameBack("2026-04-01", "coil-iced", "2026-03-20");
    assertEquals("2026-04-08", unit.date("follow-up-inspection", "repair-did-not-hold"));
    unit.did("2026-04-01", "inspected");
    assertEquals(
        "2026-04-08",
        unit.date("follow-up-inspection", "repair-did-not-hold"),
        "the visit on which it came back is no follow-up");
    unit.did("2026-04-09", "inspected");
    assertTrue(unit.task("follow-up-inspection").isEmpty());
  }

  @Test
  void signsOfTheAssessmentAskForTheTaskOfTheirRow() {
    AUnit unit = AUnit.asOf("2026-04-15").dirty(8, 0.05, "2026-04-01");
    unit.elsewhere.add(AUnit.sign("still-high-after-cleaning"));
    unit.evaporatorFindings.add(AUnit.sign("evaporator-starved"));
    unit.evaporatorRead = LocalDate.parse("2026-04-02");
    String still = "still-high-after-cleaning";
    assertEquals("2026-04-15", unit.date("fan-motor-inspection", still));
    assertEquals("2026-04-15", unit.date("pressure-control-check", still));
    assertEquals("2026-04-16", unit.date("leak-inspection", "evaporator-starved"));
  }
}

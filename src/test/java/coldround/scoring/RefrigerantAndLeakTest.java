package coldround.scoring;

import static coldround.scoring.UnitFile.TODAY;
import static coldround.scoring.UnitFile.codes;
import static coldround.scoring.UnitFile.factor;
import static coldround.scoring.UnitFile.figure;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import coldround.refrigerant.LeakMethod;
import coldround.refrigerant.Supply;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefrigerantAndLeakTest {

  @Test
  void pointsLostAreWhatTheLawTakesOverTheUnitsOwnFuture() {
    UnitFile file = new UnitFile();
    Assessment assessment = file.assessed();
    SupplyState state = assessment.supply();
    assertEquals(TODAY, state.from());
    long months = Math.round(12 * assessment.age().remainingYears());
    assertEquals(TODAY.plusMonths(months), state.to());
    Supply direct =
        Rules.GASES
            .law()
            .supply(
                Rules.GASES.refrigerants().find("R-404A").orElseThrow(),
                "US",
                state.from(),
                state.to(),
                true,
                "walk-in-cooler");
    FactorScore score = factor(assessment, "refrigerant");
    assertEquals(Math.round(200 * (1 - direct.share())) / 10.0, score.lost());
    assertTrue(score.known());
    assertFalse(score.reasons().isEmpty());
  }

  // production of R-12 ended in 1996 (Montreal Protocol, 42 USC 7671c); propane has no phase-out
  @Test
  void anEndedGasLosesMoreThanOneWithoutLimits() {
    UnitFile old = new UnitFile();
    old.refrigerant = "R-12";
    UnitFile propane = new UnitFile();
    propane.refrigerant = "R-290";
    UnitFile hfc = new UnitFile();
    double lostOld = factor(old.assessed(), "refrigerant").lost();
    double lostHfc = factor(hfc.assessed(), "refrigerant").lost();
    assertTrue(lostOld > lostHfc, lostOld + " and " + lostHfc);
    assertEquals(0, factor(propane.assessed(), "refrigerant").lost());
  }

  @Test
  void aYoungUnitHasMoreOfThePhaseDownBeforeItThanAnOldOne() {
    UnitFile young = new UnitFile();
    young.installed = TODAY.minusDays(100);
    UnitFile old = new UnitFile();
    old.installed = TODAY.minusYears(14);
    assertTrue(
        factor(young.assessed(), "refrigerant").lost()
            > factor(old.assessed(), "refrigerant").lost());
  }

  @ParameterizedTest
  @CsvSource({"'', refrigerant-unknown", "R-9999, refrigerant-not-in-table"})
  void anUnknownGasLeavesTheFactorOpen(String written, String code) {
    UnitFile file = new UnitFile();
    file.refrigerant = written;
    FactorScore score = factor(file.assessed(), "refrigerant");
    assertFalse(score.known());
    assertEquals(10, score.lost());
    assertEquals(0, score.least());
    assertEquals(20, score.most());
    assertEquals(List.of(code), codes(score));
  }

  @Test
  void anUnknownJurisdictionWidensTheRange() {
    UnitFile file = new UnitFile();
    file.jurisdiction = "";
    FactorScore score = factor(file.assessed(), "refrigerant");
    assertFalse(score.known());
    assertEquals(0, score.least());
    assertEquals(20, score.most());
  }

  // 40 CFR 84.102: 6 lb into 60 lb after 91 days is 40.11 % by the annualizing method; the rolling
  // average of 6 lb in a year is 10 %
  @Test
  void bothLegalMethodsAreComputedAndTheOneOfTheFacilityIsShown() {
    UnitFile file = new UnitFile().plate("charge", 60, "lb");
    file.visit(491).read("refrigerant_added", 2, "lb");
    file.visit(400).read("refrigerant_added", 2, "lb");
    file.visit(309).read("refrigerant_added", 6, "lb");
    LeakState leak = file.assessed().leak();
    assertEquals(40.11, leak.annualizingPercentPerYear().orElseThrow(), 0.005);
    assertEquals(10, leak.rollingPercentPerYear().orElseThrow(), 1e-9);
    assertEquals(LeakMethod.ROLLING_AVERAGE, leak.method());
    assertEquals(10, figure(file.assessed(), "annualLeakRate").value().value(), 1e-9);
    assertEquals(3, leak.additions().size());
  }

  // 40 CFR 84.106: 20 % for commercial refrigeration, over means strictly over
  @ParameterizedTest
  @CsvSource({"24, false", "24.01, true"})
  void overTheThresholdMeansStrictlyOver(double pounds, boolean over) {
    UnitFile file = new UnitFile().plate("charge", 120, "lb");
    file.visit(600).read("refrigerant_added", 1, "lb");
    file.visit(20).read("refrigerant_added", pounds, "lb");
    Assessment assessment = file.assessed();
    assertEquals(20, assessment.leak().thresholdPercentPerYear().orElseThrow());
    assertEquals(over, assessment.leak().over());
    assertEquals(over, codes(factor(assessment, "refrigerant")).contains("leak-rate-over"));
  }

  @Test
  void theFirstFillAfterARetrofitIsNoLeak() {
    UnitFile file = new UnitFile().plate("charge", 40, "lb");
    file.visit(300).read("refrigerant_added", 9, "lb");
    file.visit(200).did("refrigerant-changed").read("refrigerant_added", 40, "lb");
    file.visit(100).read("refrigerant_added", 2, "lb");
    assertEquals(5, file.assessed().leak().rollingPercentPerYear().orElseThrow(), 1e-9);
  }

  @Test
  void withoutTheFullChargeTheReasonAsksForIt() {
    UnitFile file = new UnitFile();
    file.visit(10).read("refrigerant_added", 2, "lb");
    Assessment assessment = file.assessed();
    assertTrue(assessment.leak().percentPerYear().isEmpty());
    assertEquals("leak-rate-unknown", assessment.leak().reasons().get(0).code());
    assertTrue(figure(assessment, "annualLeakRate").missing().contains("full charge"));
  }

  @Test
  void aLeakStaysOpenUntilItIsRepaired() {
    UnitFile file = new UnitFile();
    file.visit(50).fault("refrigerant-leak");
    assertTrue(file.assessed().leak().openLeak());
    file.visit(40).did("leak-repaired").did("leak-inspected");
    LeakState leak = file.assessed().leak();
    assertFalse(leak.openLeak());
    assertEquals(TODAY.minusDays(40), leak.lastInspected().orElseThrow());
    file.visit(30).fault("refrigerant-leak");
    assertTrue(file.assessed().leak().openLeak());
  }

  @Test
  void theReasonsNameTheLaw() {
    UnitFile file = new UnitFile();
    file.refrigerant = "R-22";
    String told =
        factor(file.assessed(), "refrigerant").reasons().stream()
            .map(reason -> reason.text(MeasureSystem.US) + " " + reason.source())
            .reduce("", String::concat);
    assertTrue(told.contains("2020-01-01") && told.contains("82.16"), told);
  }
}

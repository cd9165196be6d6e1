package coldround.scoring;

import static coldround.scoring.UnitFile.codes;
import static coldround.scoring.UnitFile.factor;
import static coldround.scoring.UnitFile.figure;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.scoring.CleanSplit.Basis;
import coldround.scoring.statistics.Shrinkage;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CoilTest {

  private static final double K = 1 / 1.8;

  private static CoilState coil(UnitFile file) {
    return file.assessed().coil();
  }

  private static List<String> elsewhere(UnitFile file) {
    return coil(file).elsewhere().stream().map(reason -> reason.code()).toList();
  }

  // ambient + 30 °F, common practice, no source; R-12 at 100 °F is 117.2 psig (ASHRAE, from memory)
  @ParameterizedTest
  @CsvSource({
    "70, 117.2,  0,    false",
    "70, 155,    18.5, true",
    "67, 108,    -2,   false",
  })
  void theRuleOfAmbientPlusThirtyHoldsForR12(
      double ambientF, double headPsig, double excessF, boolean farTooHigh) {
    UnitFile file = new UnitFile();
    file.refrigerant = "R-12";
    file.visit(0).read("ambient", ambientF, "degF").read("head_pressure", headPsig, "psig");
    Assessment assessment = file.assessed();
    double split = figure(assessment, "condensingSplit").value().to(Measure.DELTA_F).value();
    assertEquals(excessF, split - 30, 1);
    double excess = figure(assessment, "splitAboveClean").value().to(Measure.DELTA_F).value();
    assertEquals(Math.max(0, excessF), excess, 1);
    assertEquals(farTooHigh, factor(assessment, "coil").lost() > 20);
    if (ambientF == 70) {
      double expected = figure(assessment, "expectedHead").value().to(Measure.PSIG).value();
      assertEquals(117.2, expected, 0.5);
    }
  }

  // 20 °F of excess take the whole factor: the packaged limit; clean split 30 °F of the kind
  @ParameterizedTest
  @CsvSource({"30, 0", "35, 6.3", "40, 12.5", "50, 25", "60, 25", "25, 0"})
  void theFactorGrowsWithTheSplitAboveClean(double splitF, double lost) {
    UnitFile file = new UnitFile();
    file.visit(0).split(80, splitF);
    FactorScore score = factor(file.assessed(), "coil");
    assertEquals(lost, score.lost(), 0.11);
    assertTrue(score.known());
    assertTrue(score.least() <= score.lost() && score.lost() <= score.most());
    assertEquals("split-above-clean", codes(score).get(0));
  }

  @ParameterizedTest
  @CsvSource({"clean, 0", "light, 3.8", "moderate, 10", "heavy, 18.8", "blocked, 25"})
  void aGradeAloneTakesItsShareOfTheTable(String grade, double lost) {
    UnitFile file = new UnitFile();
    file.visit(0).found("condenser_coil", grade);
    FactorScore score = factor(file.assessed(), "coil");
    assertEquals(lost, score.lost(), 0.051);
    assertTrue(score.known());
  }

  @Test
  void theWorseOfSplitAndGradeCountsAndBothAreTold() {
    UnitFile file = new UnitFile();
    file.visit(0).split(80, 35).found("condenser_coil", "heavy");
    FactorScore score = factor(file.assessed(), "coil");
    assertEquals(18.8, score.lost());
    assertTrue(codes(score).containsAll(List.of("split-above-clean", "coil-heavy")));
    UnitFile worse = new UnitFile();
    worse.visit(0).split(80, 48).found("condenser_coil", "heavy");
    assertEquals(22.5, factor(worse.assessed(), "coil").lost(), 0.051);
  }

  @Test
  void aCleaningMakesTheGradeClean() {
    UnitFile file = new UnitFile();
    file.visit(0).found("condenser_coil", "blocked").cleaned();
    CoilState coil = coil(file);
    assertEquals("clean", coil.grade().orElseThrow());
    assertEquals(0, factor(file.assessed(), "coil").lost());
  }

  // 45 days after a cleaning: the packaged window
  @ParameterizedTest
  @CsvSource({"45, MEASURED", "46, KIND"})
  void theCleanSplitIsMeasuredSoonAfterACleaning(int daysAfter, Basis basis) {
    UnitFile file = new UnitFile();
    file.visit(200).cleaned();
    file.visit(200 - daysAfter).split(80, 24);
    CleanSplit clean = coil(file).clean();
    assertEquals(basis, clean.basis());
    assertEquals(basis == Basis.MEASURED ? 24 * K : 30 * K, clean.splitK(), 0.1);
  }

  @Test
  void theLowestOfSeveralCountsElseTheDesignSplit() {
    UnitFile file = new UnitFile().plate("design_split", 20, "deltaF");
    assertEquals(Basis.DESIGN, coil(file).clean().basis());
    assertEquals(20 * K, coil(file).clean().splitK(), 1e-9);
    file.visit(400).cleaned().split(80, 23);
    file.visit(200).cleaned().split(85, 18);
    file.visit(180).split(85, 21);
    assertEquals(18 * K, coil(file).clean().splitK(), 0.1);
  }

  // what design may be exceeded by: 5 °F, the packaged limit
  @ParameterizedTest
  @CsvSource({"24, 24, MEASURED", "27, 25, MEASURED_HELD_DOWN"})
  void aSplitThatStaysHighAfterACleaningIsNotTakenForClean(
      double measuredF, double cleanF, Basis basis) {
    UnitFile file = new UnitFile().plate("design_split", 20, "deltaF");
    file.visit(20).cleaned().split(80, measuredF);
    assertEquals(basis, coil(file).clean().basis());
    assertEquals(cleanF * K, coil(file).clean().splitK(), 0.1);
    assertEquals(
        basis == Basis.MEASURED ? List.of() : List.of("still-high-after-cleaning"),
        elsewhere(file));
  }

  // ambient 60 °F: the packaged limit
  @ParameterizedTest
  @CsvSource({"60, true", "59.9, false"})
  void aSplitInTheColdIsShownAndLeftOut(double ambientF, boolean used) {
    UnitFile file = new UnitFile();
    file.visit(0).split(ambientF, 30);
    SplitReading reading = coil(file).readings().get(0);
    assertEquals(used, reading.used());
    assertTrue(reading.splitK().isPresent());
    if (!used) {
      assertEquals("too-cold", reading.leftOut().orElseThrow().code());
      assertTrue(reading.leftOut().orElseThrow().text(MeasureSystem.US).contains("60.0 °F"));
    }
  }

  // within 5 °F of the head-control setting: the packaged limit; setting at 100 °F condensing
  @ParameterizedTest
  @CsvSource({"104.9, false", "105.1, true", "95.1, false", "94.9, true"})
  void aCondensingTemperatureHeldByTheControlIsLeftOut(double condensingF, boolean used) {
    UnitFile file = new UnitFile();
    double kpa =
        Rules.GASES.refrigerants().curve("R-404A").orElseThrow().midpointPressureKpa(68 * K);
    file.plate("head_control", kpa, "kPa");
    file.visit(0).split(65, condensingF - 65);
    assertEquals(used, coil(file).readings().get(0).used());
  }

  @Test
  void readingsThatCannotBeJudgedSayWhy() {
    UnitFile file = new UnitFile();
    file.visit(60)
        .read("ambient", 80, "degF")
        .notTaken("head_pressure", "port blocked by shelving");
    file.visit(50).read("head_pressure", 250, "psig");
    file.visit(40).read("head_pressure", 250, "psig").notTaken("ambient", "thermometer broken");
    file.visit(30).read("head_pressure", 9000, "psig").read("ambient", 80, "degF");
    file.visit(20).split(80, 3);
    file.visit(10).split(80, 35).note("Just started when I came");
    file.visit(5).read("ambient", 80, "degF").suspect("head_pressure", 25, "psig", "far too low");
    List<String> codes =
        coil(file).readings().stream().map(r -> r.leftOut().orElseThrow().code()).toList();
    assertEquals(
        List.of(
            "no-head-pressure",
            "no-ambient",
            "no-ambient",
            "outside-table",
            "split-too-low",
            "noted-unsettled",
            "no-head-pressure"),
        codes);
    String told = coil(file).readings().get(0).leftOut().orElseThrow().text(MeasureSystem.US);
    assertEquals("No head pressure: port blocked by shelving", told);
    assertFalse(factor(file.assessed(), "coil").known());
  }

  @Test
  void readingsBeforeARetrofitAreNotJudgedOnTheGasOfToday() {
    UnitFile file = new UnitFile();
    file.visit(300).split(80, 45);
    file.visit(200).did("refrigerant-changed").split(80, 31);
    file.visit(100).split(80, 33);
    List<SplitReading> readings = coil(file).readings();
    assertEquals("other-refrigerant", readings.get(0).leftOut().orElseThrow().code());
    assertTrue(readings.get(1).used() && readings.get(2).used());
    // before the retrofit nobody knows from today's list what was in it
    Assessment before = file.assessed(UnitFile.TODAY.minusDays(250));
    assertEquals(
        "refrigerant-of-then-unknown",
        before.coil().readings().get(0).leftOut().orElseThrow().code());
    assertFalse(before.supply().known());
  }

  @Test
  void anUnknownRefrigerantIsAskedFor() {
    UnitFile file = new UnitFile();
    file.visit(0).split(80, 35);
    file.refrigerant = "";
    assertEquals(
        "refrigerant-unknown", coil(file).readings().get(0).leftOut().orElseThrow().code());
    file.refrigerant = "R-9999";
    assertEquals(
        "refrigerant-without-curve", coil(file).readings().get(0).leftOut().orElseThrow().code());
    assertTrue(file.assessed().trip().tripAmbientC().isEmpty());
  }

  @Test
  void withoutAnyEvidenceTheFactorIsOpenFromNothingToAll() {
    FactorScore score = factor(new UnitFile().assessed(), "coil");
    assertFalse(score.known());
    assertEquals(0, score.least());
    assertEquals(25, score.most());
    assertTrue(score.lost() > 0);
    assertEquals("coil-unknown", codes(score).get(0));
  }

  // evidence counts for 365 days: the packaged limit
  @ParameterizedTest
  @CsvSource({"365, true", "366, false"})
  void oldEvidenceDoesNotCountAsKnown(int daysAgo, boolean known) {
    UnitFile file = new UnitFile();
    file.visit(daysAgo).split(80, 32).found("condenser_coil", "light");
    FactorScore score = factor(file.assessed(), "coil");
    assertEquals(known, score.known());
    assertEquals(known, !codes(score).contains("coil-evidence-old"));
  }

  /** By hand: two cycles of one reading each, a line through no excess on the cleaning day. */
  @Test
  void theFoulingRateIsThePriorCorrectedByEachCycle() {
    UnitFile file = new UnitFile().plate("design_split", 20, "deltaF");
    file.visit(400).cleaned();
    file.visit(300).split(80, 28);
    file.visit(200).cleaned();
    file.visit(140).split(80, 23);
    Shrinkage prior = new Shrinkage(10 * K / 240, 6 * K / 240);
    double sd = Math.hypot(2 * K, 3 * K);
    Shrinkage expected = prior.with(8 * K / 100, sd / 100).with(3 * K / 60, sd / 60);
    assertEquals(expected.mean(), coil(file).foulingKPerDay(), 2e-4);
    assertEquals(expected.sd(), coil(file).foulingSdKPerDay(), 1e-6);
    assertEquals(3 * K + 140 * expected.mean(), coil(file).excessK(), 0.05);
  }

  @ParameterizedTest
  @ValueSource(doubles = {60, 75})
  void inACycleOfFiveReadingsOneBadOneCannotMoveTheRate(double badF) {
    UnitFile good = cycle(33);
    UnitFile bad = cycle(badF);
    assertEquals(coil(good).foulingKPerDay(), coil(bad).foulingKPerDay(), 0.01);
    assertEquals(coil(good).excessK(), coil(bad).excessK(), 1.5);
  }

  private static UnitFile cycle(double fourthF) {
    UnitFile file = new UnitFile().plate("design_split", 20, "deltaF");
    file.visit(200).cleaned();
    double[] splitsF = {22, 25, 28, fourthF, 36, 38};
    for (int i = 0; i < splitsF.length; i++) {
      file.visit(180 - 30 * i).split(80, splitsF[i]);
    }
    return file;
  }

  @Test
  void surroundingsSetWhatIsExpectedOfANewUnit() {
    double before = 0;
    for (String surroundings : List.of("clean", "outdoor", "dusty", "greasy")) {
      UnitFile file = new UnitFile();
      file.surroundings = surroundings;
      double rate = coil(file).foulingKPerDay();
      assertTrue(rate > before, surroundings);
      before = rate;
    }
  }

  @Test
  void readingsOfABreakdownAreFromBeforeItsCleaning() {
    UnitFile file = new UnitFile();
    file.visit(0).purpose("breakdown").split(80, 60).cleaned();
    assertFalse(coil(file).splitKnown());
    assertEquals(0, factor(file.assessed(), "coil").lost());
    UnitFile planned = new UnitFile();
    planned.visit(0).split(80, 60).cleaned();
    assertTrue(coil(planned).splitKnown());
    assertEquals(List.of("still-high-after-cleaning"), elsewhere(planned));
    assertTrue(factor(planned.assessed(), "coil").lost() > 20);
  }

  @Test
  void aHighSplitWithOtherSignsIsNotBlamedOnDirtAlone() {
    UnitFile file = new UnitFile().plate("condenser_fan_rated", 0.84, "A");
    file.visit(0)
        .split(80, 50)
        .read("condenser_fan", 0.51, "A")
        .read("voltage_l1_l2", 230, "V")
        .read("voltage_l2_l3", 222, "V")
        .read("voltage_l1_l3", 230, "V")
        .read("liquid_line", 100, "degF")
        .found("contactor", "bad");
    assertEquals(
        List.of("check-condenser-fan", "check-contactor", "check-voltage", "check-charge"),
        elsewhere(file));
    assertTrue(codes(factor(file.assessed(), "coil")).contains("check-condenser-fan"));
  }

  @Test
  void withoutAHighSplitThoseSignsAreNoBusinessOfTheCoil() {
    UnitFile file = new UnitFile().plate("condenser_fan_rated", 0.84, "A");
    file.visit(0).split(80, 30).read("condenser_fan", 0.51, "A");
    assertEquals(List.of(), elsewhere(file));
  }

  @Test
  void aReplacedFanMakesOlderSplitsOfTheCycleHistory() {
    UnitFile file = new UnitFile();
    file.visit(100).cleaned();
    file.visit(40).split(80, 55);
    file.visit(30).did("condenser-fan-replaced");
    file.visit(0).split(80, 33);
    assertEquals(3 * K, coil(file).excessK(), 0.1);
  }

  @Test
  void aBlockedEvaporatorTakesItsPartOfTheFactor() {
    UnitFile file = new UnitFile();
    file.visit(0).split(80, 30).found("evaporator_coil", "blocked");
    assertEquals(15, factor(file.assessed(), "coil").lost());
    file.visit(0).did("evaporator-coil-cleaned");
    assertEquals(0, factor(file.assessed(), "coil").lost());
  }

  @Test
  void theBandWidensWithTheAgeOfTheReading() {
    UnitFile fresh = new UnitFile();
    fresh.visit(0).split(80, 36);
    UnitFile old = new UnitFile();
    old.visit(200).split(80, 36);
    CoilState now = coil(fresh);
    // 80 % of one reading: 1.2816 standard deviations of 2 °F
    assertEquals(2 * 1.2816 * 2 * K, now.splitHighK() - now.splitLowK(), 1e-3);
    assertTrue(coil(old).splitHighK() - coil(old).splitLowK() > 2.5 * (2 * 1.2816 * 2 * K));
  }
}

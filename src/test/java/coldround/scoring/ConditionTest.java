package coldround.scoring;

import static coldround.scoring.UnitFile.TODAY;
import static coldround.scoring.UnitFile.figure;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitHistory;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConditionTest {

  private static UnitFile wellRead() {
    UnitFile file =
        new UnitFile()
            .plate("high_cutout", 400, "psig")
            .plate("charge", 30, "lb")
            .plate("condenser_fan_rated", 0.84, "A");
    file.visit(400).cleaned().split(85, 27);
    file.visit(100)
        .split(85, 33)
        .found("condenser_coil", "light")
        .read("condenser_fan", 0.8, "A")
        .read("voltage_l1_l2", 213, "V")
        .read("voltage_l2_l3", 214, "V")
        .read("voltage_l1_l3", 213, "V")
        .read("refrigerant_added", 1, "lb");
    return file;
  }

  @Test
  void aWellReadUnitHasEveryFigureAndFullCompleteness() {
    Condition condition = wellRead().assessed().condition();
    assertEquals(1, condition.completeness());
    assertEquals(
        List.of(
            "condensingTemperature",
            "condensingSplit",
            "splitAboveClean",
            "expectedHead",
            "foulingRate",
            "tripAmbient",
            "tripMargin",
            "voltageImbalance",
            "fanMotorLoad",
            "expectedFaultsNextYear",
            "annualLeakRate"),
        condition.diagnostics().stream().map(Diagnostic::name).toList());
    for (Diagnostic figure : condition.diagnostics()) {
      assertTrue(figure.value() != null, figure.toString());
    }
    assertTrue(condition.factors().stream().allMatch(FactorScore::known));
  }

  @Test
  void aUnitNobodyKnowsAnythingOfSaysWhatIsMissing() {
    UnitFile file = new UnitFile();
    file.installed = null;
    file.refrigerant = "";
    Assessment assessment = file.assessed();
    Condition condition = assessment.condition();
    assertEquals(0, condition.completeness());
    assertEquals(0, condition.low());
    assertEquals(100, condition.high());
    assertFalse(condition.factors().stream().anyMatch(FactorScore::known));
    assertTrue(figure(assessment, "tripAmbient").missing().contains("cut-out"));
    assertTrue(figure(assessment, "condensingSplit").missing().contains("head pressure"));
  }

  @Test
  void theScoreIsAHundredLessWhatTheFactorsTake() {
    Condition condition = wellRead().assessed().condition();
    double lost = condition.factors().stream().mapToDouble(FactorScore::lost).sum();
    assertEquals(100 - lost, condition.score(), 1e-9);
    assertEquals(Weights.FACTORS, condition.factors().stream().map(FactorScore::factor).toList());
  }

  @Test
  void aPastDayIsScoredByWhatWasKnownThen() {
    UnitFile file = wellRead();
    Condition then = file.assessed(TODAY.minusDays(200)).condition();
    UnitFile shorter = new UnitFile();
    shorter.plate.putAll(file.plate);
    shorter.visit(400).cleaned().split(85, 27);
    assertEquals(shorter.assessed(TODAY.minusDays(200)).condition(), then);
  }

  @Test
  void visitsOfTheFutureAreNotKnown() {
    UnitFile file = new UnitFile();
    file.visit(-30).split(80, 60).fault("other");
    assertEquals(new UnitFile().assessed().condition(), file.assessed().condition());
  }

  @Test
  void manyThreadsGetTheSameToTheLastDigit() {
    List<UnitHistory> histories =
        IntStream.range(0, 200)
            .mapToObj(i -> wellRead().plate("charge", 10 + i, "lb").history())
            .toList();
    List<Condition> one = histories.stream().map(ConditionTest::scored).toList();
    List<Condition> many = histories.parallelStream().map(ConditionTest::scored).toList();
    assertEquals(one, many);
  }

  private static Condition scored(UnitHistory history) {
    return new Scoring(Rules.SCORING, Rules.GASES).assess(history, TODAY).condition();
  }

  // A2L, A3, ammonia and carbon dioxide by ASHRAE 34
  @ParameterizedTest
  @CsvSource({
    "R-454C, Mildly flammable",
    "R-290,  Highly flammable",
    "R-717,  Poisonous",
    "R-744,  Carbon dioxide",
  })
  void dangerousRefrigerantsBringTheirCaution(String refrigerant, String words) {
    UnitFile file = new UnitFile();
    file.refrigerant = refrigerant;
    List<String> cautions = file.assessed().condition().cautions();
    assertTrue(cautions.stream().anyMatch(text -> text.startsWith(words)), cautions.toString());
    List<String> plain = new UnitFile().assessed().condition().cautions();
    assertFalse(plain.stream().anyMatch(text -> text.startsWith(words)));
  }

  @ParameterizedTest
  @CsvSource({"roof, Work at height", "attic, Attic or tight place"})
  void dangerousPlacesBringTheirCaution(String place, String words) {
    UnitFile file = new UnitFile();
    file.place = place;
    List<String> cautions = file.assessed().condition().cautions();
    assertTrue(cautions.stream().anyMatch(text -> text.startsWith(words)));
    file.place = "indoors";
    assertFalse(file.assessed().condition().cautions().stream().anyMatch(t -> t.startsWith(words)));
  }

  @Test
  void foodAndLockOutAreSpokenOf() {
    List<String> cautions = new UnitFile().assessed().condition().cautions();
    assertTrue(cautions.get(0).startsWith("Stop the unit"));
    assertTrue(cautions.stream().anyMatch(text -> text.startsWith("Cover or move food")));
    UnitFile chiller = UnitFile.of("chiller");
    assertFalse(
        chiller.assessed().condition().cautions().stream()
            .anyMatch(text -> text.startsWith("Cover or move food")));
  }

  @Test
  void otherWeightsAreTriedWithoutTouchingTheRules() {
    Map<String, Double> points = new HashMap<>();
    Weights.FACTORS.forEach(factor -> points.put(factor, 0.0));
    points.put("coil", 100.0);
    Scoring trial = new Scoring(Rules.SCORING.with(Weights.of(points)), Rules.GASES);
    UnitFile file = new UnitFile();
    file.visit(0).split(80, 40);
    Condition condition = trial.assess(file.history(), TODAY).condition();
    assertEquals(50, condition.score(), 0.11);
    assertEquals(0, condition.factors().get(0).lost());
    points.put("age", 1.0);
    assertThrows(IllegalArgumentException.class, () -> Weights.of(points));
  }
}

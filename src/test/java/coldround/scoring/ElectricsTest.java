package coldround.scoring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.scoring.FanMotor.Verdict;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElectricsTest {

  private static ElectricalState state(UnitFile file) {
    return file.assessed().electrical();
  }

  private static List<String> findings(UnitFile file) {
    return state(file).findings().stream().map(reason -> reason.code()).toList();
  }

  // NEMA MG 1: 460, 467, 450 V is 1.96 % (from memory); 208, 203, 199 V is 2.30 % (read in a trade
  // article); 213, 214, 213 V is balanced (common practice, no source)
  @ParameterizedTest
  @CsvSource({
    "460, 467, 450, 1.96, voltage-imbalance",
    "208, 203, 199, 2.30, voltage-imbalance",
    "213, 214, 213, 0.31,",
    "100, 100, 100, 0.00,",
    "230, 230, 205, 7.52, voltage-imbalance-stop",
  })
  void voltageImbalanceIsTheLargestDeviationFromTheMean(
      double a, double b, double c, double percent, String finding) {
    UnitFile file = new UnitFile();
    file.visit(10)
        .read("voltage_l1_l2", a, "V")
        .read("voltage_l2_l3", b, "V")
        .read("voltage_l1_l3", c, "V");
    assertEquals(percent, state(file).imbalancePercent().orElseThrow(), 0.005);
    assertEquals(finding == null ? List.of() : List.of(finding), findings(file));
  }

  // edges by hand: with 100 + d, 100, 100 - d the mean is 100 and the imbalance is d
  @ParameterizedTest
  @CsvSource({
    "1, ",
    "1.01, voltage-imbalance",
    "5, voltage-imbalance",
    "5.01, voltage-imbalance-stop"
  })
  void deratingStartsAboveOneAndRunningEndsAboveFivePercent(double d, String finding) {
    UnitFile file = new UnitFile();
    file.visit(10)
        .read("voltage_l1_l2", 100 + d, "V")
        .read("voltage_l2_l3", 100, "V")
        .read("voltage_l1_l3", 100 - d, "V");
    assertEquals(finding == null ? List.of() : List.of(finding), findings(file));
  }

  // a motor at 0.51 of 0.84 A wants replacing: common practice, no source; edges of the packaged
  // limits 75 and 110 %
  @ParameterizedTest
  @CsvSource({
    "0.51, 0.84, UNDERLOADED, fan-motor-weak",
    "0.749, 1, UNDERLOADED, fan-motor-weak",
    "0.75, 1, NORMAL,",
    "1.10, 1, NORMAL,",
    "1.101, 1, OVERLOADED, fan-motor-overloaded",
  })
  void aFanMotorFarOffItsNameplateWantsALook(
      double amps, double rated, Verdict verdict, String finding) {
    UnitFile file = new UnitFile().plate("condenser_fan_rated", rated, "A");
    file.visit(10).read("condenser_fan", amps, "A");
    assertEquals(verdict, state(file).fans().get(0).verdict());
    assertEquals(finding == null ? List.of() : List.of(finding), findings(file));
  }

  @Test
  void aReplacedFanMotorIsNoLongerHeldAgainstTheUnit() {
    UnitFile file = new UnitFile().plate("condenser_fan_rated", 0.84, "A");
    file.visit(30).read("condenser_fan", 0.51, "A");
    file.visit(20)
        .purpose("breakdown")
        .read("condenser_fan", 0.45, "A")
        .did("condenser-fan-replaced");
    assertEquals(List.of(), state(file).fans());
    file.visit(5).read("condenser_fan", 0.8, "A");
    assertEquals(List.of(), findings(file));
    assertEquals(0.8, state(file).fans().get(0).measuredA());
  }

  @Test
  void eachFanIsLookedAtByItself() {
    UnitFile file = new UnitFile().plate("condenser_fan_rated", 1, "A");
    file.visit(40)
        .read("condenser_fan", "fan 1", 0.9, "A")
        .read("condenser_fan", "fan 2", 0.6, "A");
    file.visit(10).read("condenser_fan", "fan 1", 0.95, "A");
    List<FanMotor> fans = state(file).fans();
    assertEquals(List.of("fan 1", "fan 2"), fans.stream().map(FanMotor::part).toList());
    assertEquals(0.95, fans.get(0).measuredA());
    assertTrue(fans.get(1).wantsLook());
  }

  @Test
  void withoutNameplateAmpsAFanIsNotJudged() {
    UnitFile file = new UnitFile();
    file.visit(10).read("condenser_fan", 0.51, "A");
    assertEquals(Verdict.UNKNOWN, state(file).fans().get(0).verdict());
    assertEquals(List.of(), findings(file));
  }

  // 15 % of change at like pressures, three earlier readings: the packaged limits
  @ParameterizedTest
  @CsvSource({"11.5,", "11.51, compressor-amps-changed", "8.49, compressor-amps-changed"})
  void aCompressorIsComparedWithItselfAtLikePressures(double amps, String finding) {
    UnitFile file = new UnitFile();
    for (int daysAgo : new int[] {400, 300, 200}) {
      compressor(file.visit(daysAgo), 240, 10);
    }
    compressor(file.visit(100), 330, 20);
    compressor(file.visit(10), 240, amps);
    assertEquals(10, state(file).compressorUsualA().orElseThrow());
    assertEquals(finding == null ? List.of() : List.of(finding), findings(file));
  }

  private static void compressor(UnitFile.VisitRow visit, double headPsig, double amps) {
    visit
        .read("head_pressure", headPsig, "psig")
        .read("suction_pressure", 50, "psig")
        .read("compressor", amps, "A");
  }

  @Test
  void twoEarlierReadingsAreTooFewToCompareACompressor() {
    UnitFile file = new UnitFile();
    for (int daysAgo : new int[] {300, 200, 10}) {
      compressor(file.visit(daysAgo), 240, daysAgo == 10 ? 30 : 10);
    }
    assertTrue(state(file).compressorUsualA().isEmpty());
    assertEquals(List.of(), findings(file));
  }

  @ParameterizedTest
  @CsvSource({"207.1,", "206.9, supply-voltage", "253.1, supply-voltage", "252.9,"})
  void supplyVoltageMayBeTenPercentOff(double volts, String finding) {
    UnitFile file = new UnitFile().plate("supply", 230, "V");
    file.visit(10).read("voltage_l1_l2", volts, "V");
    assertEquals(finding == null ? List.of() : List.of(finding), findings(file));
  }

  @Test
  void aWornContactorIsAFindingUntilItIsReplaced() {
    UnitFile file = new UnitFile();
    file.visit(30).found("contactor", "worn");
    assertEquals(List.of("contactor-worn"), findings(file));
    file.visit(20).did("contactor-replaced");
    assertEquals(List.of(), findings(file));
  }
}

package coldround.scoring;

import static coldround.scoring.UnitFile.codes;
import static coldround.scoring.UnitFile.factor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.GammaPoisson;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RepeatFaultsTest {

  private static FaultState faults(UnitFile file) {
    return file.assessed().faults();
  }

  // window 365 days, repair that did not hold 30 days: the packaged limits
  @ParameterizedTest
  @CsvSource({
    "366, false, false",
    "365, true,  false",
    "100, true,  false",
    "31,  true,  false",
    "30,  true,  true",
    "1,   true,  true",
  })
  void theSameModeWithinAYearIsARepeatAndWithinAMonthTheRepairDidNotHold(
      int daysBetween, boolean repeat, boolean didNotHold) {
    UnitFile file = new UnitFile();
    file.visit(500).fault("high-head-lockout");
    file.visit(500 - daysBetween).fault("high-head-lockout");
    FaultEvent second = faults(file).events().get(1);
    assertEquals(repeat, second.repeat());
    assertEquals(didNotHold, second.didNotHold());
    assertEquals(repeat ? List.of("high-head-lockout") : List.of(), faults(file).repeatedModes());
  }

  @Test
  void anotherModeIsNoRepeat() {
    UnitFile file = new UnitFile();
    file.visit(500).fault("high-head-lockout");
    file.visit(400).fault("drain-blocked");
    assertEquals(List.of(), faults(file).repeatedModes());
  }

  @Test
  void aFaultToldByTheFaultListAndByTheVisitThatRepairedItIsOne() {
    UnitFile file = new UnitFile();
    file.fault(102, "compressor-no-start", 100);
    file.visit(100).fault("compressor-no-start");
    assertEquals(1, faults(file).events().size());
  }

  // same fault within 3 days with no repair between: the packaged limit
  @ParameterizedTest
  @CsvSource({"3, 1", "4, 2"})
  void withoutARepairOnRecordAFewDaysAreOneFault(int days, int events) {
    UnitFile file = new UnitFile();
    file.fault(100, "box-too-warm", null).fault(100 - days, "box-too-warm", null);
    assertEquals(events, faults(file).events().size());
  }

  /** By hand from the packaged tables: prior Gamma(1.2, 1.5 a), share of the mode 0.12. */
  @Test
  void pointsLostAreTheChanceOfARepeatedModeInTheNextYear() {
    UnitFile file = new UnitFile();
    file.visit(731);
    file.visit(400).fault("high-head-lockout");
    file.visit(200).fault("high-head-lockout");
    file.visit(100).fault("drain-blocked");
    FaultState faults = faults(file);
    double years = 1.5 + 731 / 365.25;
    double chance = 1 - Math.pow(years / (years + 1), 1.2 * 0.12 + 2);
    assertEquals(chance, faults.repeatProbability(), 1e-12);
    assertEquals((1.2 + 3) / years, faults.expectedNextYear(), 1e-12);
    FactorScore score = factor(file.assessed(), "repeat-faults");
    assertEquals(Math.round(300 * chance) / 10.0, score.lost());
    assertTrue(score.least() < score.lost() && score.lost() < score.most());
    assertTrue(score.known());
    assertEquals(List.of("fault-came-back", "chance-of-repeat"), codes(score));
  }

  @Test
  void aYearWithoutRepeatsLosesNothing() {
    UnitFile file = new UnitFile();
    file.visit(365);
    file.visit(10);
    FactorScore score = factor(file.assessed(), "repeat-faults");
    assertEquals(0, score.lost());
    assertEquals(0, score.most());
    assertTrue(score.known());
  }

  @Test
  void aShortRecordWithoutRepeatsIsNoGoodNews() {
    UnitFile half = new UnitFile();
    half.visit(180);
    FactorScore score = factor(half.assessed(), "repeat-faults");
    UnitFile none = new UnitFile();
    FactorScore unknown = factor(none.assessed(), "repeat-faults");
    assertTrue(score.lost() > 0 && score.lost() < unknown.lost());
    assertTrue(score.most() > 10);
    assertTrue(codes(score).contains("short-record"));
    assertFalse(unknown.known());
    assertEquals(0, unknown.least());
    assertEquals(30, unknown.most());
    assertEquals(List.of("no-record"), codes(unknown));
  }

  // repeats are remembered for 1095 days: the packaged limit
  @ParameterizedTest
  @CsvSource({"1095, true", "1096, false"})
  void oldRepeatsAreHistory(int daysAgo, boolean counts) {
    UnitFile file = new UnitFile();
    file.visit(daysAgo + 50).fault("coil-iced");
    file.visit(daysAgo).fault("coil-iced");
    assertEquals(counts, !faults(file).repeatedModes().isEmpty());
  }

  @Test
  void faultsThatComeFasterRaiseTheExpectation() {
    UnitFile file = new UnitFile();
    file.visit(1460);
    for (int daysAgo : new int[] {200, 150, 110, 70, 40, 15}) {
      file.visit(daysAgo).fault("high-head-lockout");
    }
    FaultState faults = faults(file);
    FaultTrend trend = faults.trend().orElseThrow();
    assertTrue(trend.worsening());
    assertTrue(trend.laplace() > 2 && trend.shape() > 2, trend.toString());
    assertEquals(trend.expectedPerYear(), faults.expectedNextYear(), 1e-12);
    assertTrue(codes(factor(file.assessed(), "repeat-faults")).contains("faults-come-faster"));
  }

  // 7 faults in 2.5 years, 6 of them in the last six months: the fitted power law says 11 a year
  @Test
  void aBurstIsNotRunOnAboveWhatAYearHasSeen() {
    UnitFile file = new UnitFile();
    file.visit(930);
    for (int daysAgo : new int[] {528, 171, 147, 141, 119, 113, 33}) {
      file.visit(daysAgo).fault("high-head-lockout");
    }
    FaultState faults = faults(file);
    FaultTrend trend = faults.trend().orElseThrow();
    assertTrue(trend.worsening());
    assertTrue(trend.intensityPerYear() > 8, trend.toString());
    assertEquals(6, faults.expectedNextYear(), 1e-12);
    assertTrue(faults.expectedNextYear() > faults.posterior().mean());
  }

  // the same faults evenly spread: their number decides, no trend
  @Test
  void faultsThatComeEvenlyAreNotRaised() {
    UnitFile file = new UnitFile();
    file.visit(930);
    for (int fault = 0; fault < 7; fault++) {
      file.visit(30 + 125 * fault).fault("high-head-lockout");
    }
    FaultState faults = faults(file);
    assertFalse(faults.trend().orElseThrow().worsening());
    assertEquals(faults.posterior().mean(), faults.expectedNextYear(), 1e-12);
  }

  // worse long ago, quiet for a year: nothing in the last 12 months bears a rise out
  @Test
  void aTrendThatTheLastYearDoesNotBearOutRaisesNothing() {
    UnitFile file = new UnitFile();
    file.visit(6000);
    for (int fault = 0; fault < 9; fault++) {
      file.visit(370 + 10 * fault).fault("high-head-lockout");
    }
    FaultState faults = faults(file);
    assertTrue(faults.trend().orElseThrow().worsening());
    assertEquals(faults.posterior().mean(), faults.expectedNextYear(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"3, false", "4, true"})
  void aTrendNeedsFourFaults(int count, boolean looked) {
    UnitFile file = new UnitFile();
    file.visit(1000);
    for (int i = 0; i < count; i++) {
      file.visit(900 - 200 * i).fault("drain-blocked");
    }
    assertEquals(looked, faults(file).trend().isPresent());
  }

  @Test
  void severalVisitsOnOneDayMakeNoTroubleForTheTrend() {
    UnitFile file = new UnitFile();
    for (String mode : List.of("coil-iced", "drain-blocked", "other", "control-failed")) {
      file.visit(0).fault(mode);
    }
    FaultState faults = faults(file);
    assertTrue(faults.trend().isEmpty());
    assertEquals(4, faults.events().size());
  }

  @Test
  void anUnknownModeCountsAsAnother() {
    UnitFile file = new UnitFile();
    file.visit(500).fault("haunted");
    file.visit(400).fault("haunted");
    assertEquals(List.of("haunted"), faults(file).repeatedModes());
    assertTrue(faults(file).repeatProbability() > 0);
  }

  @Test
  void aLargeFleetGivesItsOwnPrior() {
    Limits limits = Rules.SCORING.limits();
    FaultTally nineteen = FaultTally.NONE;
    for (int i = 0; i < 19; i++) {
      nineteen = nineteen.plus(FaultTally.of(i % 3, 730));
    }
    FaultTally twenty = nineteen.plus(FaultTally.of(5, 730));
    GammaPoisson table = prior(Rules.SCORING.faultPriors());
    Map<String, FaultTally> few = Map.of("remote-refrigeration", nineteen);
    Map<String, FaultTally> enough = Map.of("remote-refrigeration", twenty);
    assertEquals(table, prior(Rules.SCORING.faultPriors().estimated(few, limits)));
    GammaPoisson own = prior(Rules.SCORING.faultPriors().estimated(enough, limits));
    assertEquals(twenty.meanRate(), own.mean(), 1e-12);
  }

  private static GammaPoisson prior(FaultPriors priors) {
    return priors.byClass().get("remote-refrigeration").rate();
  }

  /** Closed form against the sum over the counts of the two years. */
  @Test
  void theChanceWithoutARecordIsThatOfTwoAndThenAnother() {
    GammaPoisson prior = new GammaPoisson(1.2, 1.5);
    double none = 1;
    for (FailureModes.FailureMode mode : Rules.SCORING.modes().all()) {
      none *= 1 - bySum(prior.part(mode.share()));
    }
    assertEquals(1 - none, RepeatExpectation.of(prior, Rules.SCORING.modes()), 1e-9);
  }

  private static double bySum(GammaPoisson rate) {
    double chance = 0;
    double mass = rate.none(1);
    double q = 1 / (rate.years() + 1);
    for (int count = 0; count < 400; count++) {
      if (count >= 2) {
        chance += mass * rate.after(count, 1).atLeastOne(1);
      }
      mass *= q * (rate.shape() + count) / (count + 1);
    }
    return chance;
  }
}

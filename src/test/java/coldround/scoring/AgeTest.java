package coldround.scoring;

import static coldround.scoring.UnitFile.TODAY;
import static coldround.scoring.UnitFile.codes;
import static coldround.scoring.UnitFile.factor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import coldround.scoring.AgeState.Basis;
import coldround.scoring.statistics.WeibullLife;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.statistics.distribution.WeibullDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgeTest {

  // shares by the Weibull distribution of Apache Commons Statistics, mean life of the packaged
  // table
  @ParameterizedTest
  @CsvSource({
    "walk-in-cooler,           3, 10.5, 1996",
    "walk-in-cooler,           3, 10.5, 2016",
    "ice-machine,              3,  8.5, 2020",
    "packaged-air-conditioner, 3, 15,   2010",
    "chiller,                  4, 20,   2005",
  })
  void pointsLostAreTheShareOfTheClassThatIsGone(String kind, double shape, double mean, int year) {
    UnitFile file = UnitFile.of(kind);
    file.installed = TODAY.withYear(year);
    double scale = mean / WeibullDistribution.of(shape, 1).getMean();
    double age = ChronoUnit.DAYS.between(file.installed, TODAY) / 365.25;
    double gone = WeibullDistribution.of(shape, scale).cumulativeProbability(age);
    FactorScore score = factor(file.assessed(), "age");
    assertEquals(Math.round(250 * gone) / 10.0, score.lost());
    assertEquals(score.lost(), score.least());
    assertEquals(score.lost(), score.most());
    assertTrue(score.known());
  }

  // median of walk-in refrigeration: 10.41 years (mean 10.5, shape 3)
  @ParameterizedTest
  @CsvSource({"2016-02-15, within-median-life", "2016-01-25, past-median-life"})
  void theMedianOfTheClassIsTheEdgeOfTheWording(LocalDate installed, String code) {
    UnitFile file = new UnitFile();
    file.installed = installed;
    assertEquals(code, codes(factor(file.assessed(), "age")).get(0));
  }

  @Test
  void theReasonSaysWhatATechnicianCanCheck() {
    UnitFile file = new UnitFile();
    file.installed = LocalDate.of(2006, 7, 1);
    var reasons = factor(file.assessed(), "age").reasons();
    assertEquals(
        "This unit is 20.0 years old; half of its class (walk-in refrigeration) is gone by 10.4"
            + " years already, and 99.3 % by this age",
        reasons.get(0).text(MeasureSystem.US));
    assertEquals("service-life.csv", reasons.get(0).source().table());
    assertTrue(reasons.get(1).text(MeasureSystem.US).contains("82 FR 31808"));
  }

  @Test
  void withoutInstallationDateTheFirstVisitBoundsTheAge() {
    UnitFile file = new UnitFile();
    file.installed = null;
    file.visit(1461);
    Assessment assessment = file.assessed();
    FactorScore score = factor(assessment, "age");
    WeibullLife life = assessment.age().life();
    assertEquals(Basis.FIRST_SEEN, assessment.age().basis());
    assertFalse(score.known());
    assertEquals(Math.round(250 * life.goneBy(4)) / 10.0, score.least(), 0.11);
    assertEquals(25, score.most());
    assertTrue(score.lost() > score.least() && score.lost() < score.most());
  }

  @Test
  void withNothingKnownItIsTheAverageUnitInUse() {
    UnitFile file = new UnitFile();
    file.installed = null;
    FactorScore score = factor(file.assessed(), "age");
    // stationary fleet: 1 - 2^(-1/shape), by hand for shape 3
    assertEquals(Math.round(250 * (1 - Math.pow(2, -1 / 3.0))) / 10.0, score.lost());
    assertEquals(0, score.least());
    assertEquals(25, score.most());
    assertEquals("age-unknown", codes(score).get(0));
  }

  // the closed form against direct integration of F over the ages of units in use
  @Property(tries = 50)
  void theAverageOfUnitsAtLeastThatOldIsAsByQuadrature(
      @ForAll @DoubleRange(min = 0, max = 20) double yearsSeen) {
    UnitFile file = new UnitFile();
    file.installed = null;
    int days = (int) Math.round(yearsSeen * 365.25);
    file.visit(days);
    AgeState age = file.assessed().age();
    WeibullLife life = age.life();
    double above = 0;
    double below = 0;
    double step = 0.001;
    for (double t = days / 365.25 + step / 2; t < 60; t += step) {
      above += life.goneBy(t) * (1 - life.goneBy(t)) * step;
      below += (1 - life.goneBy(t)) * step;
    }
    assertEquals(above / below, age.lostShare(), 2e-4);
  }

  @Test
  void theYearOfTheSerialNumberLeavesOneYearOpen() {
    UnitFile file = new UnitFile();
    file.installed = null;
    file.plate("serial_year", 2016, "1");
    Assessment assessment = file.assessed();
    assertEquals(Basis.SERIAL_YEAR, assessment.age().basis());
    assertEquals(10, assessment.age().ageYears().orElseThrow(), 0.02);
    FactorScore score = factor(assessment, "age");
    assertTrue(score.known());
    assertTrue(score.least() < score.lost() && score.lost() < score.most());
  }

  @Test
  void aUnitOnRecordBeforeItWasInstalledIsAContradiction() {
    UnitFile file = new UnitFile();
    file.installed = TODAY.minusDays(100);
    file.visit(800);
    FactorScore score = factor(file.assessed(), "age");
    assertFalse(score.known());
    assertTrue(codes(score).contains("installed-after-first-record"), codes(score).toString());
  }

  @Test
  void anInstallationInTheFutureIsNoGoodNews() {
    UnitFile file = new UnitFile();
    file.installed = TODAY.plusYears(36);
    FactorScore score = factor(file.assessed(), "age");
    assertFalse(score.known());
    assertTrue(score.lost() > 0);
    assertTrue(codes(score).contains("installed-later"), codes(score).toString());
  }
}

package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Fault;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.upkeep.BacktestReport.Lockout;
import coldround.upkeep.BacktestReport.Verdict;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BacktestTest {

  private static final LocalDate PLANNED = LocalDate.parse("2025-07-01");
  private static final LocalDate UNTIL = LocalDate.parse("2026-07-01");

  private final List<Visit> visits = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();

  private void graded(String date, String grade, String... work) {
    Map<String, String> findings = grade.isEmpty() ? Map.of() : Map.of("condenser_coil", grade);
    visits.add(
        new Visit(
            "V" + visits.size(),
            LocalDate.parse(date),
            "",
            "planned",
            List.of(),
            findings,
            List.of(work),
            List.of(),
            ""));
  }

  private void lockout(String date) {
    LocalDate day = LocalDate.parse(date);
    faults.add(new Fault(day, "high-head-lockout", "", day, null, null, ""));
  }

  private BacktestReport report() {
    Unit unit =
        new Unit(
            "u1",
            "C",
            "S",
            "T",
            "walk-in-cooler",
            "",
            "",
            "",
            "",
            LocalDate.parse("2018-06-01"),
            "R-404A",
            "outdoors",
            null,
            Map.of());
    UnitHistory history = new UnitHistory(AUnit.site("clean", "US-VA"), unit, visits, faults);
    return Backtest.run(Rules.SCORING, Rules.UPKEEP, List.of(history), PLANNED, UNTIL);
  }

  // a coil graded heavy is due on the day it was graded
  @Test
  void aLockoutAfterADueCleaningWasForeseenWithItsLeadTime() {
    graded("2025-06-20", "heavy");
    lockout("2025-07-21");
    BacktestReport report = report();
    Lockout lockout = report.lockouts().get(0);
    assertTrue(lockout.foreseen());
    assertEquals(20, lockout.leadDays(), "counted from the day of the plan");
    assertEquals(1, report.foreseen());
    assertEquals(20, report.medianLeadDays().orElseThrow());
    assertEquals(1, report.count(Verdict.NEEDED));
  }

  @Test
  void aLockoutOfACoilJustCleanedWasNot() {
    graded("2025-06-20", "heavy", "condenser-coil-cleaned");
    lockout("2025-07-02");
    BacktestReport report = report();
    assertFalse(report.lockouts().get(0).foreseen());
    assertEquals(0, report.foreseen());
    assertTrue(report.medianLeadDays().isEmpty());
  }

  @Test
  void whatHappenedAfterThePlanIsNotKnownToIt() {
    graded("2025-06-20", "clean", "condenser-coil-cleaned");
    BacktestReport quiet = report();
    graded("2025-09-20", "heavy");
    BacktestReport later = report();
    assertEquals(quiet.cleanings().get(0).due(), later.cleanings().get(0).due());
  }

  @ParameterizedTest(name = "found {0} after it was due: {1}")
  @CsvSource({
    "clean, NEEDLESS",
    "light, NEEDLESS",
    "moderate, NEEDED",
    "heavy, NEEDED",
    "'', UNKNOWN"
  })
  void aPlannedCleaningIsJudgedByTheNextLookAtTheCoil(String grade, Verdict verdict) {
    graded("2025-05-20", "heavy");
    graded("2025-08-01", grade);
    assertEquals(verdict, report().cleanings().get(0).verdict());
  }

  @Test
  void aCleaningThatWasDoneBeginsANewPlan() {
    graded("2025-06-20", "heavy");
    graded("2025-08-01", "heavy", "condenser-coil-cleaned");
    lockout("2025-08-05");
    BacktestReport report = report();
    assertFalse(report.lockouts().get(0).foreseen(), "it had been cleaned four days before");
  }

  @Test
  void aLockoutOnTheDayOfTheCleaningCameBeforeIt() {
    graded("2025-06-20", "heavy");
    graded("2025-08-01", "heavy", "condenser-coil-cleaned");
    lockout("2025-08-01");
    assertTrue(report().lockouts().get(0).foreseen());
  }

  @Test
  void lockoutsOutsideTheSpanAreNotCounted() {
    lockout("2025-07-01");
    lockout("2026-07-02");
    graded("2025-01-01", "clean");
    assertEquals(List.of(), report().lockouts());
  }

  @Test
  void aSpanThatEndsBeforeItBeginsIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Backtest.run(Rules.SCORING, Rules.UPKEEP, List.of(), UNTIL, PLANNED));
  }
}

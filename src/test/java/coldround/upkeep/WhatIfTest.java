package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitHistory;
import coldround.reason.Source;
import coldround.upkeep.WhatIf.Change;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WhatIfTest {

  private static final LocalDate DAY = LocalDate.parse("2026-05-01");
  // what is known on the day; the demo's record goes on after it
  private static final List<UnitHistory> FLEET =
      DemoFleet.read().stream().map(unit -> unit.asOf(DAY)).toList();
  private static final WhatIf WHAT_IF =
      new WhatIf(Rules.SCORING, Rules.UPKEEP, 1200, new Source("technicians", "all", "the test"));

  private static Outlook outlook(Change change) {
    return WHAT_IF.outlook(FLEET, change);
  }

  private final Outlook plan = outlook(Change.none(DAY));

  @Test
  void aHotterSeasonBringsMoreLockouts() {
    Outlook hotter = outlook(new Change(DAY, 5 / 1.8, false, 1));
    assertTrue(hotter.lockouts() > plan.lockouts());
    assertTrue(hotter.breakdownCost().value() > plan.breakdownCost().value());
    assertEquals(plan.otherFaults(), hotter.otherFaults());
    assertEquals(plan.energyCost(), hotter.energyCost());
  }

  @Test
  void skippingAllCleaningsSavesThemAndCostsLockoutsAndElectricity() {
    Outlook skipped = outlook(new Change(DAY, 0, true, 1));
    assertEquals(0, skipped.cleanings());
    assertEquals(0, skipped.cleaningCost().value());
    assertTrue(plan.cleanings() > 0);
    assertTrue(skipped.lockouts() > plan.lockouts());
    assertTrue(skipped.energyCost().value() > plan.energyCost().value());
  }

  @Test
  void moreTechniciansLeaveLessWorkOver() {
    Outlook doubled = outlook(new Change(DAY, 0, false, 2));
    assertTrue(plan.minutesOver() > doubled.minutesOver());
    assertTrue(plan.lockouts() >= doubled.lockouts());
  }

  @Test
  void whatThereIsNoTimeForStaysDirtyAndLocksOut() {
    WhatIf few =
        new WhatIf(Rules.SCORING, Rules.UPKEEP, 120, new Source("technicians", "all", "the test"));
    Outlook scarce = few.outlook(FLEET, Change.none(DAY));
    Outlook twice = few.outlook(FLEET, new Change(DAY, 0, false, 2));
    assertTrue(scarce.lockouts() > twice.lockouts());
    assertTrue(scarce.energyCost().value() > twice.energyCost().value());
    assertTrue(scarce.cleanings() < twice.cleanings());
    assertTrue(scarce.minutesOver() > twice.minutesOver());
  }

  @Test
  void aCoilThatNobodyTouchesForHalfAYearWastesMoreInTheYearAfter() {
    Outlook now = outlook(new Change(DAY, 0, true, 1));
    Outlook later = outlook(new Change(DAY.plusMonths(6), 0, true, 1));
    assertTrue(later.energyCost().value() > now.energyCost().value());
  }

  @Test
  void theSameQuestionHasTheSameAnswer() {
    assertEquals(plan, outlook(Change.none(DAY)));
  }

  @Test
  void anImpossibleChangeIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Change(DAY, 0, false, 0));
    assertThrows(IllegalArgumentException.class, () -> new Change(DAY, Double.NaN, false, 1));
  }

  // bands of scoring/lockout-chance.csv: cut-out 62 °C less 15 K clean split trips at 47 °C
  @ParameterizedTest(name = "design ambient {0} °C all year: {1} lockouts")
  @CsvSource({
    "41, 0.024", // 6 K = 10.8 °F
    "41.5, 0.12", // 5.5 K = 9.9 °F
    "47, 0.48",
    "47.1, 1.44",
    "49.8, 3.6" // −2.8 K = −5.04 °F
  })
  void lockoutsFollowTheMarginOfEachMonth(double designC, double lockouts) {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(0, 0, "2026-05-01");
    Arrays.fill(unit.monthlyDesignC, designC);
    UnitCase unitCase = new UnitCase(unit.assessment(), Rules.UPKEEP.tables());
    assertEquals(lockouts, CoilYear.of(unitCase, null, 0).lockouts(), 1e-9);
  }

  @Test
  void withoutACutOutTheRecordAloneCounts() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(0, 0.05, "2026-05-01");
    unit.cutOutC = OptionalDouble.empty();
    UnitCase unitCase = new UnitCase(unit.assessment(), Rules.UPKEEP.tables());
    // 0.5 faults a year, 12 % of them lockouts: scoring/failure-modes.csv
    assertEquals(0.06, CoilYear.of(unitCase, null, 5).lockouts(), 1e-9);
  }

  // limit 5.5556 K at 0.05 K a day: every 111.1 days; from 15 May to 30 April, 351 days: 4 of them
  @ParameterizedTest(name = "first cleaned {0}: {1} in the year")
  @CsvSource({"2026-05-15, 4", "2027-04-30, 1", "2027-05-01, 0", "2025-01-01, 4"})
  void aCoilIsCleanedAgainWheneverItReachesItsLimit(String first, int count) {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(3, 0.05, "2026-03-01");
    UnitCase unitCase = new UnitCase(unit.assessment(), Rules.UPKEEP.tables());
    assertEquals(count, CoilYear.of(unitCase, LocalDate.parse(first), 0).cleanings());
  }
}

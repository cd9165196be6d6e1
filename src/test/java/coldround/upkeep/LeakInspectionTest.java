package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.scoring.LeakState;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeakInspectionTest {

  private static final String TASK = "leak-inspection";

  private static AUnit unit(String kind, String refrigerant, double charge, String measure) {
    AUnit unit = AUnit.asOf("2026-09-01").plate("charge", charge, measure);
    unit.kind = kind;
    unit.refrigerant = refrigerant;
    return unit.did("2026-03-10", "leak-inspected");
  }

  // 40 CFR 82.157(g) for ozone-depleting gas, from 50 lb, and 84.106(g) for HFC, from 15 lb; from
  // 500 lb every three months for commercial refrigeration; from memory. Counted from 10 March.
  @ParameterizedTest(name = "US {0} {1} {2} lb after exceeding: {3}")
  @CsvSource({
    "walk-in-cooler, R-22, 49.9, ''",
    "walk-in-cooler, R-22, 50, 2027-03-10",
    "walk-in-cooler, R-22, 499.9, 2027-03-10",
    "walk-in-cooler, R-22, 500, 2026-06-10",
    "chiller, R-22, 500, 2027-03-10",
    "walk-in-cooler, R-404A, 14.9, ''",
    "walk-in-cooler, R-404A, 15, 2027-03-10",
    "walk-in-cooler, R-404A, 499.9, 2027-03-10",
    "walk-in-cooler, R-404A, 500, 2026-06-10",
    "chiller, R-134a, 600, 2027-03-10",
    "split-air-conditioner, R-410A, 600, ''",
    "walk-in-cooler, R-290, 600, ''"
  })
  void federalLawWantsInspectionsOfWhatLeakedTooMuch(
      String kind, String refrigerant, double lb, String due) {
    AUnit unit = unit(kind, refrigerant, lb, "lb");
    unit.leakOver = true;
    unit.additions.add(new LeakState.Addition(LocalDate.parse("2026-03-01"), 10));
    assertEquals(due, unit.date(TASK, "leak-inspection"));
  }

  @Test
  void andOfNothingElse() {
    assertEquals("", unit("walk-in-cooler", "R-404A", 500, "lb").date(TASK, "leak-inspection"));
  }

  // Regulation (EU) 2024/573 art. 5, bands read for 517/2014: R-404A has a GWP of 3922, so 5, 50
  // and
  // 500 t CO2e are 1.27, 12.75 and 127.49 kg (1.2749, 12.7486, 127.4859)
  @ParameterizedTest(name = "EU {0} {1} kg: {2}")
  @CsvSource({
    "R-404A, 1.27, ''",
    "R-404A, 1.28, 2027-03-10",
    "R-404A, 12.74, 2027-03-10",
    "R-404A, 12.75, 2026-09-10",
    "R-404A, 127.48, 2026-09-10",
    "R-404A, 127.49, 2026-06-10",
    "R-134a, 3.49, ''", // GWP 1430: 5 t are 3.4965 kg
    "R-134a, 3.50, 2027-03-10",
    "R-1234yf, 0.99, ''", // HFO by mass: 1, 10 and 100 kg
    "R-1234yf, 1, 2027-03-10",
    "R-1234yf, 10, 2026-09-10",
    "R-1234yf, 100, 2026-06-10",
    "R-22, 2.9, ''", // HCFC by mass: 3, 30 and 300 kg
    "R-22, 3, 2027-03-10",
    "R-22, 30, 2026-09-10",
    "R-22, 300, 2026-06-10"
  })
  void europeanLawWantsInspectionsByCarbonDioxideEquivalent(
      String refrigerant, double kg, String due) {
    AUnit unit = unit("walk-in-cooler", refrigerant, kg, "kg");
    unit.site = AUnit.site("clean", "DE");
    assertEquals(due, unit.date(TASK, "leak-inspection"));
  }

  @Test
  void aDateOfLawHasNoDaysAfterIt() {
    AUnit unit = unit("walk-in-cooler", "R-404A", 20, "kg");
    unit.site = AUnit.site("clean", "DE");
    Task task = unit.task(TASK).orElseThrow();
    assertEquals(LocalDate.parse("2026-09-10"), task.due());
    assertEquals(task.due(), task.latest());
  }

  // 40 CFR 82.157(d), 84.106(d), from memory: 30 days; the example has 2 March and 1 April 2026
  @Test
  void aLeakRateOverItsThresholdGivesThirtyDays() {
    AUnit unit = AUnit.asOf("2026-03-20").plate("charge", 60, "lb");
    unit.additions.add(new LeakState.Addition(LocalDate.parse("2026-03-02"), 4));
    assertEquals("", unit.date(TASK, "leak-rate-over"));
    unit.leakOver = true;
    assertEquals("2026-04-01", unit.date(TASK, "leak-rate-over"));
    unit.did("2026-03-02", "leak-inspected");
    assertEquals("", unit.date(TASK, "leak-rate-over"), "the leak was looked for");
  }

  @Test
  void aLeakThatNobodyRepairedIsLookedForAgain() {
    AUnit unit = AUnit.asOf("2026-03-20").fault("2026-03-02", "refrigerant-leak");
    assertEquals("", unit.date(TASK, "leak-not-repaired"));
    unit.openLeak = true;
    assertEquals("2026-03-09", unit.date(TASK, "leak-not-repaired"));
  }
}

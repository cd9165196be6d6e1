package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CondenserCleaningTest {

  private static final String TASK = "condenser-coil-cleaning";

  // excess limit 10 °F = 5.5556 K (scoring/limits.csv, common practice); days by hand:
  // (5.5556 − excess) / rate, whole days below
  @ParameterizedTest(name = "{0} K excess growing {1} K a day: due {2}")
  @CsvSource({
    "0, 0.05, 2026-08-20", // 111.1 days
    "3, 0.05, 2026-06-21", // 51.1 days
    "5.5, 0.05, 2026-05-02", // 1.1 days
    "5.6, 0.05, 2026-04-30", // 0.9 days ago
    "8, 0.05, 2026-03-13", // 48.9 days ago
    "30, 0.05, 2026-03-01" // longer ago than the last cleaning
  })
  void aCoilIsDueWhenItsExcessReachesTheLimit(double excess, double rate, String due) {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(excess, rate, "2026-03-01");
    assertEquals(due, unit.date(TASK, "excess-limit"));
  }

  @Test
  void aCoilThatDoesNotFoulNeverReachesTheLimit() {
    assertEquals("", AUnit.asOf("2026-05-01").dirty(2, 0, "2026-03-01").date(TASK, "excess-limit"));
  }

  @Test
  void withNeitherSplitNorCleaningThereIsNoExcessToSpeakOf() {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-03-01", "inspected");
    unit.excessK = 9;
    unit.foulingKPerDay = 0.1;
    assertEquals("", unit.date(TASK, "excess-limit"));
    assertEquals("", unit.date(TASK, "economic-date"));
  }

  @ParameterizedTest(name = "graded {0}: {1}")
  @CsvSource({"light, ''", "moderate, ''", "heavy, 2026-04-10", "blocked, 2026-04-10"})
  void aCoilGradedHeavyOrWorseIsDueAtOnce(String grade, String due) {
    AUnit unit = AUnit.asOf("2026-05-01").graded("2026-04-10", "condenser_coil", grade);
    assertEquals(due, unit.date(TASK, "condenser-coil-" + grade));
  }

  @Test
  void aGradeIsSettledByACleaningOnTheSameVisitOrLater() {
    AUnit same =
        AUnit.asOf("2026-05-01")
            .graded("2026-04-10", "condenser_coil", "heavy", "condenser-coil-cleaned");
    AUnit later =
        AUnit.asOf("2026-05-01")
            .graded("2026-04-10", "condenser_coil", "heavy")
            .did("2026-04-20", "condenser-coil-cleaned");
    assertEquals("", same.date(TASK, "condenser-coil-heavy"));
    assertEquals("", later.date(TASK, "condenser-coil-heavy"));
  }

  // longest interval 365 days, 180 where it is dusty or greasy: scoring/intervals.csv
  @ParameterizedTest(name = "{0} surroundings: due {1}")
  @CsvSource({
    "clean, 2027-03-01",
    "outdoor, 2027-03-01",
    "dusty, 2026-08-28",
    "greasy, 2026-08-28",
    "'', 2027-03-01"
  })
  void noCoilGoesLongerThanTheLongestInterval(String surroundings, String due) {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-03-01", "condenser-coil-cleaned");
    unit.site = AUnit.site(surroundings, "US-VA");
    assertEquals(due, unit.date(TASK, "longest-interval"));
  }

  @Test
  void theEarliestOfTheFourRulesGoverns() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(3, 0.05, "2026-03-01");
    unit.kind = "walk-in-cooler";
    Task task = unit.task(TASK).orElseThrow();
    LocalDate earliest =
        task.reasons().stream().map(TaskReason::date).min(LocalDate::compareTo).orElseThrow();
    assertEquals(earliest, task.due());
    assertEquals(earliest, task.governing().date());
    assertTrue(task.reasons().size() >= 3, () -> task.reasons().toString());
  }

  // Independent computation by hand. Cut-out 62 °C, clean split 15 K, excess 4 K: trips at 43 °C on
  // 1 May, 0.05 K lower each day. Limit 5 K. Design ambient 30 °C in June, 35 °C in July:
  // June: 43 − 0.05·d − 30 < 5 from d = 161, after June. July: 43 − 0.05·d − 35 < 5 from d = 61,
  // that is 1 July (d = 61) on its first day.
  @Test
  void theTripMarginRunsOutInTheFirstMonthThatIsTooHotForTheSplitOfThen() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(4, 0.05, "2026-02-10");
    unit.monthlyDesignC[5] = 30;
    unit.monthlyDesignC[6] = 35;
    assertEquals("2026-07-01", unit.date(TASK, "trip-margin"));
  }

  // As above with 34 °C in July: 43 − 0.05·d − 34 < 5 from d = 81, that is 21 July.
  @Test
  void orOnTheDayWithinAMonthOnWhichTheDirtTakesTheRest() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(4, 0.05, "2026-02-10");
    unit.monthlyDesignC[6] = 34;
    assertEquals("2026-07-21", unit.date(TASK, "trip-margin"));
  }

  // 43 − 20 ambient = 23 K all year; 0.05 K a day takes 18 K in 361 days: 27 April of next year
  @ParameterizedTest(name = "limit {0} K: {1}")
  @CsvSource({"5, 2027-04-27", "4.7, ''"})
  void beyondAYearThereIsNoDate(double limit, String date) {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(4, 0.05, "2026-02-10");
    unit.tripLimitK = limit;
    assertEquals(date, unit.date(TASK, "trip-margin"));
  }

  // 43 °C on 1 May and 0.05 K more each day before: 38.9 + 5 on 13 April (d = −18) was 43.9 and not
  // below; with 39 °C design in April 43.9 is below 44, and before that day it was not
  @Test
  void aMarginThatHasRunOutSaysSinceWhen() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(4, 0.05, "2026-02-10");
    unit.monthlyDesignC[3] = 39;
    assertEquals("2026-04-12", unit.date(TASK, "trip-margin"));
    unit.today = LocalDate.parse("2026-05-21");
    unit.excessK = 5;
    assertEquals("2026-04-12", unit.date(TASK, "trip-margin"), "it does not move with the day");
  }

  // watch limit 5 °F = 2.7778 K: reached after 2.7778/0.05 = 55.6, that is 56 days
  @Test
  void aCleaningIsNotAskedForWhileTheCoilIsStillClean() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(0, 0.05, "2026-05-01");
    java.util.Arrays.fill(unit.monthlyDesignC, 45);
    assertEquals("2026-06-26", unit.date(TASK, "trip-margin"));
  }

  @Test
  void withoutACutOutThereIsNoTripDateAndTheRestGoesOn() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(4, 0.05, "2026-02-10");
    unit.cutOutC = OptionalDouble.empty();
    assertEquals("", unit.date(TASK, "trip-margin"));
    assertTrue(unit.task(TASK).isPresent());
  }

  @Test
  void aCleaningIsANewTask() {
    AUnit before = AUnit.asOf("2026-05-01").dirty(4, 0.05, "2026-03-12");
    AUnit after = AUnit.asOf("2026-05-02").dirty(0, 0.05, "2026-03-12");
    after.did("2026-05-01", "condenser-coil-cleaned");
    assertEquals("u1k-condenser-coil-cleaning-20260312", before.task(TASK).orElseThrow().id());
    assertEquals("u1k-condenser-coil-cleaning-20260501", after.task(TASK).orElseThrow().id());
    assertEquals(
        "u1k-condenser-coil-cleaning-0", AUnit.asOf("2026-05-01").task(TASK).orElseThrow().id());
  }

  // Independent computation: walk-in cooler, 2.0 kW, 14 h a day, 0.128 USD/kWh (the US row,
  // Virginia
  // has none of its own). 15 K over the usual air lies below the table, so its first rows count.
  @Test
  void theEconomicDateIsTheRootOfTwiceTheCostOverTheGrowthAfterTheDirtBegan() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(3, 0.05, "2026-01-01");
    TaskReason reason = unit.reason(TASK, "economic-date").orElseThrow();
    // kW per ton at 90 and 100 °F, midpoint, of scoring/cycle-power.csv: a rise of 10 °F = 5.5556 K
    double penaltyPerK = (1.2134 / 1.0109 - 1) / (10 / 1.8);
    double k = 0.05 * penaltyPerK * 2.0 * 14 * 0.128;
    // 40 minutes at 135 an hour, half a trip of 95, 12 of materials: scoring/costs.csv
    double cost = 90 + 47.5 + 12;
    Quantity undiscounted = (Quantity) reason.reason().inputs().get("undiscounted");
    assertEquals(Math.sqrt(2 * cost / k), undiscounted.value(), 1e-6);
    Quantity interval = (Quantity) reason.reason().inputs().get("interval");
    assertTrue(interval.value() > undiscounted.value());
    // 3 K at 0.05 K a day are 60 days of dirt
    LocalDate since = LocalDate.parse("2026-03-02");
    assertEquals(since.plusDays(Math.round(interval.value())), reason.date());
  }
}

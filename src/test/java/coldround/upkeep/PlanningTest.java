package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Unit;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanningTest {

  private static final LocalDate TODAY = LocalDate.parse("2026-03-02"); // a Monday
  private static final Source SOURCE = new Source("technicians", "T1", "40 hours");

  private static Task task(String unit, String site, String earliest, String due, String latest) {
    return task(unit, site, earliest, due, latest, 60);
  }

  private static Task task(
      String unit, String site, String earliest, String due, String latest, int minutes) {
    Unit plain = new Unit(unit, "C", site, unit, "", "", "", "", "", null, "", "", null, Map.of());
    LocalDate from = LocalDate.parse(earliest);
    LocalDate to = LocalDate.parse(latest);
    LocalDate day = LocalDate.parse(due);
    TaskReason reason = new TaskReason(day, new Reason("test", "a test", Map.of(), SOURCE));
    return new Task(
        unit + "-x-0",
        plain,
        "drain-clearing",
        day,
        from,
        to,
        minutes,
        "",
        1,
        Task.State.of(TODAY, from, to),
        List.of(reason),
        List.of("care"));
  }

  private static List<BundledVisit> visits(Task... tasks) {
    return Rules.UPKEEP.bundling().visits(List.of(tasks), TODAY);
  }

  @ParameterizedTest(name = "a window that begins on {0} and one that ends on 31 March: {1} visits")
  @CsvSource({"2026-03-31, 1", "2026-04-01, 2"})
  void tasksOfASiteAreOneVisitWhenTheirWindowsShareADay(String begins, int count) {
    List<BundledVisit> visits =
        visits(
            task("u1", "S", "2026-03-05", "2026-03-20", "2026-03-31"),
            task("u2", "S", begins, "2026-04-20", "2026-05-10"));
    assertEquals(count, visits.size());
  }

  @Test
  void aVisitSavesTheTripsOfAllButOne() {
    BundledVisit visit =
        visits(
                task("u1", "S", "2026-03-05", "2026-03-20", "2026-03-31"),
                task("u2", "S", "2026-03-25", "2026-04-20", "2026-05-10"),
                task("u3", "S", "2026-03-20", "2026-03-29", "2026-04-10"))
            .get(0);
    assertEquals(2 * 95, visit.saving().value(), 1e-9, "95 a trip: scoring/costs.csv");
    assertEquals(180, visit.minutes());
    assertEquals(LocalDate.parse("2026-03-25"), visit.from());
    assertEquals(LocalDate.parse("2026-03-31"), visit.to());
    assertTrue(visit.reason().text(MeasureSystem.US).contains("3 tasks on 3 units"));
  }

  @Test
  void tasksOfTwoSitesAreTwoVisits() {
    assertEquals(
        2,
        visits(
                task("u1", "S", "2026-03-05", "2026-03-20", "2026-03-31"),
                task("u2", "T", "2026-03-05", "2026-03-20", "2026-03-31"))
            .size());
  }

  @Test
  void anOverdueTaskIsDoneTodayWithWhateverElseMayBe() {
    BundledVisit visit =
        visits(
                task("u1", "S", "2026-01-05", "2026-01-20", "2026-01-31"),
                task("u2", "S", "2026-02-05", "2026-03-20", "2026-03-31"))
            .get(0);
    assertEquals(TODAY, visit.to());
    assertEquals(2, visit.tasks().size());
  }

  private static Levelling.Level level(int capacity, Task... tasks) {
    return Levelling.level(List.of(tasks), TODAY, capacity, SOURCE);
  }

  @Test
  void aWeekWithinItsCapacityStaysAsItIs() {
    Task one = task("u1", "S", "2026-03-02", "2026-03-25", "2026-04-10");
    Task other = task("u2", "S", "2026-03-02", "2026-03-26", "2026-04-10");
    assertEquals(List.of(one, other), level(120, one, other).tasks());
  }

  @Test
  void aWeekOverCapacityMovesItsMostMovableTaskToTheNearestEarlierWeekWithRoom() {
    Task fixed = task("u1", "S", "2026-03-23", "2026-03-25", "2026-04-10");
    Task movable = task("u2", "S", "2026-03-02", "2026-03-26", "2026-04-10");
    Task before = task("u3", "S", "2026-03-16", "2026-03-18", "2026-04-10", 110);
    Levelling.Level level = level(119, fixed, movable, before);
    Task moved = level.tasks().get(0);
    assertEquals("u2-x-0", moved.id());
    assertEquals(LocalDate.parse("2026-03-13"), moved.due(), "the week of the 16th is full");
    assertEquals("week-over-capacity", moved.governing().reason().code());
    assertEquals(LocalDate.parse("2026-04-10"), moved.latest());
    assertEquals(Map.of(), level.over());
  }

  @Test
  void whatCannotBeMovedIsToldAndStays() {
    Task one = task("u1", "S", "2026-03-23", "2026-03-25", "2026-04-10");
    Task other = task("u2", "S", "2026-03-23", "2026-03-26", "2026-04-10");
    Levelling.Level level = level(100, one, other);
    assertEquals(List.of(one, other), level.tasks());
    assertEquals(Map.of(LocalDate.parse("2026-03-23"), 20), level.over());
  }

  @Test
  void noTaskIsLostMovedLaterOrBeforeItsWindow() {
    List<Task> tasks = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      LocalDate due = TODAY.plusDays(20 + i % 25);
      LocalDate earliest = due.minusDays(i % 40);
      tasks.add(
          task("u" + i, "S", earliest.toString(), due.toString(), due.plusDays(9).toString()));
    }
    Levelling.Level level = Levelling.level(tasks, TODAY, 600, SOURCE);
    assertEquals(60, level.tasks().size());
    assertTrue(level.tasks().stream().anyMatch(task -> task.reasons().size() == 2));
    for (Task task : level.tasks()) {
      Task was = tasks.stream().filter(t -> t.id().equals(task.id())).findFirst().orElseThrow();
      assertFalse(task.due().isAfter(was.due()));
      assertFalse(task.due().isBefore(was.earliest()));
      assertEquals(was.latest(), task.latest());
    }
  }

  @Test
  void aCapacityOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> level(0));
  }

  private static Task cleaning(AUnit unit) {
    List<Task> tasks = Rules.UPKEEP.season().pulled(unit.tasks(), unit.assessment(), unit.today);
    return tasks.stream()
        .filter(task -> task.task().equals("condenser-coil-cleaning"))
        .findFirst()
        .orElseThrow();
  }

  // excess limit 5.5556 K; 1 K growing 0.03 K a day from 15 March is reached after 151 days
  private static AUnit dueInSummer(String cleaned) {
    AUnit unit = AUnit.asOf("2026-03-15").dirty(1, 0.03, cleaned);
    for (int month : List.of(5, 6, 7)) {
      unit.monthlyDesignC[month] = 32;
    }
    return unit;
  }

  @Test
  void aCleaningThatFallsDueInTheHotMonthsIsPulledBeforeThem() {
    Task pulled = cleaning(dueInSummer("2026-02-10"));
    assertEquals(LocalDate.parse("2026-05-31"), pulled.due());
    assertEquals("before-hot-months", pulled.governing().reason().code());
  }

  @Test
  void notOneThatWasDoneInTheWeeksBefore() {
    AUnit unit = dueInSummer("2026-04-25");
    unit.today = LocalDate.parse("2026-05-10");
    Task task = cleaning(unit);
    assertFalse(task.governing().reason().code().equals("before-hot-months"));
  }

  @Test
  void norWhereTheHotMonthsHaveBegun() {
    AUnit unit = dueInSummer("2026-02-10");
    unit.today = LocalDate.parse("2026-06-02");
    assertFalse(cleaning(unit).governing().reason().code().equals("before-hot-months"));
  }

  @Test
  void norWhereItIsAsWarmAllYear() {
    AUnit unit = dueInSummer("2026-02-10");
    java.util.Arrays.fill(unit.monthlyDesignC, 32);
    assertFalse(cleaning(unit).governing().reason().code().equals("before-hot-months"));
  }

  @Test
  void theSavingIsInTheCurrencyOfTheCosts() {
    Quantity saving =
        visits(task("u1", "S", "2026-03-05", "2026-03-20", "2026-03-31")).get(0).saving();
    assertEquals(Quantity.of(0, "USD"), saving);
  }
}

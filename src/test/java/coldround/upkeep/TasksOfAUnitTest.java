package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Site;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TasksOfAUnitTest {

  @Test
  void aRetiredUnitHasNoTasks() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(20, 0.1, "2026-01-01");
    unit.retired = LocalDate.parse("2026-05-01");
    assertEquals(List.of(), unit.tasks());
    unit.retired = LocalDate.parse("2026-05-02");
    assertFalse(unit.tasks().isEmpty(), "it is in use until then");
  }

  @Test
  void aUnitOfUnknownKindGetsTheTasksOfEveryKindAndASurveyThatSaysWhy() {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-04-01", "inspected");
    unit.kind = "ice-cream-van";
    assertTrue(unit.task("condenser-coil-cleaning").isPresent());
    assertTrue(unit.task("door-inspection").isEmpty());
    String text = text(unit.reason("survey", "too-little-known").orElseThrow());
    assertTrue(text.contains("kind of unit"), text);
  }

  @Test
  void aSiteWithoutCoordinatesOrDesignAmbientIsNamedInTheSurveyAndTheRestGoesOn() {
    AUnit unit = AUnit.asOf("2026-05-01");
    unit.site = new Site("C", "S", "Site", "", null, null, null, null, "", "", "", null);
    unit.installed = null;
    unit.refrigerant = "";
    unit.cutOutC = OptionalDouble.empty();
    String text = text(unit.reason("survey", "too-little-known").orElseThrow());
    assertTrue(text.contains("coordinates"), text);
    assertTrue(text.contains("refrigerant"), text);
    assertTrue(unit.tasks().size() > 5);
  }

  @Test
  void aWellKnownUnitWantsNoSurvey() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(1, 0.05, "2026-04-01");
    assertTrue(unit.task("survey").isEmpty());
  }

  @ParameterizedTest(name = "last visit {0}: survey {1}")
  @CsvSource({"2025-05-01, ''", "2025-04-30, 2026-04-30", "2024-01-01, 2024-12-31"})
  void aUnitThatNobodyVisitedForAYearWantsASurvey(String last, String due) {
    AUnit unit = AUnit.asOf("2026-05-01").did(last, "condenser-coil-cleaned");
    assertEquals(due, unit.date("survey", "too-little-known"));
  }

  @ParameterizedTest(name = "completeness {0}: {1}")
  @CsvSource({"0.5, ''", "0.49, 2026-05-01"})
  void thinEvidenceWantsASurvey(double completeness, String due) {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-04-01", "inspected");
    unit.completeness = completeness;
    assertEquals(due, unit.date("survey", "too-little-known"));
  }

  @Test
  void workIsCountedFromTheLastTimeItWasDone() {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-03-01", "drain-cleared");
    assertEquals("2026-08-28", unit.date("drain-clearing", "usual-interval"));
  }

  @Test
  void orFromTheFirstVisitWhereItWasNeverDone() {
    AUnit unit =
        AUnit.asOf("2026-05-01").did("2025-06-01", "inspected").did("2026-04-01", "inspected");
    assertEquals("2025-11-28", unit.date("drain-clearing", "usual-interval"));
    Task task = unit.task("drain-clearing").orElseThrow();
    assertEquals(Task.State.OVERDUE, task.state());
    assertTrue(text(task.governing()).contains("Not on record since 2025-06-01"));
  }

  @Test
  void orFromTheInstallationOfAUnitPutInSince() {
    AUnit unit = AUnit.asOf("2026-05-01");
    unit.installed = LocalDate.parse("2026-04-01");
    assertEquals("2026-09-28", unit.date("drain-clearing", "usual-interval"));
  }

  @Test
  void elseItIsDueSoonAndSaysThatNothingIsOnRecord() {
    AUnit old = AUnit.asOf("2026-05-01");
    assertEquals("2026-05-15", old.date("drain-clearing", "nothing-on-record"));
    AUnit unknown = AUnit.asOf("2026-05-01");
    unknown.installed = null;
    assertEquals("2026-05-15", unknown.date("drain-clearing", "nothing-on-record"));
    assertEquals("2026-05-15", unknown.date("condenser-coil-cleaning", "nothing-on-record"));
  }

  @ParameterizedTest(name = "on {0} it is {1}")
  @CsvSource({
    "2026-07-28, PLANNED",
    "2026-07-29, DUE",
    "2026-08-28, DUE",
    "2026-09-27, DUE",
    "2026-09-28, OVERDUE"
  })
  void aTaskIsPlannedDueOrOverdueByItsWindow(String today, Task.State state) {
    AUnit unit = AUnit.asOf(today).did("2026-03-01", "drain-cleared");
    assertEquals(state, unit.task("drain-clearing").orElseThrow().state());
  }

  @Test
  void theWindowEndsWithTheLongestInterval() {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-03-01", "condenser-coil-cleaned");
    Task task = unit.task("condenser-coil-cleaning").orElseThrow();
    assertEquals(LocalDate.parse("2027-03-01"), task.due());
    assertEquals(task.due(), task.latest());
  }

  @Test
  void aNewBoxReadingMovesOnlyTheThermostatCheck() {
    AUnit unit =
        AUnit.asOf("2026-05-01")
            .dirty(3, 0.05, "2026-02-01")
            .graded("2026-02-01", "door", "good")
            .did("2026-02-01", "inspected");
    Map<String, LocalDate> before = dates(unit);
    unit.read("2026-04-30", "box", 44, "degF");
    Map<String, LocalDate> after = dates(unit);
    assertFalse(before.get("thermostat-check").equals(after.get("thermostat-check")));
    before.remove("thermostat-check");
    after.remove("thermostat-check");
    assertEquals(before, after);
  }

  @Test
  void datesAndIdsStayAsDaysGoBy() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(3, 0.05, "2026-02-01");
    unit.did("2026-02-01", "inspected").monthlyDesignC[6] = 36;
    List<String> ids = unit.tasks().stream().map(Task::id).sorted().toList();
    Map<String, LocalDate> dates = dates(unit);
    unit.today = LocalDate.parse("2026-05-11");
    unit.excessK = 3.5;
    assertEquals(ids, unit.tasks().stream().map(Task::id).sorted().toList());
    assertEquals(dates, dates(unit));
  }

  private static Map<String, LocalDate> dates(AUnit unit) {
    Map<String, LocalDate> dates = new TreeMap<>();
    unit.tasks().forEach(task -> dates.put(task.task(), task.due()));
    return dates;
  }

  @Test
  void everyTaskTellsWhatItIsWorthInMoneyAndInParts() {
    AUnit unit = AUnit.asOf("2026-05-01").dirty(6, 0.05, "2026-02-01");
    Task task = unit.task("condenser-coil-cleaning").orElseThrow();
    Map<String, Object> inputs = task.governing().reason().inputs();
    double sum =
        ((Quantity) inputs.get("breakdownsAvoided")).value()
            + ((Quantity) inputs.get("electricitySaved")).value()
            + ((Quantity) inputs.get("refrigerantSaved")).value();
    assertEquals(sum / task.minutes(), task.priority(), 1e-9);
    assertTrue(sum > 0);
    assertEquals("90 days", inputs.get("savedOver").toString());
  }

  // by hand: 0.5 faults a year, 5 % of them blocked drains (scoring/failure-modes.csv), 80 %
  // prevented, 90 of 365 days, 350 for a call and one in twenty loses goods of 1500
  @Test
  void anExpectedFaultIsCountedAtItsCostAndChance() {
    AUnit unit = AUnit.asOf("2026-05-01").did("2026-02-01", "drain-cleared");
    double expected = 0.5 * 0.05 * 0.8 * 90 / 365 * (350 + 0.05 * 1500);
    double perMinute = expected / 20;
    assertEquals(perMinute, unit.task("drain-clearing").orElseThrow().priority(), 1e-9);
  }

  @Test
  void aDirtierCoilIsWorthMore() {
    double clean = priority(AUnit.asOf("2026-05-01").dirty(0, 0.05, "2026-02-01"));
    double dirty = priority(AUnit.asOf("2026-05-01").dirty(6, 0.05, "2026-02-01"));
    assertTrue(dirty > clean, dirty + " " + clean);
  }

  private static double priority(AUnit unit) {
    return unit.task("condenser-coil-cleaning").orElseThrow().priority();
  }

  @Test
  void cautionsComeFromTheTaskTheGasAndThePlace() {
    AUnit unit = AUnit.asOf("2026-05-01");
    unit.refrigerant = "R-290";
    unit.place = "roof";
    String cautions =
        String.join(" ", unit.task("condenser-coil-cleaning").orElseThrow().cautions());
    assertTrue(cautions.contains("Coil cleaner"), cautions);
    assertTrue(cautions.contains("Highly flammable"), cautions);
    assertTrue(cautions.contains("Work at height"), cautions);
    assertFalse(cautions.contains("Poisonous"), cautions);
  }

  @Test
  void everyReasonReadsAsASentenceInBothMeasures() {
    AUnit unit =
        AUnit.asOf("2026-05-01")
            .plate("box_setpoint", 45, "degF")
            .dirty(6, 0.05, "2026-02-01")
            .fan("condenser_fan", 0.5, 0.84, "2026-02-01")
            .read("2026-02-01", "box", 50, "degF")
            .cameBack("2026-02-02", "refrigerant-leak", "2026-01-20");
    unit.openLeak = true;
    unit.completeness = 0.2;
    for (Task task : unit.tasks()) {
      for (TaskReason reason : task.reasons()) {
        for (MeasureSystem system : MeasureSystem.values()) {
          String text = reason.reason().text(system);
          assertFalse(text.contains("{"), text);
          assertFalse(reason.reason().source().toString().isBlank());
        }
      }
    }
  }

  private static String text(TaskReason reason) {
    return reason.reason().text(MeasureSystem.US);
  }
}

package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.fleet.Unit;
import coldround.reason.Reason;
import coldround.reason.Source;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Who waits when there is more work than time. */
class WorkloadTest {

  private static final LocalDate TODAY = LocalDate.parse("2026-03-04"); // a Wednesday

  private static Task task(String id, String due, int minutes, double priority) {
    LocalDate day = LocalDate.parse(due);
    Source source = new Source("test.csv", "row", "the test");
    return new Task(
        id,
        new Unit(id, "C", "S", id, "", "", "", "", "", null, "", "", null, Map.of()),
        "drain-clearing",
        day,
        day,
        day,
        minutes,
        "",
        priority,
        Task.State.DUE,
        List.of(new TaskReason(day, new Reason("test", "test", Map.of(), source))),
        List.of());
  }

  @Test
  void whatSavesMostGoesFirstAndTheRestWaitsForTheNextWeek() {
    Map<String, LocalDate> days =
        Workload.days(
            List.of(
                task("low", "2026-03-10", 60, 1),
                task("high", "2026-03-12", 60, 2),
                task("overdue", "2026-01-10", 60, 0)),
            TODAY,
            100);
    assertEquals(
        Map.of(
            "overdue", TODAY,
            "high", LocalDate.parse("2026-03-12"),
            "low", LocalDate.parse("2026-03-16")),
        days);
  }

  @Test
  void aTaskLongerThanAWeekTakesFromTheWeeksAfter() {
    Map<String, LocalDate> days =
        Workload.days(
            List.of(task("long", "2026-03-04", 250, 2), task("next", "2026-03-04", 50, 1)),
            TODAY,
            100);
    // 100 of the first week, 100 of the second and 50 of the third, which has 50 left
    assertEquals(LocalDate.parse("2026-03-16"), days.get("next"));
  }

  @Test
  void whatNobodyGetsToWithinAYearHasNoDay() {
    List<Task> much =
        java.util.stream.IntStream.range(0, 60)
            .mapToObj(i -> task("t" + i, "2026-03-04", 100, i))
            .toList();
    Map<String, LocalDate> days = Workload.days(much, TODAY, 100);
    assertEquals(53, days.size());
    assertEquals(TODAY, days.get("t59"));
  }
}

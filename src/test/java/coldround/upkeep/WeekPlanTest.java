package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitHistory;
import coldround.reason.Source;
import coldround.upkeep.WeekPlan.Capacity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class WeekPlanTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 4);
  private static final Source SOURCE = new Source("technicians", "all", "test");

  private static List<Task> demo() {
    List<Task> tasks = new ArrayList<>();
    for (UnitHistory history : DemoFleet.read()) {
      tasks.addAll(Rules.UPKEEP.tasks(Rules.SCORING.assess(history, DAY), DAY));
    }
    return tasks;
  }

  @Test
  void everyTaskOfTheWeeksStandsInExactlyOneOfThem() {
    List<Task> tasks = demo();
    WeekPlan plan = WeekPlan.of(tasks, DAY, new Capacity(1_000_000, SOURCE), 2000);
    assertEquals(LocalDate.of(2026, 3, 2), plan.weeks().get(0).monday());
    List<String> ids =
        plan.weeks().stream().flatMap(w -> w.tasks().stream()).map(Task::id).sorted().toList();
    assertEquals(tasks.stream().map(Task::id).sorted().toList(), ids);
    assertEquals(0, plan.moved());
    assertEquals(0, plan.minutesOver());
  }

  @Test
  void whatDoesNotFitIsMovedOrCounted() {
    // the fullest week but the first, where overdue work cannot be moved, is made a little too full
    WeekPlan free = WeekPlan.of(demo(), DAY, new Capacity(1_000_000, SOURCE), 52);
    int fullest =
        free.weeks().stream().skip(1).mapToInt(WeekPlan.Week::minutes).max().orElseThrow();
    List<Task> level = Levelling.level(demo(), DAY, fullest - 1, SOURCE).tasks();
    WeekPlan plan = WeekPlan.of(level, DAY, new Capacity(fullest - 1, SOURCE), 52);
    assertTrue(plan.moved() > 0, "tasks moved");
    int over =
        plan.weeks().stream()
            .filter(WeekPlan.Week::over)
            .mapToInt(week -> week.minutes() - week.capacity())
            .sum();
    assertEquals(over, plan.minutesOver());
    for (WeekPlan.Week week : plan.weeks()) {
      assertEquals(week.minutes(), week.tasks().stream().mapToInt(Task::minutes).sum());
    }
  }

  @Test
  void oneTechnicianHasTheWeekOfTheTable() {
    // 30 h of upkeep-limits.csv
    assertEquals(1800, Rules.UPKEEP.capacity(1).minutes());
    assertEquals(9000, Rules.UPKEEP.capacity(5).minutes());
    assertFalse(Rules.UPKEEP.capacity(1).source().toString().isEmpty());
  }
}

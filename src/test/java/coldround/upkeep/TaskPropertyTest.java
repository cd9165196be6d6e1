package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitHistory;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Assessment;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class TaskPropertyTest {

  private static List<Task> tasks(UnitHistory history, LocalDate asOf) {
    Assessment assessment = Rules.SCORING.assess(history, asOf);
    return Rules.UPKEEP.tasks(assessment, asOf);
  }

  @Property
  void whateverIsOnRecordTheTasksCanBeTold(@ForAll long seed) {
    UnitHistory history = RandomFleet.history(seed);
    List<Task> tasks = tasks(history, RandomFleet.TODAY);
    assertEquals(history.unit().inUse(RandomFleet.TODAY), !tasks.isEmpty());
    Set<String> ids = new HashSet<>();
    for (Task task : tasks) {
      assertTrue(ids.add(task.id()), "twice: " + task.id());
      assertEquals(task.due(), task.governing().date());
      assertTrue(Double.isFinite(task.priority()) && task.priority() >= 0, task.id());
      assertFalse(task.cautions().isEmpty());
      task.reasons().forEach(reason -> reason.reason().text(MeasureSystem.SI));
    }
  }

  @Property
  void theSameRecordGivesTheSameTasks(@ForAll long seed) {
    UnitHistory history = RandomFleet.history(seed);
    assertEquals(tasks(history, RandomFleet.TODAY), tasks(history, RandomFleet.TODAY));
  }

  @Property
  void idsStayWhileNothingIsDone(@ForAll long seed) {
    // records dated ahead would become known meanwhile, and something would be done
    UnitHistory history = RandomFleet.history(seed).asOf(RandomFleet.TODAY);
    LocalDate later = RandomFleet.TODAY.plusDays(20);
    if (history.unit().inUse(later)) {
      Set<String> kept = ids(tasks(history, RandomFleet.TODAY));
      Set<String> now = ids(tasks(history, later));
      Set<String> gone = new HashSet<>(kept);
      gone.removeAll(now);
      // weeks without a fault are evidence as well, and may be all that a survey was to bring
      if (completeness(history, later) > completeness(history, RandomFleet.TODAY)) {
        gone.removeIf(id -> id.contains("-survey-"));
      }
      assertEquals(Set.of(), gone);
    }
  }

  @Example
  void timeAloneMayBringTheEvidenceThatASurveyWasFor() {
    UnitHistory history = RandomFleet.history(-2146).asOf(RandomFleet.TODAY);
    assertTrue(ids(tasks(history, RandomFleet.TODAY)).contains("u26-survey-0"));
    assertFalse(ids(tasks(history, RandomFleet.TODAY.plusDays(20))).contains("u26-survey-0"));
    idsStayWhileNothingIsDone(-2146);
  }

  private static double completeness(UnitHistory history, LocalDate asOf) {
    return Rules.SCORING.assess(history, asOf).condition().completeness();
  }

  private static Set<String> ids(List<Task> tasks) {
    return tasks.stream().map(Task::id).collect(Collectors.toSet());
  }
}

package coldround.upkeep.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Site;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.scoring.Scoring;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Works out tasks with their reasons, which the stored list does not hold. */
@ApplicationScoped
class TasksOfToday {

  /** A task and where it is to be done. */
  record Placed(Task task, Site site) {}

  private final Fleet fleet;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final Today today;

  @Inject
  TasksOfToday(Fleet fleet, Scoring scoring, Upkeep upkeep, Today today) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.today = today;
  }

  /** By id, all tasks of these units. */
  Map<String, Placed> of(Collection<String> unitIds) {
    Map<String, Placed> tasks = new HashMap<>();
    fleet.eachHistory(
        unitIds.stream().distinct().toList(),
        history ->
            on(history, today.at(history.site()))
                .forEach(task -> tasks.put(task.id(), new Placed(task, history.site()))));
    return tasks;
  }

  /** Those of one unit as they could be known on a day. */
  List<Task> on(UnitHistory history, LocalDate day) {
    return history.unit().inUse(day) ? upkeep.tasks(scoring.assess(history, day), day) : List.of();
  }
}

package coldround.upkeep.edge;

import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Site;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringOnDay;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Arrangements;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Works out tasks with their reasons, which the stored list does not hold. */
@ApplicationScoped
class TasksOfToday {

  /** A task and where it is to be done. */
  record Placed(Task task, Site site) {}

  private final Fleet fleet;
  private final ScoringOnDay scoring;
  private final Upkeep upkeep;
  private final ArrangementList arrangements;
  private final Today today;

  @Inject
  TasksOfToday(
      Fleet fleet, ScoringOnDay scoring, Upkeep upkeep, ArrangementList arrangements, Today today) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.arrangements = arrangements;
    this.today = today;
  }

  /** By id, all tasks of these units as they are planned today. */
  Map<String, Placed> of(Collection<String> unitIds) {
    List<String> ids = unitIds.stream().distinct().toList();
    Arrangements arranged = arrangements.of(ids);
    Map<String, Placed> tasks = new HashMap<>();
    fleet.each(
        ids,
        history ->
            planned(history, arranged).stream()
                .map(task -> new Placed(task, history.site()))
                .toList(),
        placed -> placed.forEach(each -> tasks.put(each.task().id(), each)));
    return tasks;
  }

  private List<Task> planned(UnitHistory history, Arrangements arranged) {
    LocalDate day = today.at(history.site());
    return tasks(scoring.on(day, day), history, day, arranged);
  }

  /**
   * Those of units as they could be known on a day. What is booked and moved now says nothing of
   * another day than today.
   */
  void on(LocalDate day, FleetFilter filter, Consumer<List<Task>> each) {
    Scoring then = scoring.on(day, today.usually());
    fleet.eachHistory(
        filter,
        history ->
            each.accept(
                day.equals(today.at(history.site()))
                    ? planned(history, arrangements.of(List.of(history.unit().id())))
                    : tasks(then, history, day, Arrangements.NONE)));
  }

  private List<Task> tasks(
      Scoring then, UnitHistory history, LocalDate day, Arrangements arranged) {
    return history.unit().inUse(day)
        ? upkeep.plan(then.assess(history, day), day, arranged)
        : List.of();
  }
}

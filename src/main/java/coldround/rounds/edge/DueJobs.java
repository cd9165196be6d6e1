package coldround.rounds.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.Refrigerants;
import coldround.rounds.Figure;
import coldround.rounds.Job;
import coldround.rounds.RoundRules;
import coldround.rounds.Why;
import coldround.scoring.Scoring;
import coldround.upkeep.Task;
import coldround.upkeep.TaskKind;
import coldround.upkeep.TaskList;
import coldround.upkeep.TaskReason;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Upkeep tasks whose window has begun, as jobs of rounds. */
@ApplicationScoped
class DueJobs {

  private static final int PAGE = 500;

  private final Fleet fleet;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final TaskList open;
  private final Refrigerants refrigerants;
  private final RoundRules rules;
  private final Today today;

  @Inject
  DueJobs(
      Fleet fleet,
      Scoring scoring,
      Upkeep upkeep,
      TaskList open,
      Refrigerants refrigerants,
      RoundRules rules,
      Today today) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.open = open;
    this.refrigerants = refrigerants;
    this.rules = rules;
    this.today = today;
  }

  /**
   * @param customers codes; none for all
   * @param to last day on which work may be done
   */
  List<Job> jobs(List<String> customers, LocalDate to) {
    Set<String> units = new LinkedHashSet<>();
    for (String customer : customers.isEmpty() ? List.of("") : customers) {
      units(customer, to, units);
    }
    List<Job> jobs = new ArrayList<>();
    fleet.eachHistory(units, history -> jobs(history, to, jobs));
    jobs.sort(Comparator.comparing(Job::due).thenComparing(Job::task));
    return jobs;
  }

  /** A window begins before the due date, so later due dates are asked for too. */
  private void units(String customer, LocalDate to, Set<String> units) {
    int before = upkeep.catalogue().all().stream().mapToInt(TaskKind::daysBefore).max().orElse(0);
    TaskList.Search search = new TaskList.Search(null, to.plusDays(before), customer, "", "");
    TaskList.Entry last = null;
    List<TaskList.Entry> page;
    do {
      page = open.entries(search, last, PAGE);
      page.forEach(entry -> units.add(entry.unitId()));
      last = page.isEmpty() ? null : page.get(page.size() - 1);
    } while (page.size() == PAGE);
  }

  private void jobs(UnitHistory history, LocalDate to, List<Job> jobs) {
    LocalDate asOf = today.at(history.site());
    if (history.unit().inUse(asOf)) {
      for (Task task : upkeep.tasks(scoring.assess(history, asOf), asOf)) {
        if (!task.earliest().isAfter(to)) {
          jobs.add(job(task));
        }
      }
    }
  }

  private Job job(Task task) {
    double saved = Math.max(0, task.priority()) * task.minutes();
    return new Job(
        task.id(),
        task.unit().customer() + "/" + task.unit().site(),
        task.unit().id(),
        task.unit().tag(),
        task.task(),
        task.minutes(),
        competences(task.skill(), task.unit().refrigerant()),
        task.earliest(),
        task.due(),
        task.latest(),
        lawful(task),
        saved / rules.days(Figure.WORTH_SPAN),
        whys(task));
  }

  private LocalDate lawful(Task task) {
    return task.reasons().stream()
        .filter(reason -> rules.lawful(reason.reason().code()))
        .map(TaskReason::date)
        .min(Comparator.naturalOrder())
        .orElse(null);
  }

  private static List<Why> whys(Task task) {
    List<Why> whys = new ArrayList<>();
    for (TaskReason reason : task.reasons()) {
      whys.add(Why.of(reason.reason(), whys.isEmpty(), reason.date()));
    }
    return whys;
  }

  /**
   * What somebody must be able to do for work that needs a skill, on a unit of that refrigerant.
   */
  Set<String> competences(String skill, String refrigerant) {
    Optional<Refrigerant> gas = refrigerants.find(refrigerant);
    return rules.competences(
        skill,
        gas.map(Refrigerant::designation).orElse(""),
        gas.map(Refrigerant::safetyGroup).orElse(""));
  }
}

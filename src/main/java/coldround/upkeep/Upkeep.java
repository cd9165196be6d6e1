package coldround.upkeep;

import coldround.fleet.Unit;
import coldround.reason.Source;
import coldround.refrigerant.LeakInspections;
import coldround.refrigerant.Refrigerants;
import coldround.refrigerant.UnitCategories;
import coldround.scoring.Assessment;
import coldround.scoring.ScoringRules;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The upkeep tasks of a unit. Every rule that has something to say of a task gives a date and a
 * reason; the earliest date is the due date, and its reason governs.
 */
public final class Upkeep {

  private static final List<UpkeepRule> RULES =
      List.of(
          new TripMarginRule(),
          new ExcessLimitRule(),
          new EconomicDateRule(),
          new LongestIntervalRule(),
          new LegalLeakRule(),
          new LeakRateRule(),
          new OpenLeakRule(),
          new FindingRule(),
          new FaultRule(),
          new WorkRule(),
          new SignRule(),
          new FanLoadRule(),
          new ImbalanceRule(),
          new CompressorAmpsRule(),
          new CutOutRule(),
          new BoxTemperatureRule(),
          new FollowUpRule(),
          new SurveyRule(),
          new IntervalRule());
  private static final Comparator<Ask> BY_DATE = Comparator.comparing(ask -> ask.reason().date());
  private static final Comparator<Task> BY_DUE =
      Comparator.comparing(Task::due).thenComparing(Task::id);

  private final UpkeepTables tables;
  private final TaskCautions cautions;

  private Upkeep(UpkeepTables tables) {
    this.tables = tables;
    this.cautions = new TaskCautions(tables);
  }

  /** Reads the tables of upkeep; problems are left with the tables. */
  public static Upkeep load(
      RuleTables tables,
      ScoringRules rules,
      Refrigerants refrigerants,
      LeakInspections inspections,
      UnitCategories categories) {
    return new Upkeep(UpkeepTables.load(tables, rules, refrigerants, inspections, categories));
  }

  public TaskCatalogue catalogue() {
    return tables.catalogue();
  }

  public Costs costs() {
    return tables.costs();
  }

  /** Pulls cleanings together before the hot months. */
  public Season season() {
    return new Season(tables);
  }

  /** Offers tasks of a site as one visit. */
  public Bundling bundling() {
    return new Bundling(tables.costs());
  }

  /** What that many technicians can do on units in a week. */
  public WeekPlan.Capacity capacity(int technicians) {
    double days = tables.limits().value(UpkeepLimit.TECHNICIAN_WEEK);
    int minutes = (int) Math.round(days * 24 * 60 * technicians);
    return new WeekPlan.Capacity(minutes, tables.limits().source(UpkeepLimit.TECHNICIAN_WEEK));
  }

  /** The row by which the box temperature of a unit is judged; empty where nothing is known. */
  public Optional<Source> boxRule(Unit unit) {
    return tables
        .boxes()
        .find(unit.kind())
        .map(BoxLimits.BoxLimit::source)
        .or(
            () ->
                unit.plate("box_setpoint")
                    .map(set -> tables.limits().source(UpkeepLimit.BOX_OFF_SETPOINT)));
  }

  UpkeepTables tables() {
    return tables;
  }

  /**
   * The open tasks of a unit by due date; none for a unit that is retired.
   *
   * @param asOf day on which the tasks stand as their state says, usually that of the assessment
   */
  public List<Task> tasks(Assessment assessment, LocalDate asOf) {
    Unit unit = assessment.history().unit();
    if (!unit.inUse(asOf)) {
      return List.of();
    }
    UnitCase unitCase = new UnitCase(assessment, tables);
    Map<String, List<Ask>> asked = new LinkedHashMap<>();
    for (UpkeepRule rule : RULES) {
      for (Ask ask : rule.asks(unitCase)) {
        asked.computeIfAbsent(ask.task(), task -> new ArrayList<>(4)).add(ask);
      }
    }
    Map<String, List<String>> beware = cautions.of(unit, assessment.supply().refrigerant());
    List<Task> tasks = new ArrayList<>(asked.size());
    asked.forEach(
        (code, asks) -> {
          TaskKind kind = tables.catalogue().get(code);
          if (unitCase.has(kind)) {
            tasks.add(task(unitCase, kind, asks, beware.get(code), asOf));
          }
        });
    tasks.sort(BY_DUE);
    return List.copyOf(tasks);
  }

  /**
   * The open tasks of a unit as they are planned: those of the season before the hot months, and
   * each on the day that is arranged for it.
   */
  public List<Task> plan(Assessment assessment, LocalDate asOf, Arrangements arrangements) {
    Arranging arranging = new Arranging(tables, arrangements, asOf);
    List<Task> tasks = new ArrayList<>();
    for (Task task : season().pulled(tasks(assessment, asOf), assessment, asOf)) {
      tasks.add(arranging.arranged(task));
    }
    tasks.sort(BY_DUE);
    return List.copyOf(tasks);
  }

  private static Task task(
      UnitCase unit, TaskKind kind, List<Ask> asks, List<String> cautions, LocalDate asOf) {
    asks.sort(BY_DATE);
    LocalDate due = asks.get(0).reason().date();
    LocalDate earliest = due.minusDays(kind.daysBefore());
    LocalDate latest = latest(due.plusDays(kind.daysAfter()), due, asks);
    Worth worth = Worths.of(unit, kind.code(), asks);
    return new Task(
        id(unit, kind),
        unit.unit(),
        kind.code(),
        due,
        earliest,
        latest,
        kind.minutes(),
        kind.skill(),
        worth.perMinute(kind.minutes()),
        Task.State.of(asOf, earliest, latest),
        reasons(asks, worth),
        cautions);
  }

  private static LocalDate latest(LocalDate usual, LocalDate due, List<Ask> asks) {
    LocalDate latest = usual;
    for (Ask ask : asks) {
      LocalDate strict = ask.notAfter();
      if (strict != null && strict.isBefore(latest)) {
        latest = strict;
      }
    }
    return latest.isBefore(due) ? due : latest;
  }

  private static String id(UnitCase unit, TaskKind kind) {
    LocalDate done = unit.record().done(kind);
    // the day as BASIC_ISO_DATE writes it, which would cost as much as all the rest of the task
    int since =
        done == null
            ? 0
            : done.getYear() * 10_000 + done.getMonthValue() * 100 + done.getDayOfMonth();
    return unit.unit().id() + "-" + kind.code() + "-" + since;
  }

  /** The reasons by date, the first with the parts of what the task is worth. */
  private static List<TaskReason> reasons(List<Ask> asks, Worth worth) {
    List<TaskReason> reasons = new ArrayList<>(asks.size());
    for (Ask ask : asks) {
      reasons.add(reasons.isEmpty() ? ask.reason().with(worth) : ask.reason());
    }
    return reasons;
  }
}

package coldround.upkeep;

import coldround.fleet.UnitHistory;
import coldround.reason.Source;
import coldround.scoring.Assessment;
import coldround.scoring.Scoring;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** What a change would do to the coming twelve months of a fleet. */
public final class WhatIf {

  private static final String LOCKOUT = "high-head-lockout";

  /**
   * A change to look at.
   *
   * @param asOf day on which the twelve months begin; nothing is done from now until then
   * @param hotterK added to every design ambient
   * @param skipCleanings true when no condenser is cleaned in those months
   * @param technicians how many times as many there are, above 0
   */
  public record Change(LocalDate asOf, double hotterK, boolean skipCleanings, double technicians) {
    public Change {
      if (!(technicians > 0) || !Double.isFinite(hotterK)) {
        throw new IllegalArgumentException(
            "technicians must be above 0 and the heat a number, not "
                + technicians
                + " and "
                + hotterK);
      }
    }

    /** No change: the plan as it stands. */
    public static Change none(LocalDate asOf) {
      return new Change(asOf, 0, false, 1);
    }
  }

  private final Scoring scoring;
  private final Upkeep upkeep;
  private final int minutesPerWeek;
  private final Source capacity;

  /**
   * @param minutesPerWeek work that the technicians there are can do in a week
   * @param capacity where that figure comes from
   */
  public WhatIf(Scoring scoring, Upkeep upkeep, int minutesPerWeek, Source capacity) {
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.minutesPerWeek = minutesPerWeek;
    this.capacity = capacity;
  }

  /**
   * The twelve months under the change; compare with those under {@link Change#none}.
   *
   * @param fleet what is known today; gone through twice
   */
  public Outlook outlook(Iterable<UnitHistory> fleet, Change change) {
    List<Task> tasks = new ArrayList<>();
    each(fleet, change, assessment -> tasks.addAll(work(assessment, change)));
    int minutes = (int) Math.max(1, Math.round(minutesPerWeek * change.technicians));
    Levelling.Level level = Levelling.level(tasks, change.asOf, minutes, capacity);
    Map<String, LocalDate> done = Workload.days(level.tasks(), change.asOf, minutes);
    Sum sum = new Sum();
    each(fleet, change, assessment -> add(assessment, change, done, sum));
    Costs costs = upkeep.costs();
    return new Outlook(
        sum.lockouts,
        sum.otherFaults,
        sum.cleanings,
        costs.money(sum.breakdowns),
        costs.money(sum.energy),
        costs.money(sum.cleaning),
        level.over().values().stream().mapToInt(Integer::intValue).sum());
  }

  private void each(Iterable<UnitHistory> fleet, Change change, Consumer<Assessment> each) {
    fleet.forEach(
        history -> {
          if (history.unit().inUse(change.asOf)) {
            each.accept(scoring.assess(history, change.asOf));
          }
        });
  }

  /** What falls due in the twelve months, without its unit's history. */
  private List<Task> work(Assessment assessment, Change change) {
    LocalDate end = change.asOf.plusMonths(12);
    return upkeep.plan(assessment, change.asOf, Arrangements.NONE).stream()
        .filter(task -> task.due().isBefore(end))
        .filter(task -> !(change.skipCleanings && task.task().equals(TaskCode.CONDENSER)))
        .toList();
  }

  private static final class Sum {
    private double lockouts;
    private double otherFaults;
    private double breakdowns;
    private double energy;
    private double cleaning;
    private int cleanings;
  }

  private void add(Assessment assessment, Change change, Map<String, LocalDate> done, Sum sum) {
    UnitCase unit = new UnitCase(assessment, upkeep.tables());
    LocalDate due =
        work(assessment, change).stream()
            .filter(task -> task.task().equals(TaskCode.CONDENSER))
            .findFirst()
            .map(task -> done.get(task.id()))
            .orElse(null);
    CoilYear year = CoilYear.of(unit, due, change.hotterK);
    double others = assessment.faults().expectedNextYear() - CoilYear.recorded(unit);
    sum.lockouts += year.lockouts();
    sum.otherFaults += others;
    sum.breakdowns += year.lockouts() * Worths.costOf(unit, LOCKOUT);
    sum.breakdowns += others * Worths.costOf(unit, "other");
    sum.energy += year.energy();
    sum.cleanings += year.cleanings();
    sum.cleaning += year.cleanings() * CleaningCost.of(unit);
  }
}

package coldround.upkeep;

import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.scoring.Assessment;
import coldround.scoring.FaultEvent;
import coldround.scoring.Scoring;
import coldround.scoring.SplitReading;
import coldround.upkeep.BacktestReport.Lockout;
import coldround.upkeep.BacktestReport.PlannedCleaning;
import coldround.upkeep.BacktestReport.Verdict;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Plans condenser cleanings as if the later part of the record were not known, and holds the plan
 * against it. After each cleaning that was really done the plan is made anew with what was known on
 * that day, since the plan's own cleanings were never done.
 */
public final class Backtest {

  private static final String LOCKOUT = "high-head-lockout";
  private static final String COIL = "condenser_coil";
  private static final Set<String> CLEAN = Set.of("clean", "light");

  private final Scoring scoring;
  private final Upkeep upkeep;
  private final LocalDate planned;
  private final LocalDate until;
  private final List<Lockout> lockouts = new ArrayList<>();
  private final List<PlannedCleaning> cleanings = new ArrayList<>();
  private int units;

  private Backtest(Scoring scoring, Upkeep upkeep, LocalDate planned, LocalDate until) {
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.planned = planned;
    this.until = until;
  }

  /**
   * @param planned day on which the first plan is made
   * @param until last day of the record to hold it against, after that day
   */
  public static BacktestReport run(
      Scoring scoring,
      Upkeep upkeep,
      Iterable<UnitHistory> fleet,
      LocalDate planned,
      LocalDate until) {
    if (!until.isAfter(planned)) {
      throw new IllegalArgumentException("nothing lies between " + planned + " and " + until);
    }
    Backtest backtest = new Backtest(scoring, upkeep, planned, until);
    fleet.forEach(backtest::unit);
    return backtest.report();
  }

  private BacktestReport report() {
    lockouts.sort(Comparator.comparing(Lockout::date).thenComparing(Lockout::unitId));
    cleanings.sort(
        Comparator.comparing(PlannedCleaning::due).thenComparing(PlannedCleaning::unitId));
    return new BacktestReport(planned, until, units, lockouts, cleanings);
  }

  private void unit(UnitHistory history) {
    if (!history.unit().inUse(planned)) {
      return;
    }
    units++;
    UnitHistory known = history.asOf(until);
    Assessment whole = scoring.assess(known, until);
    LocalDate from = planned;
    for (Visit visit : known.visits()) {
      if (visit.date().isAfter(from) && cleaned(visit)) {
        episode(known, whole, from, visit.date());
        from = visit.date();
      }
    }
    episode(known, whole, from, until);
  }

  private boolean cleaned(Visit visit) {
    return upkeep.catalogue().get(TaskCode.CONDENSER).doneWork().stream().anyMatch(visit::did);
  }

  /** From the day of a plan to the cleaning that ends it, that day included: it was found so. */
  private void episode(UnitHistory known, Assessment whole, LocalDate from, LocalDate to) {
    Optional<Task> task = cleaning(known, from);
    LocalDate due = task.map(Task::due).orElse(null);
    boolean locked = false;
    for (FaultEvent event : whole.faults().events()) {
      if (event.mode().equals(LOCKOUT) && event.date().isAfter(from) && !event.date().isAfter(to)) {
        lockouts.add(lockout(known, event.date(), due, from));
        locked |= due != null && !event.date().isBefore(due);
      }
    }
    if (due != null && !due.isAfter(to)) {
      Verdict verdict = locked ? Verdict.NEEDED : verdict(known, whole, due, from, to);
      String rule = task.get().governing().reason().code();
      cleanings.add(new PlannedCleaning(known.unit().id(), due, rule, verdict));
    }
  }

  private Optional<Task> cleaning(UnitHistory known, LocalDate day) {
    return upkeep.tasks(scoring.assess(known, day), day).stream()
        .filter(task -> task.task().equals(TaskCode.CONDENSER))
        .findFirst();
  }

  private static Lockout lockout(UnitHistory known, LocalDate date, LocalDate due, LocalDate from) {
    LocalDate told = due == null || due.isBefore(from) ? from : due;
    return new Lockout(known.unit().id(), date, due, UnitCase.days(told, date));
  }

  /** By the first look at the coil, or split of it, from the due date to the end of the episode. */
  private Verdict verdict(
      UnitHistory known, Assessment whole, LocalDate due, LocalDate from, LocalDate to) {
    for (Visit visit : known.visits()) {
      LocalDate date = visit.date();
      if (!date.isAfter(from) || date.isBefore(due) || date.isAfter(to)) {
        continue;
      }
      Optional<String> grade = visit.finding(COIL);
      if (grade.isPresent()) {
        return CLEAN.contains(grade.get()) ? Verdict.NEEDLESS : Verdict.NEEDED;
      }
      Optional<Verdict> bySplit = bySplit(whole, visit);
      if (bySplit.isPresent()) {
        return bySplit.get();
      }
    }
    return Verdict.UNKNOWN;
  }

  private Optional<Verdict> bySplit(Assessment whole, Visit visit) {
    double leastK = upkeep.tables().limits().value(UpkeepLimit.NEEDLESS_BELOW);
    for (SplitReading split : whole.coil().readings()) {
      boolean ofVisit = split.visit().equals(visit.number()) && split.date().equals(visit.date());
      boolean dirty = split.asFound() || !cleaned(visit);
      if (ofVisit && split.used() && dirty) {
        double excessK = split.splitK().getAsDouble() - whole.coil().clean().splitK();
        return Optional.of(excessK < leastK ? Verdict.NEEDLESS : Verdict.NEEDED);
      }
    }
    return Optional.empty();
  }
}

package coldround.upkeep.edge;

import coldround.fleet.Fleet;
import coldround.fleet.FleetListener;
import coldround.fleet.Today;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.fleet.UnitIds;
import coldround.fleet.UnitLocks;
import coldround.http.Attempts;
import coldround.http.Turns;
import coldround.scoring.Assessment;
import coldround.scoring.Condition;
import coldround.scoring.FaultRecord;
import coldround.scoring.FaultTallies;
import coldround.scoring.FaultTallies.FaultRecordOf;
import coldround.scoring.Ranking;
import coldround.scoring.Scoring;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Arrangements;
import coldround.upkeep.Task;
import coldround.upkeep.TaskList;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Keeps the ranking and the list of open tasks true to what is known of the fleet today. */
@ApplicationScoped
class Reassessment implements FleetListener {

  // of units in one transaction
  private static final int BATCH = 500;
  // few enough that what comes behind them is worked out while they are written
  private static final int WRITTEN_TOGETHER = 100;

  // of what may be done now, that which saves most a minute; else what begins next
  private static final Comparator<Task> FIRST_TO_DO =
      Comparator.comparing((Task task) -> task.state() == Task.State.PLANNED)
          .thenComparing(
              task -> task.state() == Task.State.PLANNED ? 0 : task.priority(),
              Comparator.reverseOrder())
          .thenComparing(Task::due)
          .thenComparing(Task::id);

  /** Longer than a file may take that is waited for. */
  private static final int LONGEST_SECONDS = 3 * 60 * 60;

  private final Fleet fleet;
  private final UnitLocks locks;
  private final Turns turns;
  private final Attempts attempts;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final Ranking ranking;
  private final TaskList tasks;
  private final FaultTallies tallies;
  private final ArrangementList arrangements;
  private final Today today;

  @Inject
  Reassessment(
      Fleet fleet,
      UnitLocks locks,
      Turns turns,
      Attempts attempts,
      Scoring scoring,
      Upkeep upkeep,
      Ranking ranking,
      TaskList tasks,
      FaultTallies tallies,
      ArrangementList arrangements,
      Today today) {
    this.fleet = fleet;
    this.locks = locks;
    this.turns = turns;
    this.attempts = attempts;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.ranking = ranking;
    this.tasks = tasks;
    this.tallies = tallies;
    this.arrangements = arrangements;
    this.today = today;
  }

  @Override
  @Transactional
  public void changed(Collection<String> unitIds) {
    assess(unitIds, Set.of());
  }

  /** A task of the unit has another day, which calendars count with what brought it. */
  @Transactional
  void rearranged(String unitId, String taskId) {
    assess(List.of(unitId), Set.of(taskId));
  }

  private void assess(Collection<String> unitIds, Set<String> counted) {
    // before they are read: what comes for one of them meanwhile would be written over
    locks.hold(unitIds);
    Batch batch = new Batch(counted);
    for (List<String> some : batches(unitIds)) {
      Arrangements arranged = arrangements.of(some);
      fleet.each(some, history -> work(history, arranged), batch::add);
    }
    batch.write();
  }

  /** Neighbours in the store together. */
  private static List<List<String>> batches(Collection<String> unitIds) {
    List<String> all =
        unitIds.stream()
            .sorted(Comparator.comparingLong(id -> UnitIds.number(id).orElse(0)))
            .toList();
    List<List<String>> batches = new ArrayList<>();
    for (int from = 0; from < all.size(); from += BATCH) {
      batches.add(all.subList(from, Math.min(all.size(), from + BATCH)));
    }
    return batches;
  }

  /**
   * All units, some hundred in a transaction of their own, so that whatever comes for one of them
   * waits for these and not for the whole fleet. What is written in the transaction of the caller
   * is not seen.
   */
  void everything() {
    List<String> some = locks.next("", BATCH);
    while (!some.isEmpty()) {
      apart(some);
      some = locks.next(some.get(some.size() - 1), BATCH);
    }
  }

  /** The same for some units. */
  void bitByBit(Collection<String> unitIds) {
    batches(unitIds).forEach(this::apart);
  }

  private void apart(List<String> some) {
    attempts.patiently(
        LONGEST_SECONDS,
        () -> {
          // a file under way has rows of units that it has not assessed yet
          turns.await(Turns.IMPORTS);
          assess(some, Set.of());
          return true;
        });
  }

  /** What holds a history of many visits ends here, so that few are in memory at once. */
  private Worked work(UnitHistory history, Arrangements arranged) {
    LocalDate asOf = today.at(history.site());
    Assessment assessment = history.unit().inUse(asOf) ? scoring.assess(history, asOf) : null;
    return new Worked(
        history.unit(),
        scoring.faultRecord(history, asOf).orElse(null),
        assessment == null ? null : assessment.condition(),
        assessment == null ? List.of() : upkeep.plan(assessment, asOf, arranged));
  }

  /**
   * What one unit comes to.
   *
   * @param faults null when nothing is known of them
   * @param condition null when the unit is retired
   */
  private record Worked(Unit unit, FaultRecord faults, Condition condition, List<Task> tasks) {
    Ranking.Place place() {
      Task next = tasks.stream().min(FIRST_TO_DO).orElse(null);
      return new Ranking.Place(
          unit.id(), condition, next == null ? null : next.due(), next == null ? "" : next.task());
    }
  }

  /** Results of some units, written together. */
  private final class Batch {
    private final List<Ranking.Place> places = new ArrayList<>();
    private final List<Task> open = new ArrayList<>();
    private final List<FaultRecordOf> records = new ArrayList<>();
    private final List<String> silent = new ArrayList<>();
    private final List<String> retired = new ArrayList<>();
    private final List<String> seen = new ArrayList<>();
    private final Set<String> counted;

    Batch(Set<String> counted) {
      this.counted = counted;
    }

    void add(Worked worked) {
      String id = worked.unit().id();
      seen.add(id);
      if (worked.faults() == null) {
        silent.add(id);
      } else {
        records.add(new FaultRecordOf(id, worked.faults(), worked.unit().retired()));
      }
      if (worked.condition() == null) {
        retired.add(id);
      } else {
        places.add(worked.place());
        open.addAll(worked.tasks());
      }
      if (seen.size() == WRITTEN_TOGETHER) {
        write();
      }
    }

    void write() {
      if (!seen.isEmpty()) {
        ranking.put(places);
        tasks.replace(seen, open, counted);
        ranking.remove(retired);
        tallies.remove(silent);
        tallies.put(records);
      }
      List.of(places, open, records, silent, retired, seen).forEach(Collection::clear);
    }
  }
}

package coldround.upkeep.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.fleet.UnitIds;
import coldround.http.Attempts;
import coldround.upkeep.Levelling;
import coldround.upkeep.Levelling.Slot;
import coldround.upkeep.Move;
import coldround.upkeep.Upkeep;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Levels the weeks of the stored list of tasks. Where a task was put it stays, until it is done,
 * the rules ask for an earlier day, or the technicians become more or fewer.
 */
@ApplicationScoped
class StoredLevelling {

  /** Longer than a big fleet takes on a slow machine. */
  private static final int LONGEST_SECONDS = 30 * 60;

  private final EntityManager entities;
  private final Attempts attempts;
  private final Reassessment reassessment;
  private final Fleet fleet;
  private final Upkeep upkeep;
  private final Today today;

  @Inject
  StoredLevelling(
      EntityManager entities,
      Attempts attempts,
      Reassessment reassessment,
      Fleet fleet,
      Upkeep upkeep,
      Today today) {
    this.entities = entities;
    this.attempts = attempts;
    this.reassessment = reassessment;
    this.fleet = fleet;
    this.upkeep = upkeep;
    this.today = today;
  }

  /**
   * Without technicians on the list there is no telling what a week can do: nothing is moved. Where
   * tasks are to go is written first, then their units are assessed anew; ended in between, tasks
   * stay where they were until the fleet is worked out anew, the next day at the latest.
   */
  void level() {
    int technicians = fleet.technicians().size();
    int capacity = technicians == 0 ? 0 : upkeep.capacity(technicians).minutes();
    reassessment.bitByBit(attempts.patiently(LONGEST_SECONDS, () -> undo(capacity)));
    if (capacity > 0) {
      reassessment.bitByBit(attempts.patiently(LONGEST_SECONDS, () -> move(capacity)));
    }
  }

  /** Takes back what was moved for another number of technicians, and forgets what is done. */
  private Set<String> undo(int capacity) {
    entities
        .createQuery("delete from TaskMoveRow where taskId not in (select t.id from TaskRow t)")
        .executeUpdate();
    List<TaskMoveRow> stale =
        entities
            .createQuery("from TaskMoveRow where capacity <> :capacity", TaskMoveRow.class)
            .setParameter("capacity", capacity)
            .getResultList();
    Set<String> units = new TreeSet<>();
    stale.forEach(row -> units.add(UnitIds.text(row.unitId)));
    stale.forEach(entities::remove);
    return units;
  }

  private Set<String> move(int capacity) {
    Map<String, TaskMoveRow> before =
        entities
            .createQuery("from TaskMoveRow", TaskMoveRow.class)
            .getResultStream()
            .collect(Collectors.toMap(row -> row.taskId, Function.identity()));
    Levelling.Plan plan = Levelling.plan(slots(), today.usually(), capacity);
    Set<String> units = new TreeSet<>();
    for (Move move : plan.moves()) {
      TaskRow task = entities.find(TaskRow.class, move.taskId());
      if (task == null) {
        // done meanwhile
        continue;
      }
      Optional<Move> former = Optional.ofNullable(before.get(move.taskId())).map(TaskMoveRow::read);
      entities.merge(TaskMoveRow.of(move.behind(former), task.unitId));
      units.add(UnitIds.text(task.unitId));
    }
    return units;
  }

  private List<Slot> slots() {
    Set<String> booked =
        new HashSet<>(
            entities.createQuery("select taskId from BookingRow", String.class).getResultList());
    return entities
        .createQuery("select id, due, earliest, minutes from TaskRow order by id", Object[].class)
        .getResultStream()
        .map(
            row ->
                new Slot(
                    (String) row[0],
                    (LocalDate) row[1],
                    (LocalDate) row[2],
                    (Integer) row[3],
                    booked.contains(row[0])))
        .toList();
  }
}

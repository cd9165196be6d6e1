package coldround.upkeep.edge;

import coldround.fleet.UnitIds;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Arrangements;
import coldround.upkeep.Booking;
import coldround.upkeep.Move;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Function;

/** Bookings and moves of the tasks of units. */
@ApplicationScoped
class StoredArrangements implements ArrangementList {

  private final EntityManager entities;

  @Inject
  StoredArrangements(EntityManager entities) {
    this.entities = entities;
  }

  @Override
  @Transactional
  public Arrangements of(Collection<String> unitIds) {
    List<Long> ids =
        unitIds.stream()
            .distinct()
            .map(UnitIds::number)
            .filter(OptionalLong::isPresent)
            .map(OptionalLong::getAsLong)
            .toList();
    Map<String, Booking> bookings = new HashMap<>();
    Map<String, Move> moves = new HashMap<>();
    // what this transaction has changed must be there to be read
    entities.flush();
    BookingRow.OF_UNITS.each(
        entities, ids, row -> put(bookings, BookingRow.booking(row), Booking::taskId));
    TaskMoveRow.OF_UNITS.each(
        entities, ids, row -> put(moves, TaskMoveRow.move(row), Move::taskId));
    return new Arrangements(bookings, moves);
  }

  private static <T> void put(Map<String, T> byTask, T each, Function<T, String> taskId) {
    byTask.put(taskId.apply(each), each);
  }
}

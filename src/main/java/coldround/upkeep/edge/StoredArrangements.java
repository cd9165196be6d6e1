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
import java.util.List;
import java.util.OptionalLong;

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
    // what this transaction has changed must be there to be read
    entities.flush();
    return new Arrangements(
        BookingRow.OF_UNITS.all(entities, ids, BookingRow::booking, Booking::taskId),
        TaskMoveRow.OF_UNITS.all(entities, ids, TaskMoveRow::move, Move::taskId));
  }
}

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

/** Bookings and moves of the tasks of units. */
@ApplicationScoped
class StoredArrangements implements ArrangementList {

  // a statement takes some ten thousand parameters at most
  private static final int CHUNK = 1000;

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
    for (int from = 0; from < ids.size(); from += CHUNK) {
      List<Long> some = ids.subList(from, Math.min(ids.size(), from + CHUNK));
      rows(BookingRow.class, some).forEach(row -> bookings.put(row.taskId, row.read()));
      rows(TaskMoveRow.class, some).forEach(row -> moves.put(row.taskId, row.read()));
    }
    return new Arrangements(bookings, moves);
  }

  private <T> List<T> rows(Class<T> kind, List<Long> unitIds) {
    return entities
        .createQuery("from " + kind.getSimpleName() + " where unitId in :ids", kind)
        .setParameter("ids", unitIds)
        .getResultList();
  }
}

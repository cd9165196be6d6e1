package coldround.upkeep.edge;

import coldround.upkeep.Booking;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/** For which of the tasks on a page there are bookings. */
@ApplicationScoped
class StoredBookings {

  private final EntityManager entities;

  @Inject
  StoredBookings(EntityManager entities) {
    this.entities = entities;
  }

  @Transactional
  Map<String, Booking> of(Collection<String> taskIds) {
    Map<String, Booking> bookings = new HashMap<>();
    if (!taskIds.isEmpty()) {
      entities
          .createQuery("from BookingRow where taskId in :ids", BookingRow.class)
          .setParameter("ids", taskIds)
          .getResultList()
          .forEach(row -> bookings.put(row.taskId, row.read()));
    }
    return bookings;
  }
}

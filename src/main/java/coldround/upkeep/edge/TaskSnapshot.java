package coldround.upkeep.edge;

import coldround.feed.Snapshot;
import coldround.fleet.UnitIds;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Booking;
import coldround.upkeep.edge.TasksOfToday.Placed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The open tasks with reasons and bookings, by id: an order in which a task never moves. */
@ApplicationScoped
class TaskSnapshot implements Snapshot {

  private final EntityManager entities;
  private final TasksOfToday tasks;
  private final StoredBookings bookings;

  @Inject
  TaskSnapshot(EntityManager entities, TasksOfToday tasks, StoredBookings bookings) {
    this.entities = entities;
    this.tasks = tasks;
    this.bookings = bookings;
  }

  @Override
  @Transactional
  public Slice after(String place, int limit) {
    List<Object[]> rows =
        entities
            .createQuery(
                "select id, unitId from TaskRow where id > :place order by id", Object[].class)
            .setParameter("place", place)
            .setMaxResults(limit + 1)
            .getResultList();
    boolean more = rows.size() > limit;
    List<Object[]> shown = more ? rows.subList(0, limit) : rows;
    List<String> ids = shown.stream().map(row -> (String) row[0]).toList();
    Map<String, Placed> placed =
        tasks.of(shown.stream().map(row -> UnitIds.text((Long) row[1])).toList());
    return new Slice(views(ids, placed), more ? ids.get(limit - 1) : "");
  }

  private List<TaskView> views(List<String> ids, Map<String, Placed> placed) {
    Map<String, Booking> booked = bookings.of(ids);
    List<TaskView> views = new ArrayList<>();
    for (String id : ids) {
      if (placed.containsKey(id)) {
        views.add(TaskView.of(placed.get(id).task(), booked.get(id), MeasureSystem.US));
      }
    }
    return views;
  }
}

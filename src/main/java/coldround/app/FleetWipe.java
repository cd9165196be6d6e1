package coldround.app;

import coldround.access.Audit;
import coldround.fleet.FleetListener;
import coldround.fleet.FleetWiping;
import coldround.fleet.Today;
import coldround.fleet.UnitIds;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;

/** Empties the tables of all features that speak of the fleet, in one transaction. */
@ApplicationScoped
class FleetWipe implements FleetWiping {

  /** What refers to another table comes before it. */
  private static final List<String> TABLES =
      List.of(
          "asked_drive",
          "round_site",
          "round_piece",
          "round_plan",
          "replacement_plan",
          "task_move",
          "left_task",
          "booking",
          "completion",
          "closed_task",
          "upkeep_task",
          "assessment",
          "score_history",
          "fault_tally",
          "fault_prior",
          "correction",
          "fault",
          "visit",
          "travel_time",
          "technician",
          "unit",
          "site",
          "customer",
          "demo_fleet");

  private final EntityManager entities;
  private final Instance<FleetListener> listeners;
  private final Audit audit;
  private final Today today;

  @Inject
  FleetWipe(
      EntityManager entities, @Any Instance<FleetListener> listeners, Audit audit, Today today) {
    this.entities = entities;
    this.listeners = listeners;
    this.audit = audit;
    this.today = today;
  }

  @Override
  @Transactional
  public Size size() {
    return new Size(rows("customer"), rows("site"), rows("unit"), rows("technician"));
  }

  @Override
  @Transactional
  public long roundsTold() {
    return rows("round_told");
  }

  private long rows(String table) {
    String count = "select count(*) from " + table;
    return (Long) entities.createNativeQuery(count, Long.class).getSingleResult();
  }

  @Override
  @Transactional
  public void wipe() {
    retire();
    entities.flush();
    entities.clear();
    String was = "%d units of %d customers".formatted(rows("unit"), rows("customer"));
    for (String table : TABLES) {
      entities.createNativeQuery("delete from " + table).executeUpdate();
    }
    audit.note(Audit.Change.of("fleet", "all", "wiped", was, ""));
  }

  /** Units that are no longer in use lose their tasks and scores, and the feed tells it. */
  @SuppressWarnings("unchecked")
  private void retire() {
    List<Long> ids =
        entities.createNativeQuery("select id from unit order by id", Long.class).getResultList();
    // the day before, as it may still be that day at the site of a unit
    entities
        .createNativeQuery("update unit set retired = :day")
        .setParameter("day", today.usually().minusDays(1))
        .executeUpdate();
    entities.clear();
    List<String> units = ids.stream().map(UnitIds::text).toList();
    listeners.forEach(listener -> listener.changed(units));
  }
}

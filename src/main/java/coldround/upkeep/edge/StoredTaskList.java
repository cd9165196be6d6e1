package coldround.upkeep.edge;

import coldround.feed.Change;
import coldround.feed.Outbox;
import coldround.fleet.UnitIds;
import coldround.upkeep.Task;
import coldround.upkeep.TaskList;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import jakarta.transaction.Transactional;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hibernate.Session;

/** The open tasks in the store, as an index by due date. */
@ApplicationScoped
class StoredTaskList implements TaskList {

  private static final String INSERT =
      "insert into upkeep_task (id, unit_id, task, due, earliest, latest, minutes, priority, state,"
          + " sequence, changed) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

  private final EntityManager entities;
  private final Outbox outbox;
  private final Clock clock;

  @Inject
  StoredTaskList(EntityManager entities, Outbox outbox, Clock clock) {
    this.entities = entities;
    this.outbox = outbox;
    this.clock = clock;
  }

  @Override
  @Transactional
  public void replace(Collection<String> unitIds, Collection<Task> tasks, Set<String> counted) {
    List<Long> ids = UnitIds.numbers(unitIds);
    TaskReplacing replacing = new TaskReplacing(entities, ids, counted, clock.instant());
    tasks.forEach(replacing::put);
    List<Change> changes = replacing.finish();
    entities.flush();
    entities.clear();
    insert(replacing.created());
    outbox.add(changes);
  }

  /** In plain JDBC: a fleet that is read in has ten new tasks a unit. */
  private void insert(List<TaskRow> rows) {
    if (!rows.isEmpty()) {
      entities
          .unwrap(Session.class)
          .doWork(
              connection -> {
                try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
                  for (TaskRow row : rows) {
                    bind(insert, row);
                    insert.addBatch();
                  }
                  insert.executeBatch();
                }
              });
    }
  }

  private static void bind(PreparedStatement insert, TaskRow row) throws SQLException {
    insert.setString(1, row.id);
    insert.setLong(2, row.unitId);
    insert.setString(3, row.task);
    insert.setObject(4, row.due);
    insert.setObject(5, row.earliest);
    insert.setObject(6, row.latest);
    insert.setInt(7, row.minutes);
    insert.setDouble(8, row.priority);
    insert.setString(9, row.state);
    insert.setInt(10, row.sequence);
    insert.setTimestamp(11, Timestamp.from(row.changed));
  }

  @Override
  @Transactional
  public List<Entry> entries(Search search, Entry after, int limit) {
    List<String> conditions = new ArrayList<>();
    Map<String, Object> parameters = new LinkedHashMap<>();
    condition("t.due >= :from", "from", search.from(), conditions, parameters);
    condition("t.due <= :to", "to", search.to(), conditions, parameters);
    condition("f.customer = :customer", "customer", search.customer(), conditions, parameters);
    condition("f.site = :site", "site", search.site(), conditions, parameters);
    unit(search.unit(), conditions, parameters);
    if (after != null) {
      parameters.put("afterId", after.taskId());
      condition(
          "(t.due > :afterDue or t.due = :afterDue and t.id > :afterId)",
          "afterDue",
          after.due(),
          conditions,
          parameters);
    }
    String query =
        "select t.id, t.unitId, t.due from TaskRow t join TaskPlaceRow f on f.unitId = t.unitId"
            + (conditions.isEmpty() ? "" : " where " + String.join(" and ", conditions))
            + " order by t.due, t.id";
    TypedQuery<Object[]> typed = entities.createQuery(query, Object[].class);
    parameters.forEach(typed::setParameter);
    return typed
        .setMaxResults(limit)
        .getResultStream()
        .map(row -> new Entry((String) row[0], UnitIds.text((Long) row[1]), (LocalDate) row[2]))
        .toList();
  }

  private static void unit(String unit, List<String> conditions, Map<String, Object> parameters) {
    if (!unit.isEmpty()) {
      parameters.put("unitId", UnitIds.number(unit).orElse(-1));
      condition("(f.tag = :tag or f.unitId = :unitId)", "tag", unit, conditions, parameters);
    }
  }

  private static void condition(
      String condition,
      String name,
      Object value,
      List<String> conditions,
      Map<String, Object> parameters) {
    if (value != null && !value.equals("")) {
      conditions.add(condition);
      parameters.put(name, value);
    }
  }
}

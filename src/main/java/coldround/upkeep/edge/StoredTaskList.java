package coldround.upkeep.edge;

import coldround.feed.Change;
import coldround.feed.Outbox;
import coldround.fleet.UnitIds;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Task;
import coldround.upkeep.TaskList;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The open tasks in the store, as an index by due date. */
@ApplicationScoped
class StoredTaskList implements TaskList {

  private final EntityManager entities;
  private final Outbox outbox;

  @Inject
  StoredTaskList(EntityManager entities, Outbox outbox) {
    this.entities = entities;
    this.outbox = outbox;
  }

  @Override
  @Transactional
  public void replace(Collection<String> unitIds, Collection<Task> tasks) {
    List<Long> ids = unitIds.stream().map(id -> UnitIds.number(id).orElseThrow()).toList();
    Map<String, TaskRow> before = new HashMap<>();
    entities
        .createQuery("from TaskRow where unitId in :ids order by id", TaskRow.class)
        .setParameter("ids", ids)
        .getResultList()
        .forEach(row -> before.put(row.id, row));
    List<Change> changes = new ArrayList<>();
    for (Task task : tasks) {
      put(before.remove(task.id()), task, changes);
    }
    before.values().stream()
        .sorted(Comparator.comparing(row -> row.id))
        .forEach(row -> withdraw(row, changes));
    entities.flush();
    entities.clear();
    outbox.add(changes);
  }

  private void put(TaskRow row, Task task, List<Change> changes) {
    TaskRow now = TaskRow.of(task);
    if (row == null) {
      entities.persist(now);
      changes.add(change("planned", task.id(), TaskView.of(task, MeasureSystem.US)));
    } else if (row.differs(now)) {
      changes.add(change("changed", task.id(), TaskView.of(task, MeasureSystem.US)));
    }
    if (row != null) {
      entities.merge(now);
    }
  }

  private void withdraw(TaskRow row, List<Change> changes) {
    entities.remove(row);
    String unit = UnitIds.text(row.unitId);
    changes.add(
        change(
            "withdrawn",
            row.id,
            Map.of("id", row.id, "unit", Map.of("id", unit), "task", row.task)));
  }

  private static Change change(String what, String taskId, Object data) {
    return new Change("coldround.task." + what, taskId, data);
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

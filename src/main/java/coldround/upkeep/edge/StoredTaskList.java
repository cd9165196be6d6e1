package coldround.upkeep.edge;

import coldround.feed.Outbox;
import coldround.fleet.UnitIds;
import coldround.upkeep.Task;
import coldround.upkeep.TaskList;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.TypedQuery;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The open tasks in the store, as an index by due date. */
@ApplicationScoped
class StoredTaskList implements TaskList {

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
    outbox.add(replacing.finish());
    entities.clear();
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

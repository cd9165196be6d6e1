package coldround.scoring.edge;

import coldround.feed.Change;
import coldround.feed.Outbox;
import coldround.fleet.UnitIds;
import coldround.scoring.Condition;
import coldround.scoring.FleetLine;
import coldround.scoring.FleetList;
import coldround.scoring.Ranking;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** The fleet list in the store: written as units are assessed, read a page at a time. */
@ApplicationScoped
class StoredFleetList implements FleetList, Ranking {

  private static final TypeReference<List<FleetLine.Points>> POINTS = new TypeReference<>() {};

  private final EntityManager entities;
  private final ObjectMapper json;
  private final Outbox outbox;
  private final StoredScores scores;

  @Inject
  StoredFleetList(EntityManager entities, ObjectMapper json, Outbox outbox, StoredScores scores) {
    this.entities = entities;
    this.json = json;
    this.outbox = outbox;
    this.scores = scores;
  }

  @Override
  @Transactional
  public void put(Collection<Ranking.Place> places) {
    if (places.isEmpty()) {
      return;
    }
    List<Long> ids = UnitIds.numbers(places.stream().map(Ranking.Place::unitId).toList());
    // what this transaction has changed must be there to be read
    entities.flush();
    Map<Long, String> words = new HashMap<>();
    FleetQuery.WORDS.each(entities, ids, row -> words.put(row.getLong(1), row.getString(2)));
    Map<Long, Double> before = new HashMap<>();
    AssessmentRow.SCORES.each(entities, ids, row -> before.put(row.getLong(1), row.getDouble(2)));
    List<AssessmentRow> rows = new ArrayList<>();
    List<Change> changes = new ArrayList<>();
    Map<Long, Condition> scored = new LinkedHashMap<>();
    for (Ranking.Place place : places) {
      AssessmentRow row = row(place);
      row.words = words.get(row.unitId);
      rows.add(row);
      Double score = before.get(row.unitId);
      if (score == null || score != row.score) {
        changes.add(change(place, score));
        scored.put(row.unitId, place.condition());
      }
    }
    AssessmentRow.TABLE.put(entities, rows);
    scores.keep(scored);
    outbox.add(changes);
  }

  /**
   * @param before null for the first score of the unit
   */
  private static Change change(Ranking.Place place, Double before) {
    Map<String, Object> data = new LinkedHashMap<>();
    data.put("unit", Map.of("id", place.unitId()));
    data.put("asOf", place.condition().asOf());
    data.put("score", place.condition().score());
    data.put("before", before);
    return new Change("coldround.condition.changed", place.unitId(), data);
  }

  private static Change ended(String unitId) {
    return new Change("coldround.condition.ended", unitId, Map.of("unit", Map.of("id", unitId)));
  }

  private AssessmentRow row(Ranking.Place place) {
    Condition condition = place.condition();
    AssessmentRow row = new AssessmentRow();
    row.unitId = UnitIds.number(place.unitId()).orElseThrow();
    row.asOf = condition.asOf();
    row.score = condition.score();
    row.low = condition.low();
    row.high = condition.high();
    row.completeness = condition.completeness();
    row.factors = points(condition);
    row.nextDue = place.nextDue();
    row.nextTask = place.nextTask();
    return row;
  }

  private String points(Condition condition) {
    List<FleetLine.Points> points =
        condition.factors().stream()
            .map(f -> new FleetLine.Points(f.factor(), f.weight(), f.lost(), f.known()))
            .toList();
    try {
      return json.writeValueAsString(points);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  @Transactional
  public void remove(Collection<String> unitIds) {
    if (unitIds.isEmpty()) {
      return;
    }
    List<Long> ended =
        entities
            .createQuery(
                "select unitId from AssessmentRow where unitId in :ids order by unitId", Long.class)
            .setParameter("ids", UnitIds.numbers(unitIds))
            .getResultList();
    if (ended.isEmpty()) {
      return;
    }
    entities
        .createQuery("delete from AssessmentRow where unitId in :ids")
        .setParameter("ids", ended)
        .executeUpdate();
    outbox.add(ended.stream().map(UnitIds::text).map(StoredFleetList::ended).toList());
  }

  @Override
  @Transactional
  public List<FleetLine> lines(Search search, Order order, FleetList.Place after, int limit) {
    FleetQuery query = FleetQuery.of(search);
    if (after != null) {
      query.after(order, after);
    }
    Query found = entities.createNativeQuery(query.ids(order), Long.class);
    @SuppressWarnings("unchecked")
    List<Long> ids = query.bind(found).setMaxResults(limit).getResultList();
    return lines(ids);
  }

  @Override
  @Transactional
  public Found find(Search search, Order order, FleetList.Place after, int limit) {
    List<FleetLine> lines = lines(search, order, after, limit);
    boolean all = after == null && lines.size() < limit;
    return new Found(lines, all ? lines.size() : count(search));
  }

  /** The lines of these units, in the order of the ids. */
  private List<FleetLine> lines(List<Long> ids) {
    if (ids.isEmpty()) {
      return List.of();
    }
    Map<Long, FleetLineRow> rows = new HashMap<>();
    entities
        .createQuery("from FleetLineRow f where f.unitId in :ids", FleetLineRow.class)
        .setParameter("ids", ids)
        .getResultStream()
        .forEach(row -> rows.put(row.unitId, row));
    return ids.stream().map(rows::get).map(this::line).toList();
  }

  @Override
  @Transactional
  public Optional<FleetLine> line(String unitId) {
    OptionalLong id = UnitIds.number(unitId);
    return id.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(entities.find(FleetLineRow.class, id.getAsLong())).map(this::line);
  }

  @Override
  @Transactional
  public long count(Search search) {
    FleetQuery query = FleetQuery.of(search);
    Query count = query.bind(entities.createNativeQuery(query.count(), Long.class));
    return (Long) count.getSingleResult();
  }

  @Override
  @Transactional
  public Range range() {
    return new Range(distinct("kind"), distinct("refrigerant"));
  }

  /**
   * Of every unit, retired ones too: an index answers that, and the reader loses nothing by it.
   * From one value to the next, because not every database takes such steps through its index by
   * itself.
   */
  private List<String> distinct(String column) {
    String next = "select " + column + " from unit where " + column + " > :last order by " + column;
    List<String> values = new ArrayList<>();
    String last = "";
    while (last != null) {
      Query query = entities.createNativeQuery(next, String.class).setParameter("last", last);
      last = (String) query.setMaxResults(1).getResultStream().findFirst().orElse(null);
      if (last != null) {
        values.add(last);
      }
    }
    values.sort(null);
    return values;
  }

  private FleetLine line(FleetLineRow row) {
    try {
      return new FleetLine(
          UnitIds.text(row.unitId),
          row.customer,
          row.customerName,
          row.site,
          row.siteName,
          row.tag,
          row.kind,
          row.maker,
          row.model,
          row.refrigerant,
          row.installed,
          row.asOf,
          row.score,
          row.low,
          row.high,
          row.completeness,
          json.readValue(row.factors, POINTS),
          row.nextDue,
          row.nextTask);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}

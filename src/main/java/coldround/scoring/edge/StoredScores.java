package coldround.scoring.edge;

import coldround.fleet.UnitIds;
import coldround.scoring.Condition;
import coldround.scoring.ScoreHistory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/** Scores as they were told, one row a unit and day. */
@ApplicationScoped
class StoredScores implements ScoreHistory {

  private static final TypeReference<List<Factor>> FACTORS = new TypeReference<>() {};
  // later than any day that is kept
  private static final LocalDate NEVER = LocalDate.of(9999, 12, 31);

  private final EntityManager entities;
  private final ObjectMapper json;

  @Inject
  StoredScores(EntityManager entities, ObjectMapper json) {
    this.entities = entities;
    this.json = json;
  }

  /**
   * In the transaction of the ranking; a second change on one day takes the place of the first.
   *
   * @param scored by unit
   */
  void keep(Map<Long, Condition> scored) {
    List<ScoreHistoryRow> rows = new ArrayList<>();
    scored.forEach((unitId, condition) -> rows.add(row(unitId, Entry.of(condition))));
    ScoreHistoryRow.TABLE.put(entities, rows);
  }

  private ScoreHistoryRow row(long unitId, Entry entry) {
    ScoreHistoryRow row = new ScoreHistoryRow();
    row.unitId = unitId;
    row.changed = entry.day();
    row.score = entry.score();
    row.low = entry.low();
    row.high = entry.high();
    row.completeness = entry.completeness();
    row.factors = text(entry.factors());
    return row;
  }

  @Override
  @Transactional
  public List<Entry> entries(String unitId, LocalDate before, int limit) {
    OptionalLong id = UnitIds.number(unitId);
    if (id.isEmpty()) {
      return List.of();
    }
    return entities
        .createQuery(
            "from ScoreHistoryRow where unitId = :id and changed < :before order by changed desc",
            ScoreHistoryRow.class)
        .setParameter("id", id.getAsLong())
        .setParameter("before", before == null ? NEVER : before)
        .setMaxResults(limit)
        .getResultStream()
        .map(this::entry)
        .toList();
  }

  private Entry entry(ScoreHistoryRow row) {
    try {
      return new Entry(
          row.changed,
          row.score,
          row.low,
          row.high,
          row.completeness,
          json.readValue(row.factors, FACTORS));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private String text(List<Factor> factors) {
    try {
      return json.writeValueAsString(factors);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}

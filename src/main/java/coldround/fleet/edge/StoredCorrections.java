package coldround.fleet.edge;

import coldround.fleet.Correction;
import coldround.fleet.Corrections;
import coldround.fleet.UnitIds;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;

/** Keeps corrections and finds them again. */
@ApplicationScoped
class StoredCorrections implements Corrections {

  private final EntityManager entities;
  private final Clock clock;

  @Inject
  StoredCorrections(EntityManager entities, Clock clock) {
    this.entities = entities;
    this.clock = clock;
  }

  /** In the transaction of the change. */
  void keep(Collection<CorrectionRow> corrections, String origin) {
    Instant now = clock.instant();
    for (CorrectionRow row : corrections) {
      row.changed = now;
      row.origin = origin;
      entities.persist(row);
    }
  }

  @Override
  @Transactional
  public List<Correction> find(Filter filter, long before, int limit) {
    String query =
        "from CorrectionRow where id < :before"
            + (filter.unit().isEmpty() ? "" : " and unitId = :unit")
            + (filter.origin().isEmpty() ? "" : " and origin = :origin")
            + " order by id desc";
    var typed = entities.createQuery(query, CorrectionRow.class).setParameter("before", before);
    if (!filter.unit().isEmpty()) {
      typed.setParameter("unit", UnitIds.number(filter.unit()).orElse(-1));
    }
    if (!filter.origin().isEmpty()) {
      typed.setParameter("origin", filter.origin());
    }
    return typed.setMaxResults(limit).getResultStream().map(CorrectionRow::read).toList();
  }

  /** True when a unit of that id once had the tag and was given another. */
  boolean hadTag(long unitId, String tag) {
    return !entities
        .createQuery(
            "select id from CorrectionRow where unitId = :unit and kind = 'units'"
                + " and columnName = 'unit' and former = :tag",
            Long.class)
        .setParameter("unit", unitId)
        .setParameter("tag", tag)
        .setMaxResults(1)
        .getResultList()
        .isEmpty();
  }
}

package coldround.fleet.edge;

import coldround.fleet.UnitIds;
import coldround.fleet.UnitLocks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.OptionalLong;

/** Locks of the rows of units. */
@ApplicationScoped
class StoredUnitLocks implements UnitLocks {

  // a statement takes some ten thousand parameters at most
  private static final int CHUNK = 1000;

  private final EntityManager entities;

  @Inject
  StoredUnitLocks(EntityManager entities) {
    this.entities = entities;
  }

  @Override
  @Transactional(Transactional.TxType.MANDATORY)
  public void hold(Collection<String> unitIds) {
    holdRows(
        unitIds.stream()
            .map(UnitIds::number)
            .filter(OptionalLong::isPresent)
            .map(OptionalLong::getAsLong)
            .toList());
  }

  @Transactional(Transactional.TxType.MANDATORY)
  void holdRows(Collection<Long> ids) {
    List<Long> sorted = ids.stream().distinct().sorted().toList();
    for (int from = 0; from < sorted.size(); from += CHUNK) {
      entities
          .createNativeQuery(
              "select id from unit where id in (:ids) order by id for update", Long.class)
          .setParameter("ids", sorted.subList(from, Math.min(sorted.size(), from + CHUNK)))
          .getResultList();
    }
  }

  @Override
  @Transactional
  public List<String> next(String after, int most) {
    return entities
        .createQuery("select id from UnitRow where id > :after order by id", Long.class)
        .setParameter("after", UnitIds.number(after).orElse(0))
        .setMaxResults(most)
        .getResultStream()
        .map(UnitIds::text)
        .toList();
  }
}

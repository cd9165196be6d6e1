package coldround.fleet.edge;

import coldround.fleet.UnitIds;
import coldround.fleet.UnitLocks;
import coldround.store.ByKeys;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.TransactionSynchronizationRegistry;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/** Locks of the rows of units. */
@ApplicationScoped
class StoredUnitLocks implements UnitLocks {

  private static final ByKeys LOCK =
      ByKeys.ids(
          "select id from unit where id = any(cast(? as bigint array)) order by id for update");

  private final EntityManager entities;
  private final StoredEquipment equipment;
  private final TransactionSynchronizationRegistry transaction;

  @Inject
  StoredUnitLocks(
      EntityManager entities,
      StoredEquipment equipment,
      TransactionSynchronizationRegistry transaction) {
    this.entities = entities;
    this.equipment = equipment;
    this.transaction = transaction;
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
    Set<Long> held = held();
    List<Long> sorted = ids.stream().distinct().filter(id -> !held.contains(id)).sorted().toList();
    if (!sorted.isEmpty()) {
      LOCK.each(entities, sorted, row -> {});
      // another transaction may have changed them before they were held
      equipment.forget();
      held.addAll(sorted);
    }
  }

  /** Rows that the transaction holds already: to lock a row is to write it. */
  @SuppressWarnings("unchecked")
  private Set<Long> held() {
    Set<Long> held = (Set<Long>) transaction.getResource(StoredUnitLocks.class);
    if (held == null) {
      held = new HashSet<>();
      transaction.putResource(StoredUnitLocks.class, held);
    }
    return held;
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

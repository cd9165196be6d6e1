package coldround.fleet.edge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The visits of a transaction. Most rows of a log are new; looking each of them up in a big table
 * only to learn that would cost more than writing it. So the numbers of a unit's visits are read
 * once, when the unit is met, and what may be there is looked up.
 */
@ApplicationScoped
class MetVisits {

  private final StoredVisits visits;
  private final TransactionSynchronizationRegistry transaction;

  @Inject
  MetVisits(StoredVisits visits, TransactionSynchronizationRegistry transaction) {
    this.visits = visits;
    this.transaction = transaction;
  }

  private static final class Met {
    private final Set<Long> units = new HashSet<>();
    private final KeyHashes stored = new KeyHashes();
    private final KeyHashes created = new KeyHashes();

    boolean mayHaveCreated(VisitRow.Key key) {
      return created.mayHave(key.unitId(), key.number());
    }

    boolean mayHave(VisitRow.Key key) {
      return stored.mayHave(key.unitId(), key.number()) || mayHaveCreated(key);
    }
  }

  /** Those of the keys that are stored. */
  Map<VisitRow.Key, VisitRow> find(Collection<VisitRow.Key> keys) {
    Met met = met();
    Set<Long> others = new LinkedHashSet<>();
    keys.forEach(key -> others.add(key.unitId()));
    others.removeAll(met.units);
    visits.numbers(others, met.stored::add);
    met.units.addAll(others);
    List<VisitRow.Key> likely = keys.stream().filter(met::mayHave).toList();
    if (likely.stream().anyMatch(met::mayHaveCreated)) {
      visits.writeHeld();
    }
    return visits.find(likely);
  }

  void created(Collection<VisitRow> rows) {
    KeyHashes created = met().created;
    rows.forEach(row -> created.add(row.unitId, row.number));
  }

  private Met met() {
    Met met = (Met) transaction.getResource(MetVisits.class);
    if (met == null) {
      met = new Met();
      transaction.putResource(MetVisits.class, met);
    }
    return met;
  }
}

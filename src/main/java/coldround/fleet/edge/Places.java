package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.edge.Known.UnitKey;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Units as visits need them. The rows of a log come back to the same units again and again, so that
 * those met are remembered until the transaction ends; whoever changes units or sites in it calls
 * {@link #forget}.
 */
@ApplicationScoped
class Places {

  private static final int MOST = 20_000;

  private final Known known;
  private final TransactionSynchronizationRegistry transaction;

  @Inject
  Places(Known known, TransactionSynchronizationRegistry transaction) {
    this.known = known;
    this.transaction = transaction;
  }

  Map<UnitKey, Place> of(List<Entry> batch) {
    Map<UnitKey, Place> met = met();
    List<Entry> others =
        batch.stream().filter(entry -> !met.containsKey(UnitKey.of(entry))).toList();
    Map<UnitKey, Place> found = new HashMap<>();
    if (!others.isEmpty()) {
      known.units(others).forEach((key, row) -> found.put(key, Place.of(row)));
    }
    for (Entry entry : batch) {
      Place place = met.get(UnitKey.of(entry));
      if (place != null) {
        found.put(UnitKey.of(entry), place);
      }
    }
    met.putAll(found);
    return found;
  }

  void forget() {
    met().clear();
  }

  @SuppressWarnings("unchecked")
  private Map<UnitKey, Place> met() {
    Map<UnitKey, Place> met = (Map<UnitKey, Place>) transaction.getResource(Places.class);
    if (met == null) {
      met = new Latest();
      transaction.putResource(Places.class, met);
    }
    return met;
  }

  /** The latest that were asked for. */
  private static final class Latest extends LinkedHashMap<UnitKey, Place> {
    private static final long serialVersionUID = 1L;

    Latest() {
      super(1024, 0.75f, true);
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<UnitKey, Place> eldest) {
      return size() > MOST;
    }
  }
}

package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.edge.Known.UnitKey;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.ArrayList;
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

  /** Of each entry the place of its unit, null where there is none. */
  List<Place> of(List<Entry> batch) {
    Map<UnitKey, Place> met = met();
    List<UnitKey> keys = batch.stream().map(UnitKey::of).toList();
    List<Place> found = new ArrayList<>();
    List<Entry> others = new ArrayList<>();
    for (int i = 0; i < keys.size(); i++) {
      Place place = met.get(keys.get(i));
      found.add(place);
      if (place == null) {
        others.add(batch.get(i));
      }
    }
    if (others.isEmpty()) {
      return found;
    }
    Map<UnitKey, Place> more = new HashMap<>();
    known.units(others).forEach((key, row) -> more.put(key, Place.of(row)));
    met.putAll(more);
    for (int i = 0; i < keys.size(); i++) {
      if (found.get(i) == null) {
        found.set(i, more.get(keys.get(i)));
      }
    }
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

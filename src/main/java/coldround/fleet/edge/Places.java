package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.edge.Known.UnitKey;
import coldround.fleet.edge.StoredEquipment.Equipment;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Units as visits need them. The rows of a log come back to the same units again and again, so that
 * those met are remembered until the transaction ends; whoever changes units or sites in it calls
 * {@link #forget}.
 */
@ApplicationScoped
class Places {

  private static final int MOST = 20_000;

  private final Known known;
  private final StoredEquipment equipment;
  private final TransactionSynchronizationRegistry transaction;

  @Inject
  Places(Known known, StoredEquipment equipment, TransactionSynchronizationRegistry transaction) {
    this.known = known;
    this.equipment = equipment;
    this.transaction = transaction;
  }

  /** Of each entry the place of its unit, null where there is none. */
  List<Place> of(List<Entry> batch) {
    Map<UnitKey, Place> met = met();
    List<UnitKey> keys = batch.stream().map(UnitKey::of).toList();
    List<Place> found = new ArrayList<>();
    Set<UnitKey> others = new HashSet<>();
    for (UnitKey key : keys) {
      Place place = met.get(key);
      found.add(place);
      if (place == null) {
        others.add(key);
      }
    }
    if (others.isEmpty()) {
      return found;
    }
    Map<UnitKey, Place> more = more(others);
    met.putAll(more);
    for (int i = 0; i < keys.size(); i++) {
      if (found.get(i) == null) {
        found.set(i, more.get(keys.get(i)));
      }
    }
    return found;
  }

  private Map<UnitKey, Place> more(Set<UnitKey> keys) {
    Equipment last = equipment.last();
    List<Equipment> found =
        last != null && keys.equals(Set.of(Known.key(last.unit())))
            ? List.of(last)
            : equipment.of(known.unitIds(keys));
    Map<UnitKey, Place> more = new HashMap<>();
    found.forEach(each -> more.put(Known.key(each.unit()), Place.of(each)));
    return more;
  }

  /** To be called before units or sites are written. */
  void forget() {
    met().clear();
    equipment.forget();
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

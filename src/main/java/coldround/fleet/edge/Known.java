package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.hibernate.Session;

/** Finds, for a whole batch at once, what its entries point at by natural key. */
@ApplicationScoped
class Known {

  /** Customer and site code. */
  record SiteKey(String customer, String site) {
    static SiteKey of(Entry entry) {
      return new SiteKey(entry.key("customer"), entry.key("site"));
    }
  }

  /** Customer code, site code and tag. */
  record UnitKey(String customer, String site, String tag) {
    static UnitKey of(Entry entry) {
      return new UnitKey(entry.key("customer"), entry.key("site"), entry.key("unit"));
    }
  }

  private static final String KEYS =
      " from unnest(cast(? as varchar array), cast(? as varchar array), cast(? as varchar array))"
          + " as k (customer, site, tag) left join customer c on c.code = k.customer"
          + " left join site s on s.customer_id = c.id and s.code = k.site";
  private static final String SITES = "select s.id" + KEYS;
  private static final String UNITS =
      "select u.id" + KEYS + " left join unit u on u.site_id = s.id and u.tag = k.tag";

  private final EntityManager entities;

  @Inject
  Known(EntityManager entities) {
    this.entities = entities;
  }

  Map<String, CustomerRow> customers(List<Entry> batch) {
    Map<String, CustomerRow> found = new HashMap<>();
    entities
        .createQuery("from CustomerRow where code in :codes", CustomerRow.class)
        .setParameter("codes", column(batch, "customer"))
        .getResultList()
        .forEach(row -> found.put(row.code, row));
    return found;
  }

  Map<SiteKey, SiteRow> sites(List<Entry> batch) {
    Map<SiteKey, SiteRow> found = new HashMap<>();
    List<UnitKey> keys =
        batch.stream()
            .map(SiteKey::of)
            .distinct()
            .map(key -> new UnitKey(key.customer(), key.site(), ""))
            .toList();
    entities
        .createQuery("from SiteRow s join fetch s.customer c where s.id in :ids", SiteRow.class)
        .setParameter("ids", ids(SITES, keys))
        .getResultList()
        .forEach(row -> found.put(new SiteKey(row.customer.code, row.code), row));
    return found;
  }

  /** Units under the tags of the batch and under the previous tags it names. */
  Map<UnitKey, UnitRow> units(List<Entry> batch) {
    Set<UnitKey> keys = new HashSet<>();
    for (Entry entry : batch) {
      UnitKey key = UnitKey.of(entry);
      keys.add(key);
      if (entry.said().get("previous_tag") instanceof String previous) {
        keys.add(new UnitKey(key.customer(), key.site(), previous));
      }
    }
    Map<UnitKey, UnitRow> found = new HashMap<>();
    entities
        .createQuery(
            "from UnitRow u join fetch u.site s join fetch s.customer c where u.id in :ids",
            UnitRow.class)
        .setParameter("ids", ids(UNITS, keys))
        .getResultList()
        .forEach(row -> found.put(key(row), row));
    return found;
  }

  /** Of those of them that there are. */
  List<Long> unitIds(Collection<UnitKey> keys) {
    return ids(UNITS, keys);
  }

  /** Looked up key by key in the indexes, where lists of each part would be tried pair by pair. */
  private List<Long> ids(String query, Collection<UnitKey> keys) {
    return entities
        .unwrap(Session.class)
        .doReturningWork(
            connection -> {
              try (PreparedStatement find = connection.prepareStatement(query)) {
                find.setArray(1, texts(connection, keys, UnitKey::customer));
                find.setArray(2, texts(connection, keys, UnitKey::site));
                find.setArray(3, texts(connection, keys, UnitKey::tag));
                List<Long> ids = new ArrayList<>();
                try (ResultSet rows = find.executeQuery()) {
                  while (rows.next()) {
                    long id = rows.getLong(1);
                    if (!rows.wasNull()) {
                      ids.add(id);
                    }
                  }
                }
                return ids;
              }
            });
  }

  private static Array texts(
      Connection connection, Collection<UnitKey> keys, Function<UnitKey, String> part)
      throws SQLException {
    return connection.createArrayOf("varchar", keys.stream().map(part).toArray());
  }

  /** Tells of an entry of the batch whose unit or site is not there which name is the wrong one. */
  Absent absent(List<Entry> batch) {
    return new Absent(batch);
  }

  /** Asks the store only when something is missing, and then once a batch. */
  final class Absent {
    private final List<Entry> batch;
    private Map<String, CustomerRow> customers;
    private Map<SiteKey, SiteRow> sites;

    private Absent(List<Entry> batch) {
      this.batch = batch;
    }

    Outcome of(Entry entry) {
      if (customers == null) {
        customers = customers(batch);
        sites = sites(batch);
      }
      if (!customers.containsKey(entry.key("customer"))) {
        return Outcome.UNKNOWN_CUSTOMER;
      }
      return sites.containsKey(SiteKey.of(entry)) ? Outcome.UNKNOWN_UNIT : Outcome.UNKNOWN_SITE;
    }
  }

  static UnitKey key(UnitRow row) {
    return new UnitKey(row.site.customer.code, row.site.code, row.tag);
  }

  static Set<String> column(List<Entry> batch, String column) {
    Set<String> values = new HashSet<>();
    for (Entry entry : batch) {
      if (entry.said().get(column) instanceof String text) {
        values.add(text);
      }
    }
    return values;
  }
}

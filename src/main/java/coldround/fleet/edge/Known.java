package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

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
    entities
        .createQuery(
            "from SiteRow s join fetch s.customer c where c.code in :customers and s.code in"
                + " :sites",
            SiteRow.class)
        .setParameter("customers", column(batch, "customer"))
        .setParameter("sites", column(batch, "site"))
        .getResultList()
        .forEach(row -> found.put(new SiteKey(row.customer.code, row.code), row));
    return found;
  }

  /** Units under the tags of the batch and under the previous tags it names. */
  Map<UnitKey, UnitRow> units(List<Entry> batch) {
    Set<String> tags = column(batch, "unit");
    tags.addAll(column(batch, "previous_tag"));
    Map<UnitKey, UnitRow> found = new HashMap<>();
    entities
        .createQuery(
            "from UnitRow u join fetch u.site s join fetch s.customer c where c.code in"
                + " :customers and s.code in :sites and u.tag in :tags",
            UnitRow.class)
        .setParameter("customers", column(batch, "customer"))
        .setParameter("sites", column(batch, "site"))
        .setParameter("tags", tags)
        .getResultList()
        .forEach(row -> found.put(key(row), row));
    return found;
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

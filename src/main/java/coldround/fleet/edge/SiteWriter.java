package coldround.fleet.edge;

import coldround.fleet.Cells;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.Site;
import coldround.fleet.edge.Known.SiteKey;
import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

@ApplicationScoped
class SiteWriter implements KindWriter, PanacheRepository<SiteRow> {

  private final Known known;
  private final Places places;

  @Inject
  SiteWriter(Known known, Places places) {
    this.known = known;
    this.places = places;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.SITES);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    places.forget();
    Map<String, CustomerRow> customers = known.customers(batch);
    Map<SiteKey, SiteRow> rows = known.sites(batch);
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      CustomerRow customer = customers.get(entry.key("customer"));
      outcomes.add(
          customer == null ? Outcome.UNKNOWN_CUSTOMER : write(customer, rows, entry, notes));
    }
    return outcomes;
  }

  private Outcome write(
      CustomerRow customer, Map<SiteKey, SiteRow> rows, Entry entry, Notes notes) {
    SiteRow row = rows.get(SiteKey.of(entry));
    Site stored = row == null ? null : row.read();
    Outcome outcome =
        KindWriter.put(
            stored,
            entry,
            Merging::site,
            site -> {
              SiteRow target = rows.computeIfAbsent(SiteKey.of(entry), key -> new SiteRow());
              target.customer = customer;
              target.write(site);
              persist(target);
            },
            (old, now) ->
                notes.changed(
                    Kind.SITES,
                    null,
                    now.customer() + "/" + now.code(),
                    Cells.of(old),
                    Cells.of(now)));
    if (outcome == Outcome.CHANGED) {
      unitsOf(row).forEach(notes::touched);
    }
    return outcome;
  }

  private List<Long> unitsOf(SiteRow site) {
    return getEntityManager()
        .createQuery("select u.id from UnitRow u where u.site = :site", Long.class)
        .setParameter("site", site)
        .getResultList();
  }
}

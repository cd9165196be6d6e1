package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.edge.Known.SiteKey;
import coldround.fleet.edge.Known.UnitKey;
import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Stores units; one that names its previous tag is renamed and keeps its id and history. */
@ApplicationScoped
class UnitWriter implements KindWriter, PanacheRepository<UnitRow> {

  private final Known known;

  @Inject
  UnitWriter(Known known) {
    this.known = known;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.UNITS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    Map<SiteKey, SiteRow> sites = known.sites(batch);
    Map<UnitKey, UnitRow> rows = known.units(batch);
    Known.Absent absent = known.absent(batch);
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      SiteRow site = sites.get(SiteKey.of(entry));
      outcomes.add(site == null ? absent.of(entry) : write(site, rows, entry, notes));
    }
    return outcomes;
  }

  private Outcome write(SiteRow site, Map<UnitKey, UnitRow> rows, Entry entry, Notes notes) {
    UnitKey key = UnitKey.of(entry);
    UnitRow renamed = renamed(rows, entry, key);
    if (renamed != null && rows.containsKey(key)) {
      return Outcome.TAG_TAKEN;
    }
    UnitRow row = renamed != null ? renamed : rows.get(key);
    Outcome outcome =
        KindWriter.put(
            row == null ? null : row.read(),
            entry,
            Merging::unit,
            unit -> {
              UnitRow target = row == null ? new UnitRow() : row;
              rows.remove(target.site == null ? key : Known.key(target));
              target.site = site;
              target.write(unit);
              persist(target);
              rows.put(key, target);
            });
    if (outcome != Outcome.UNCHANGED) {
      notes.touched(rows.get(key).id);
    }
    return outcome;
  }

  private static UnitRow renamed(Map<UnitKey, UnitRow> rows, Entry entry, UnitKey key) {
    String previous = entry.text("previous_tag", "");
    if (previous.isEmpty() || previous.equals(key.tag())) {
      return null;
    }
    return rows.get(new UnitKey(key.customer(), key.site(), previous));
  }
}

package coldround.fleet.edge;

import coldround.fleet.Cells;
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
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Stores units; one that names its previous tag is renamed and keeps its id and history. */
@ApplicationScoped
class UnitWriter implements KindWriter, PanacheRepository<UnitRow> {

  private final Known known;
  private final Places places;
  private final StoredCorrections corrections;

  @Inject
  UnitWriter(Known known, Places places, StoredCorrections corrections) {
    this.known = known;
    this.places = places;
    this.corrections = corrections;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.UNITS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    places.forget();
    return new Batch(batch, notes).write();
  }

  private final class Batch {
    private final List<Entry> entries;
    private final Notes notes;
    private final Map<SiteKey, SiteRow> sites;
    private final Map<UnitKey, UnitRow> rows;
    private final Known.Absent absent;

    Batch(List<Entry> entries, Notes notes) {
      this.entries = entries;
      this.notes = notes;
      this.sites = known.sites(entries);
      this.rows = known.units(entries);
      this.absent = known.absent(entries);
    }

    /** A tag that is taken may be given up by a later row: those are tried again until none is. */
    List<Outcome> write() {
      Outcome[] outcomes = new Outcome[entries.size()];
      long left = entries.size();
      long before;
      do {
        before = left;
        for (int i = 0; i < outcomes.length; i++) {
          if (outcomes[i] == null || outcomes[i] == Outcome.TAG_TAKEN) {
            outcomes[i] = write(entries.get(i));
          }
        }
        left = Arrays.stream(outcomes).filter(one -> one == Outcome.TAG_TAKEN).count();
      } while (left > 0 && left < before);
      return new ArrayList<>(Arrays.asList(outcomes));
    }

    private Outcome write(Entry entry) {
      SiteRow site = sites.get(SiteKey.of(entry));
      return site == null ? absent.of(entry) : write(site, entry);
    }

    private Outcome write(SiteRow site, Entry entry) {
      UnitKey key = UnitKey.of(entry);
      UnitRow renamed = renamed(entry, key);
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
              },
              (old, now) -> notes.changed(Kind.UNITS, row.id, "", Cells.of(old), Cells.of(now)));
      if (renamed != null) {
        // so that whoever is given the old tag next does not meet it in the store
        flush();
      }
      if (outcome != Outcome.UNCHANGED) {
        notes.touched(rows.get(key).id);
      }
      return outcome;
    }

    /** The unit under its previous tag; null when there is none, or it was renamed before. */
    private UnitRow renamed(Entry entry, UnitKey key) {
      String previous = entry.text("previous_tag", "");
      if (previous.isEmpty() || previous.equals(key.tag())) {
        return null;
      }
      UnitRow row = rows.get(new UnitKey(key.customer(), key.site(), previous));
      UnitRow own = rows.get(key);
      boolean done = row != null && own != null && corrections.hadTag(own.id, previous);
      return done ? null : row;
    }
  }
}

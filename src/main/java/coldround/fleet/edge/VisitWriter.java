package coldround.fleet.edge;

import coldround.fleet.Cells;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.Plausibility;
import coldround.fleet.Reading;
import coldround.fleet.Visit;
import coldround.fleet.edge.Known.UnitKey;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Stores visits, and readings of the long form, which go to a visit that must be there. */
@ApplicationScoped
class VisitWriter implements KindWriter {

  private final Known known;
  private final Places places;
  private final StoredVisits visits;
  private final MetVisits met;
  private final StoredUnitLocks locks;
  private final Plausibility plausibility;

  @Inject
  VisitWriter(
      Known known,
      Places places,
      StoredVisits visits,
      MetVisits met,
      StoredUnitLocks locks,
      Plausibility plausibility) {
    this.known = known;
    this.places = places;
    this.visits = visits;
    this.met = met;
    this.locks = locks;
    this.plausibility = plausibility;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.VISITS, Kind.READINGS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    return new Batch(batch, notes).write();
  }

  /** One batch: read with one call of the store, and written with two. */
  private final class Batch {
    private final List<Entry> entries;
    private final Notes notes;
    private final Map<UnitKey, Place> there;
    private final Map<VisitRow.Key, VisitRow> rows;
    private final Map<VisitRow.Key, Visit> now = new HashMap<>();
    private final Map<VisitRow.Key, Visit> created = new LinkedHashMap<>();
    private final Map<VisitRow.Key, Visit> changed = new LinkedHashMap<>();

    Batch(List<Entry> entries, Notes notes) {
      this.entries = entries;
      this.notes = notes;
      this.there = places.of(entries);
      locks.holdRows(there.values().stream().map(Place::id).toList());
      this.rows = met.find(keys());
    }

    private Set<VisitRow.Key> keys() {
      Set<VisitRow.Key> keys = new LinkedHashSet<>();
      for (Entry entry : entries) {
        Place place = there.get(UnitKey.of(entry));
        if (place != null) {
          keys.add(key(place, entry));
        }
      }
      return keys;
    }

    List<Outcome> write() {
      Known.Absent absent = known.absent(entries);
      List<Outcome> outcomes = new ArrayList<>();
      for (Entry entry : entries) {
        Place place = there.get(UnitKey.of(entry));
        outcomes.add(place == null ? absent.of(entry) : write(place, entry, outcomes.size()));
      }
      List<VisitRow> fresh = rows(created);
      visits.insert(fresh);
      met.created(fresh);
      visits.update(rows(changed));
      return outcomes;
    }

    private Outcome write(Place place, Entry entry, int index) {
      VisitRow.Key key = key(place, entry);
      Visit stored = stored(key);
      if (stored == null && entry.said().containsKey("quantity")) {
        return Outcome.UNKNOWN_VISIT;
      }
      Outcome outcome =
          KindWriter.put(
              stored,
              entry,
              (old, said) -> checked(old, said, place, index),
              visit -> keep(key, visit),
              (old, visit) ->
                  notes.changed(
                      Kind.VISITS, place.id(), visit.number(), Cells.of(old), Cells.of(visit)));
      if (outcome != Outcome.UNCHANGED) {
        notes.touched(place.id());
      }
      return outcome;
    }

    private Visit stored(VisitRow.Key key) {
      VisitRow row = rows.get(key);
      return row == null ? now.get(key) : now.computeIfAbsent(key, k -> row.read());
    }

    private void keep(VisitRow.Key key, Visit visit) {
      now.put(key, visit);
      (rows.containsKey(key) ? changed : created).put(key, visit);
    }

    /** Packing depends on nothing: all processors do it. */
    private static List<VisitRow> rows(Map<VisitRow.Key, Visit> visits) {
      return visits.entrySet().parallelStream()
          .map(each -> VisitRow.of(each.getKey().unitId(), each.getValue()))
          .toList();
    }

    private Visit checked(Visit stored, Entry said, Place place, int index) {
      Visit visit =
          plausibility.checked(Merging.visit(stored, said), place.unit(), place.atmosphereKpa());
      doubts(visit, said, index);
      return visit;
    }

    /** The sender hears of what this row said, not of what was odd before. */
    private void doubts(Visit visit, Entry said, int index) {
      for (Reading reading : visit.readings()) {
        if (!reading.suspect().isEmpty() && said.says(reading)) {
          notes.doubted(index, reading.quantity(), reading.suspect());
        }
      }
    }
  }

  private static VisitRow.Key key(Place place, Entry entry) {
    return new VisitRow.Key(place.id(), entry.key("visit"));
  }
}

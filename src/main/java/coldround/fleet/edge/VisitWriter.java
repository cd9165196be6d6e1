package coldround.fleet.edge;

import coldround.fleet.Cells;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.Plausibility;
import coldround.fleet.Reading;
import coldround.fleet.Visit;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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

  /**
   * An entry and where it goes.
   *
   * @param place null when there is no such unit
   * @param key null when there is no such unit
   * @param first no entry before it in the batch is of the same visit
   */
  private record Line(Entry entry, Place place, VisitRow.Key key, boolean first) {}

  /**
   * An entry laid over its visit.
   *
   * @param before null for a new visit
   * @param after null for a reading of a visit that is not there
   */
  private record Laid(Visit before, Visit after) {}

  /** One batch: read with one call of the store, and written with two. */
  private final class Batch {
    private final List<Entry> entries;
    private final Notes notes;
    private final List<Line> lines = new ArrayList<>();
    private final Map<VisitRow.Key, VisitRow> rows;
    private final Map<VisitRow.Key, Visit> now = new HashMap<>();
    private final Map<VisitRow.Key, Visit> created = new LinkedHashMap<>();
    private final Map<VisitRow.Key, Visit> changed = new LinkedHashMap<>();

    Batch(List<Entry> entries, Notes notes) {
      this.entries = entries;
      this.notes = notes;
      List<Place> there = places.of(entries);
      locks.holdRows(there.stream().filter(Objects::nonNull).map(Place::id).toList());
      Set<VisitRow.Key> keys = new LinkedHashSet<>();
      for (int i = 0; i < entries.size(); i++) {
        Entry entry = entries.get(i);
        Place place = there.get(i);
        VisitRow.Key key = place == null ? null : new VisitRow.Key(place.id(), entry.key("visit"));
        lines.add(new Line(entry, place, key, key != null && keys.add(key)));
      }
      this.rows = met.find(keys);
    }

    List<Outcome> write() {
      Known.Absent absent = known.absent(entries);
      // what is no other entry's visit depends on nothing: all processors do it
      List<Laid> alone =
          lines.parallelStream()
              .map(line -> line.first() ? lay(line, stored(line.key())) : null)
              .toList();
      List<Outcome> outcomes = new ArrayList<>();
      for (int i = 0; i < lines.size(); i++) {
        Line line = lines.get(i);
        outcomes.add(
            line.place() == null
                ? absent.of(line.entry())
                : write(line, line.first() ? alone.get(i) : lay(line, now.get(line.key())), i));
      }
      List<VisitRow> fresh = rows(created);
      visits.insert(fresh);
      met.created(fresh);
      visits.update(rows(changed));
      return outcomes;
    }

    private Visit stored(VisitRow.Key key) {
      VisitRow row = rows.get(key);
      return row == null ? null : row.read();
    }

    private Laid lay(Line line, Visit before) {
      if (before == null && line.entry().said().containsKey("quantity")) {
        return new Laid(null, null);
      }
      Place place = line.place();
      Visit after = Merging.visit(before, line.entry());
      return new Laid(before, plausibility.checked(after, place.unit(), place.atmosphereKpa()));
    }

    private Outcome write(Line line, Laid laid, int index) {
      now.put(line.key(), laid.after());
      if (laid.after() == null) {
        return Outcome.UNKNOWN_VISIT;
      }
      doubts(laid.after(), line.entry(), index);
      Outcome outcome =
          KindWriter.put(
              laid.before(),
              line.entry(),
              (before, said) -> laid.after(),
              visit -> (rows.containsKey(line.key()) ? changed : created).put(line.key(), visit),
              (before, after) ->
                  notes.changed(
                      Kind.VISITS,
                      line.place().id(),
                      after.number(),
                      Cells.of(before),
                      Cells.of(after)));
      if (outcome != Outcome.UNCHANGED) {
        notes.touched(line.place().id());
      }
      return outcome;
    }

    /** Packing depends on nothing: all processors do it. */
    private static List<VisitRow> rows(Map<VisitRow.Key, Visit> visits) {
      return visits.entrySet().parallelStream()
          .map(each -> VisitRow.of(each.getKey().unitId(), each.getValue()))
          .toList();
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
}

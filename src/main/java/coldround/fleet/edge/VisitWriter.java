package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.Plausibility;
import coldround.fleet.Reading;
import coldround.fleet.Unit;
import coldround.fleet.Visit;
import coldround.fleet.edge.Known.UnitKey;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Stores visits, and readings of the long form, which go to a visit that must be there. */
@ApplicationScoped
class VisitWriter implements KindWriter, PanacheRepositoryBase<VisitRow, VisitRow.Key> {

  private final Known known;
  private final Plausibility plausibility;

  @Inject
  VisitWriter(Known known, Plausibility plausibility) {
    this.known = known;
    this.plausibility = plausibility;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.VISITS, Kind.READINGS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    Map<UnitKey, UnitRow> units = known.units(batch);
    Map<UnitKey, Place> places = new HashMap<>();
    units.forEach((key, row) -> places.put(key, Place.of(row)));
    Map<VisitRow.Key, VisitRow> rows = stored(batch, units);
    Known.Absent absent = known.absent(batch);
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      Place place = places.get(UnitKey.of(entry));
      outcomes.add(
          place == null
              ? absent.of(entry)
              : write(place, rows, entry, new RowNotes(notes, outcomes.size())));
    }
    return outcomes;
  }

  /** Where readings were taken. */
  private record Place(Long id, Unit unit, double atmosphereKpa) {
    static Place of(UnitRow row) {
      return new Place(row.id, row.read(), row.site.read().atmosphereKpa());
    }
  }

  /** Notes on the entry at that place of its batch. */
  private record RowNotes(Notes notes, int entry) {

    /** The sender hears of what this row said, not of what was odd before. */
    void doubts(Visit visit, Entry said) {
      for (Reading reading : visit.readings()) {
        if (!reading.suspect().isEmpty() && said.says(reading)) {
          notes.doubted(entry, reading.quantity(), reading.suspect());
        }
      }
    }
  }

  private Outcome write(
      Place place, Map<VisitRow.Key, VisitRow> rows, Entry entry, RowNotes notes) {
    VisitRow.Key key = new VisitRow.Key(place.id(), entry.key("visit"));
    VisitRow row = rows.get(key);
    if (row == null && entry.said().containsKey("quantity")) {
      return Outcome.UNKNOWN_VISIT;
    }
    Outcome outcome =
        KindWriter.put(
            row == null ? null : row.read(),
            entry,
            (stored, said) -> checked(stored, said, place, notes),
            visit -> store(place.id(), key, rows, visit));
    if (outcome != Outcome.UNCHANGED) {
      notes.notes().touched(place.id());
    }
    return outcome;
  }

  private Visit checked(Visit stored, Entry said, Place place, RowNotes notes) {
    Visit visit =
        plausibility.checked(Merging.visit(stored, said), place.unit(), place.atmosphereKpa());
    notes.doubts(visit, said);
    return visit;
  }

  private void store(Long unit, VisitRow.Key key, Map<VisitRow.Key, VisitRow> rows, Visit visit) {
    VisitRow row = rows.get(key);
    VisitRow target = row == null ? new VisitRow() : row;
    target.unitId = unit;
    target.write(visit);
    if (row == null) {
      persist(target);
      rows.put(key, target);
    }
  }

  private Map<VisitRow.Key, VisitRow> stored(List<Entry> batch, Map<UnitKey, UnitRow> units) {
    Map<VisitRow.Key, VisitRow> rows = new HashMap<>();
    list(
            "unitId in ?1 and number in ?2",
            units.values().stream().map(unit -> unit.id).toList(),
            Known.column(batch, "visit"))
        .forEach(row -> rows.put(new VisitRow.Key(row.unitId, row.number), row));
    return rows;
  }
}

package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import coldround.fleet.edge.Known.UnitKey;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;

/** Stores visits, and readings of the long form, which go to a visit that must be there. */
@ApplicationScoped
class VisitWriter implements KindWriter, PanacheRepositoryBase<VisitRow, VisitRow.Key> {

  private final Known known;

  @Inject
  VisitWriter(Known known) {
    this.known = known;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.VISITS, Kind.READINGS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Consumer<Long> touched) {
    Map<UnitKey, UnitRow> units = known.units(batch);
    Map<VisitRow.Key, VisitRow> rows = stored(batch, units);
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      UnitRow unit = units.get(UnitKey.of(entry));
      Outcome outcome = unit == null ? Outcome.UNKNOWN_UNIT : write(unit, rows, entry);
      if (outcome == Outcome.CREATED || outcome == Outcome.CHANGED) {
        touched.accept(unit.id);
      }
      outcomes.add(outcome);
    }
    return outcomes;
  }

  private Outcome write(UnitRow unit, Map<VisitRow.Key, VisitRow> rows, Entry entry) {
    VisitRow.Key key = new VisitRow.Key(unit.id, entry.key("visit"));
    VisitRow row = rows.get(key);
    boolean reading = entry.said().containsKey("quantity");
    if (row == null && reading) {
      return Outcome.UNKNOWN_VISIT;
    }
    return KindWriter.put(
        row == null ? null : row.read(),
        entry,
        Merging::visit,
        visit -> {
          VisitRow target = rows.computeIfAbsent(key, k -> new VisitRow());
          target.unitId = unit.id;
          target.write(visit);
          if (row == null) {
            persist(target);
          }
        });
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

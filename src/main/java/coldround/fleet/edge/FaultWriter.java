package coldround.fleet.edge;

import coldround.fleet.Cells;
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

@ApplicationScoped
class FaultWriter implements KindWriter, PanacheRepositoryBase<FaultRow, FaultRow.Key> {

  private final Known known;

  @Inject
  FaultWriter(Known known) {
    this.known = known;
  }

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.FAULTS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    Map<UnitKey, UnitRow> units = known.units(batch);
    Map<FaultRow.Key, FaultRow> rows = stored(units);
    Known.Absent absent = known.absent(batch);
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      UnitRow unit = units.get(UnitKey.of(entry));
      Outcome outcome = unit == null ? absent.of(entry) : write(unit, rows, entry, notes);
      if (outcome == Outcome.CREATED || outcome == Outcome.CHANGED) {
        notes.touched(unit.id);
      }
      outcomes.add(outcome);
    }
    return outcomes;
  }

  private Outcome write(UnitRow unit, Map<FaultRow.Key, FaultRow> rows, Entry entry, Notes notes) {
    FaultRow.Key key =
        new FaultRow.Key(unit.id, entry.date("date", null), entry.key("failure_mode"));
    FaultRow row = rows.get(key);
    return KindWriter.put(
        row == null ? null : row.read(),
        entry,
        Merging::fault,
        fault -> {
          FaultRow target = rows.computeIfAbsent(key, k -> new FaultRow());
          target.unitId = unit.id;
          target.write(fault);
          if (row == null) {
            persist(target);
          }
        },
        (old, now) ->
            notes.changed(
                Kind.FAULTS,
                unit.id,
                now.date() + " " + now.failureMode(),
                Cells.of(old),
                Cells.of(now)));
  }

  private Map<FaultRow.Key, FaultRow> stored(Map<UnitKey, UnitRow> units) {
    Map<FaultRow.Key, FaultRow> rows = new HashMap<>();
    list("unitId in ?1", units.values().stream().map(unit -> unit.id).toList())
        .forEach(row -> rows.put(new FaultRow.Key(row.unitId, row.happened, row.failureMode), row));
    return rows;
  }
}

package coldround.fleet.edge;

import coldround.fleet.Cells;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.Kind;
import coldround.fleet.Merging;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

@ApplicationScoped
class TravelTimeWriter
    implements KindWriter, PanacheRepositoryBase<TravelTimeRow, TravelTimeRow.Key> {

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.TRAVEL_TIMES);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      TravelTimeRow row = findById(new TravelTimeRow.Key(entry.key("from"), entry.key("to")));
      outcomes.add(
          KindWriter.put(
              row == null ? null : row.read(),
              entry,
              Merging::travelTime,
              time -> {
                TravelTimeRow target = row == null ? new TravelTimeRow() : row;
                target.write(time);
                persist(target);
              },
              (old, now) ->
                  notes.changed(
                      Kind.TRAVEL_TIMES,
                      null,
                      now.from() + " - " + now.to(),
                      Cells.of(old),
                      Cells.of(now))));
    }
    return outcomes;
  }
}

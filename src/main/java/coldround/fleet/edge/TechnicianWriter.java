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
class TechnicianWriter implements KindWriter, PanacheRepositoryBase<TechnicianRow, String> {

  @Override
  public Set<Kind> kinds() {
    return Set.of(Kind.TECHNICIANS);
  }

  @Override
  public List<Outcome> write(List<Entry> batch, Notes notes) {
    List<Outcome> outcomes = new ArrayList<>();
    for (Entry entry : batch) {
      TechnicianRow row = findById(entry.key("technician"));
      outcomes.add(
          KindWriter.put(
              row == null ? null : row.read(),
              entry,
              Merging::technician,
              technician -> {
                TechnicianRow target = row == null ? new TechnicianRow() : row;
                target.write(technician);
                persist(target);
              },
              (old, now) ->
                  notes.changed(Kind.TECHNICIANS, null, now.code(), Cells.of(old), Cells.of(now))));
    }
    return outcomes;
  }
}

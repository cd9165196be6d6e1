package coldround.fleet.edge;

import coldround.fleet.Entry;
import coldround.fleet.FleetWriting;
import coldround.fleet.Kind;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Hands each batch to the writer of its kind. */
@ApplicationScoped
class FleetWrites implements FleetWriting {

  private final EntityManager entities;
  private final Map<Kind, KindWriter> writers = new EnumMap<>(Kind.class);

  @Inject
  FleetWrites(EntityManager entities, @Any Instance<KindWriter> writers) {
    this.entities = entities;
    for (KindWriter writer : writers) {
      writer.kinds().forEach(kind -> this.writers.put(kind, writer));
    }
  }

  @Override
  public Written write(Kind kind, List<Entry> batch) {
    Notes notes = new Notes();
    List<Outcome> outcomes = writers.get(kind).write(batch, notes);
    entities.flush();
    entities.clear();
    return notes.written(outcomes);
  }
}

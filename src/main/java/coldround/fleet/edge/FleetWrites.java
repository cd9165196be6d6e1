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
  private final StoredCorrections corrections;
  private final SiteDays days;
  private final LastHistory last;
  private final Map<Kind, KindWriter> writers = new EnumMap<>(Kind.class);

  @Inject
  FleetWrites(
      EntityManager entities,
      StoredCorrections corrections,
      SiteDays days,
      LastHistory last,
      @Any Instance<KindWriter> writers) {
    this.entities = entities;
    this.corrections = corrections;
    this.days = days;
    this.last = last;
    for (KindWriter writer : writers) {
      writer.kinds().forEach(kind -> this.writers.put(kind, writer));
    }
  }

  @Override
  public Written write(Kind kind, List<Entry> batch, String origin) {
    last.forget();
    Notes notes = new Notes();
    List<Outcome> outcomes = writers.get(kind).write(days.of(batch), notes);
    corrections.keep(notes.corrections(), origin);
    entities.flush();
    entities.clear();
    return notes.written(outcomes);
  }
}

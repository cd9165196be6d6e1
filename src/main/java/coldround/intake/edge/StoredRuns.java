package coldround.intake.edge;

import coldround.http.Problem;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Remembers files that nobody waits for, so that whoever asks later hears what became of them, even
 * of one that the service did not live to finish.
 */
@ApplicationScoped
class StoredRuns {

  static final String OPEN = "open";
  static final String REFUSED = "refused";
  static final String INTERRUPTED = "interrupted";

  private static final TypeReference<Map<String, Object>> BODY = new TypeReference<>() {};

  // some missed beats: a slow machine is no dead one
  private static final Duration DEAD_AFTER = Duration.ofSeconds(30);
  private static final String NOBODY = "nobody";

  private final EntityManager entities;
  private final ObjectMapper json;
  private final Clock clock;
  private final String holder;

  @Inject
  StoredRuns(
      EntityManager entities,
      ObjectMapper json,
      Clock clock,
      @ConfigProperty(name = "quarkus.datasource.db-kind") String kind) {
    this.entities = entities;
    this.json = json;
    this.clock = clock;
    // the embedded database has one service at a time: what it finds open is its own
    this.holder = kind.equals("h2") ? "embedded" : UUID.randomUUID().toString();
  }

  /** What was open when a service ended: its transaction was never kept. */
  @Transactional
  void atStart(@Observes @Priority(1500) StartupEvent start) {
    end(holder);
  }

  /**
   * Of those that somebody no longer beats for.
   *
   * @param all whose are ended in any case: of a holder that starts none can be open
   */
  private void end(String all) {
    // in SQL: a start would wait for the first statements of the mapper's language to be parsed
    entities
        .createNativeQuery("delete from import_run where id in (select f.id from import_receipt f)")
        .executeUpdate();
    Problem ended =
        new Problem(
            503,
            "interrupted",
            "The service ended before the file was applied",
            "Nothing of the file was applied. Send it again.",
            java.util.List.of());
    entities
        .createNativeQuery(
            "update import_run set state = :ended, problem = :why where state = :open"
                + " and (holder = :holder or beat < :before)")
        .setParameter("holder", all)
        .setParameter("before", clock.instant().minus(DEAD_AFTER))
        .setParameter("ended", INTERRUPTED)
        .setParameter("why", text(ended))
        .setParameter("open", OPEN)
        .executeUpdate();
  }

  /** Says that these are being worked on, and ends those of instances that are gone. */
  @Transactional
  void beat(Collection<String> ids) {
    Instant now = clock.instant();
    if (!ids.isEmpty()) {
      entities
          .createQuery("update RunRow set beat = :now where id in :ids")
          .setParameter("now", now)
          .setParameter("ids", ids)
          .executeUpdate();
    }
    entities
        .createQuery("select id from RunRow where state = :open and beat < :before", String.class)
        .setParameter("open", OPEN)
        .setParameter("before", now.minus(DEAD_AFTER))
        .getResultStream()
        .findAny()
        .ifPresent(lost -> end(NOBODY));
  }

  @Transactional
  void open(FileImport.Begun begun, FileImport.Order order) {
    RunRow row = new RunRow();
    row.id = begun.id();
    row.kind = order.kind().code();
    row.received = begun.received();
    row.preview = order.preview();
    row.partial = order.partial();
    row.state = OPEN;
    row.problem = "";
    row.holder = holder;
    row.beat = clock.instant();
    entities.persist(row);
  }

  /** There is a receipt now. */
  @Transactional
  void finished(String id) {
    entities
        .createQuery("delete from RunRow where id = :id")
        .setParameter("id", id)
        .executeUpdate();
  }

  @Transactional
  void refused(String id, Problem why) {
    RunRow row = entities.find(RunRow.class, id);
    row.state = REFUSED;
    row.problem = text(why);
  }

  @Transactional
  Optional<RunRow> find(String id) {
    return Optional.ofNullable(entities.find(RunRow.class, id));
  }

  /** The problem of a run that was refused or interrupted, as it is answered. */
  Map<String, Object> problem(RunRow row) {
    try {
      return json.readValue(row.problem, BODY);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String text(Problem problem) {
    try {
      return json.writeValueAsString(problem.body());
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }
}

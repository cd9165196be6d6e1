package coldround.feed.edge;

import coldround.feed.Change;
import coldround.feed.Outbox;
import coldround.http.OneInstance;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.sql.PreparedStatement;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.hibernate.Session;

/** The feed in the store: changes are added as they are made and put in order once committed. */
@ApplicationScoped
class StoredFeed implements Outbox {

  private static final int ORDERED_AT_ONCE = 2000;
  // written together, in their order, by which the database numbers them
  private static final String INSERT =
      "insert into feed_event (type, subject, happened, data) values (?, ?, ?, ?)";

  private final EntityManager entities;
  private final ObjectMapper json;
  private final Clock clock;
  private final Duration kept;
  private final FeedSignal signal;
  private final OneInstance instances;

  @Inject
  StoredFeed(
      EntityManager entities,
      ObjectMapper json,
      Clock clock,
      FeedSignal signal,
      OneInstance instances,
      @ConfigProperty(name = "coldround.feed.kept", defaultValue = "P180D") Duration kept) {
    this.kept = kept;
    this.signal = signal;
    this.instances = instances;
    this.entities = entities;
    this.json = json;
    this.clock = clock;
  }

  @Override
  @Transactional(Transactional.TxType.MANDATORY)
  public void add(Collection<Change> changes) {
    if (changes.isEmpty()) {
      return;
    }
    Timestamp now = Timestamp.from(clock.instant());
    List<Written> written = changes.parallelStream().map(this::written).toList();
    entities.flush();
    entities
        .unwrap(Session.class)
        .doWork(
            connection -> {
              try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
                for (Written each : written) {
                  insert.setString(1, each.change().type());
                  insert.setString(2, each.change().subject());
                  insert.setTimestamp(3, now);
                  insert.setString(4, each.data());
                  insert.addBatch();
                }
                insert.executeBatch();
              }
            });
    entities.clear();
    signal.onCommit();
  }

  /** A change with its data as JSON, which an import makes so many of that all processors help. */
  private record Written(Change change, String data) {}

  private Written written(Change change) {
    return new Written(change, text(change.data()));
  }

  private String text(Object data) {
    try {
      return json.writeValueAsString(data);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Gives positions to committed changes that have none yet, at most some thousand.
   *
   * @param last greatest number of a change that is wanted in order
   * @return whether more may be waiting
   */
  @Transactional
  boolean order(long last) {
    List<Long> waiting = waiting(last);
    if (waiting.isEmpty()) {
      return false;
    }
    FeedHeadRow head =
        entities.find(FeedHeadRow.class, FeedHeadRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
    // read again under the lock: another instance may have ordered them meanwhile
    waiting = waiting(last);
    place(waiting, head.position);
    head.position += waiting.size();
    return waiting.size() == ORDERED_AT_ONCE;
  }

  /** All in one go over the wire. */
  private void place(List<Long> ids, long last) {
    entities
        .unwrap(Session.class)
        .doWork(
            connection -> {
              try (PreparedStatement update =
                  connection.prepareStatement("update feed_event set position = ? where id = ?")) {
                long position = last;
                for (Long id : ids) {
                  update.setLong(1, ++position);
                  update.setLong(2, id);
                  update.addBatch();
                }
                update.executeBatch();
              }
            });
  }

  private List<Long> waiting(long last) {
    return entities
        .createQuery(
            "select id from FeedEventRow where position is null and id <= :last"
                // as the index has them
                + " order by position, id",
            Long.class)
        .setParameter("last", last)
        .setMaxResults(ORDERED_AT_ONCE)
        .getResultList();
  }

  /** Greatest number of a committed change without a position, 0 for none. */
  @Transactional
  long lastWaiting() {
    return entities
        .createQuery(
            "select coalesce(max(id), 0) from FeedEventRow where position is null", Long.class)
        .getSingleResult();
  }

  @Transactional
  List<FeedEventRow> after(long position, int limit) {
    return entities
        .createQuery(
            "from FeedEventRow where position > :position order by position", FeedEventRow.class)
        .setParameter("position", position)
        .setMaxResults(limit)
        .getResultList();
  }

  @Transactional
  FeedHeadRow head() {
    return entities.find(FeedHeadRow.class, FeedHeadRow.ONLY);
  }

  /**
   * Whether a change stood there, or all before it is no longer kept: a store that was taken back
   * goes on ahead of all places that it may have given before.
   *
   * @param position not ahead of the head
   */
  @Transactional
  boolean isPlace(long position, FeedHeadRow head) {
    return position == head.position
        || position == head.oldest
        || !entities
            .createQuery("select id from FeedEventRow where position = :position", Long.class)
            .setParameter("position", position)
            .getResultList()
            .isEmpty();
  }

  @Scheduled(every = "24h", delayed = "15m")
  void forgetOld() {
    instances.run(
        "forget-feed",
        Duration.ofMinutes(1),
        Duration.ofMinutes(30),
        () -> QuarkusTransaction.requiringNew().run(() -> forget(clock.instant().minus(kept))));
  }

  /** Deletes changes older than that, and remembers up to where. */
  @Transactional
  void forget(Instant before) {
    FeedHeadRow head =
        entities.find(FeedHeadRow.class, FeedHeadRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
    Long last =
        entities
            .createQuery(
                "select max(position) from FeedEventRow where happened < :before", Long.class)
            .setParameter("before", before)
            .getSingleResult();
    if (last != null) {
      head.oldest = last;
      entities
          .createQuery("delete from FeedEventRow where position <= :last")
          .setParameter("last", last)
          .executeUpdate();
    }
  }
}

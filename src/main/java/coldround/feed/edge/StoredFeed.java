package coldround.feed.edge;

import coldround.feed.Change;
import coldround.feed.ChangeText;
import coldround.feed.Outbox;
import coldround.feed.PackedChanges;
import coldround.http.OneInstance;
import coldround.store.Many;
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
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.hibernate.Session;
import org.hibernate.jpa.HibernateHints;

/** The feed in the store: changes are added as they are made and put in order once committed. */
@ApplicationScoped
class StoredFeed implements Outbox {

  // rows of up to PackedChanges.MOST changes
  private static final int ORDERED_AT_ONCE = 500;
  // written together, in their order, by which the database numbers them
  private static final String INSERT =
      "insert into feed_event (happened, changes, type, subject, data, packed)"
          + " values (?, ?, ?, ?, ?, ?)";

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
    List<Together> written = written(changes);
    entities.flush();
    entities
        .unwrap(Session.class)
        .doWork(
            connection -> {
              try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
                for (Together each : written) {
                  insert.setTimestamp(1, now);
                  each.bind(insert);
                  insert.addBatch();
                }
                insert.executeBatch();
              }
            });
    entities.clear();
    signal.onCommit();
  }

  /**
   * Changes that stand in one row.
   *
   * @param alone null for several
   * @param packed null for one
   */
  private record Together(int changes, ChangeText alone, byte[] packed) {

    static Together of(List<ChangeText> texts) {
      return texts.size() == 1
          ? new Together(1, texts.get(0), null)
          : new Together(texts.size(), null, PackedChanges.pack(texts));
    }

    /** From the second parameter on. */
    void bind(PreparedStatement insert) throws SQLException {
      insert.setInt(2, changes);
      insert.setString(3, alone == null ? null : alone.type());
      insert.setString(4, alone == null ? null : alone.subject());
      insert.setString(5, alone == null ? null : alone.data());
      insert.setBytes(6, packed);
    }
  }

  /** An import makes so many that all processors help. */
  private List<Together> written(Collection<Change> changes) {
    List<ChangeText> texts = Many.of(changes).map(this::text).toList();
    return PackedChanges.together(texts).parallelStream().map(Together::of).toList();
  }

  private ChangeText text(Change change) {
    try {
      String data = json.writeValueAsString(change.data());
      return new ChangeText(change.type(), change.subject(), data);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Gives positions to committed changes that have none yet, at most those of some hundred rows.
   *
   * @param last greatest number of a row that is wanted in order
   * @return whether more may be waiting
   */
  @Transactional
  boolean order(long last) {
    List<Waiting> waiting = waiting(last);
    if (waiting.isEmpty()) {
      return false;
    }
    FeedHeadRow head =
        entities.find(FeedHeadRow.class, FeedHeadRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
    // read again under the lock: another instance may have ordered them meanwhile
    waiting = waiting(last);
    head.position = place(waiting, head.position);
    return waiting.size() == ORDERED_AT_ONCE;
  }

  /** A row without places. */
  private record Waiting(long id, int changes) {}

  /**
   * All in one go over the wire.
   *
   * @param last place that was given before
   * @return the last place given
   */
  private long place(List<Waiting> rows, long last) {
    return entities
        .unwrap(Session.class)
        .doReturningWork(
            connection -> {
              try (PreparedStatement update =
                  connection.prepareStatement("update feed_event set position = ? where id = ?")) {
                long position = last;
                for (Waiting row : rows) {
                  position += row.changes();
                  update.setLong(1, position);
                  update.setLong(2, row.id());
                  update.addBatch();
                }
                update.executeBatch();
                return position;
              }
            });
  }

  private List<Waiting> waiting(long last) {
    return entities
        .createQuery(
            "select id, changes from FeedEventRow where position is null and id <= :last"
                // as the index has them
                + " order by position, id",
            Waiting.class)
        .setParameter("last", last)
        .setMaxResults(ORDERED_AT_ONCE)
        .getResultList();
  }

  /** Greatest number of a committed row without a position, 0 for none. */
  @Transactional
  long lastWaiting() {
    return entities
        .createQuery(
            "select coalesce(max(id), 0) from FeedEventRow where position is null", Long.class)
        .getSingleResult();
  }

  /** The changes behind that place, at most so many. */
  @Transactional
  List<FeedEvent> after(long position, int limit) {
    List<FeedEvent> found = new ArrayList<>();
    long behind = position;
    int rows = 2 + limit / PackedChanges.MOST;
    boolean more = true;
    while (more && found.size() < limit) {
      List<FeedEventRow> some = rows(behind, rows);
      for (FeedEventRow row : some) {
        if (found.size() < limit) {
          row.events().stream()
              .filter(event -> event.position() > position)
              .limit(limit - found.size())
              .forEach(found::add);
        }
        behind = row.position;
      }
      more = some.size() == rows;
      // those that come may hold one change each, or many: what is read and not wanted stays little
      rows = Math.min(8 * rows, Math.max(1, limit - found.size()));
    }
    return found;
  }

  private List<FeedEventRow> rows(long behind, int limit) {
    return entities
        .createQuery(
            "from FeedEventRow where position > :position order by position", FeedEventRow.class)
        .setParameter("position", behind)
        .setMaxResults(limit)
        .setHint(HibernateHints.HINT_READ_ONLY, true)
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
        || entities
            .createQuery(
                "select position - changes from FeedEventRow where position >= :position"
                    + " order by position",
                Long.class)
            .setParameter("position", position)
            .setMaxResults(1)
            .getResultStream()
            .anyMatch(first -> first < position);
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

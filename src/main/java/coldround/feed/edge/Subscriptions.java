package coldround.feed.edge;

import coldround.access.Audit;
import coldround.access.Audit.Change;
import coldround.feed.HookSecret;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Who is told by web hook, in the store. Each change takes the row for itself first. */
@ApplicationScoped
@Transactional
class Subscriptions {

  private final EntityManager entities;
  private final HooksConfig config;
  private final Audit audit;
  private final Clock clock;

  @Inject
  Subscriptions(EntityManager entities, HooksConfig config, Audit audit, Clock clock) {
    this.entities = entities;
    this.config = config;
    this.audit = audit;
    this.clock = clock;
  }

  SubscriptionRow add(String url, List<String> types, String description, long position) {
    SubscriptionRow row = new SubscriptionRow();
    row.id = UUID.randomUUID().toString();
    row.url = url;
    row.types = String.join(" ", types);
    row.description = description;
    row.secret = HookSecret.random().text();
    row.oldSecret = "";
    row.position = position;
    row.created = clock.instant();
    row.holder = "";
    row.resume();
    entities.persist(row);
    note(row, "made", "", brief(row));
    return row;
  }

  private void note(SubscriptionRow row, String action, String was, String became) {
    audit.note(Change.of("subscription", row.id, action, was, became));
  }

  private static String brief(SubscriptionRow row) {
    return row.url + " for " + (row.types.isEmpty() ? "all changes" : row.types);
  }

  long count() {
    return entities
        .createQuery("select count(*) from SubscriptionRow", Long.class)
        .getSingleResult();
  }

  List<SubscriptionRow> list(String after, int limit) {
    return entities
        .createQuery("from SubscriptionRow where id > :after order by id", SubscriptionRow.class)
        .setParameter("after", after)
        .setMaxResults(limit)
        .getResultList();
  }

  List<String> active() {
    return entities
        .createQuery("select id from SubscriptionRow where state = :active", String.class)
        .setParameter("active", SubscriptionRow.ACTIVE)
        .getResultList();
  }

  Optional<SubscriptionRow> find(String id) {
    return Optional.ofNullable(entities.find(SubscriptionRow.class, id));
  }

  /** To be changed: nobody else changes it until this transaction ends. */
  Optional<SubscriptionRow> locked(String id) {
    return Optional.ofNullable(
        entities.find(SubscriptionRow.class, id, LockModeType.PESSIMISTIC_WRITE));
  }

  void remove(SubscriptionRow row) {
    note(row, "removed", brief(row), "");
    entities.remove(row);
  }

  /** A new secret; the one until now signs along for a while. */
  void rotate(SubscriptionRow row) {
    row.oldSecret = row.secret;
    row.oldUntil = clock.instant().plus(config.oldSecretValid());
    row.secret = HookSecret.random().text();
    note(row, "secret renewed", "", "");
  }

  /** From where it stopped, or from the oldest change there is. */
  void resume(SubscriptionRow row, long oldest) {
    row.position = Math.max(row.position, oldest);
    note(row, "resumed", row.state, SubscriptionRow.ACTIVE);
    row.resume();
  }

  List<DeadLetterRow> deadLetters(String id, long after, int limit) {
    return entities
        .createQuery(
            "from DeadLetterRow where subscriptionId = :id and id > :after order by id",
            DeadLetterRow.class)
        .setParameter("id", id)
        .setParameter("after", after)
        .setMaxResults(limit)
        .getResultList();
  }

  long deadLetters(String id) {
    return entities
        .createQuery("select count(*) from DeadLetterRow where subscriptionId = :id", Long.class)
        .setParameter("id", id)
        .getSingleResult();
  }

  /**
   * Has dead letters sent once more.
   *
   * @param letter 0 for all of the subscription
   * @return how many
   */
  int again(String id, long letter) {
    int sent =
        entities
            .createQuery(
                "update DeadLetterRow set again = true where subscriptionId = :id"
                    + " and (:letter = 0 or id = :letter)")
            .setParameter("id", id)
            .setParameter("letter", letter)
            .executeUpdate();
    if (sent > 0) {
      String which = letter == 0 ? "all dead letters" : "dead letter " + letter;
      audit.note(Change.of("subscription", id, "sent again", which, ""));
    }
    return sent;
  }
}

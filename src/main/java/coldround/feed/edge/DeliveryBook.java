package coldround.feed.edge;

import coldround.feed.HookSecret;
import coldround.feed.Retrying;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;

/**
 * How far each subscriber has been told, written down: a service that is killed goes on from here.
 * What was delivered and not yet written down is delivered again.
 */
@ApplicationScoped
@Transactional
class DeliveryBook {

  private static final Duration MARGIN = Duration.ofSeconds(5);
  private static final int AT_ONCE = 50;

  private final EntityManager entities;
  private final StoredFeed feed;
  private final HooksConfig config;
  private final Clock clock;
  private final Retrying retrying;

  /** Longer than a try with all its limits takes. */
  private final Duration hold;

  @Inject
  DeliveryBook(EntityManager entities, StoredFeed feed, HooksConfig config, Clock clock) {
    this.entities = entities;
    this.feed = feed;
    this.config = config;
    this.clock = clock;
    this.hold = config.answerLimit().plus(MARGIN);
    this.retrying = new Retrying(config.pauses(), config.jitter());
  }

  /**
   * What is next for one subscriber.
   *
   * @param tries of the first event that have failed
   * @param pause until the next try, zero for none
   * @param again dead letters to be sent once more
   * @param events behind the position, also those not asked for
   */
  record Turn(
      SubscriptionRow subscription,
      URI url,
      List<HookSecret> secrets,
      Duration pause,
      List<DeadLetterRow> again,
      List<FeedEvent> events) {}

  /** How long one who sends is left alone by the others. */
  Duration hold() {
    return hold;
  }

  /** Empty when there is nothing for this holder to do any more. */
  Optional<Turn> turn(String id, String holder) {
    SubscriptionRow row = entities.find(SubscriptionRow.class, id, LockModeType.PESSIMISTIC_WRITE);
    Instant now = clock.instant();
    if (row == null || !row.state.equals(SubscriptionRow.ACTIVE) || isHeld(row, holder, now)) {
      return Optional.empty();
    }
    hold(row, holder, now);
    if (row.position < entities.find(FeedHeadRow.class, FeedHeadRow.ONLY).oldest) {
      row.stop(
          "Changes that were still to be told have been deleted for their age. Start again from"
              + " /api/v1/feed/snapshot, then resume.");
      return Optional.empty();
    }
    return Optional.of(
        new Turn(
            row,
            URI.create(row.url),
            row.secrets(now),
            pause(row, now),
            again(id),
            feed.after(row.position, AT_ONCE)));
  }

  /** Written only now and then, for an idle subscriber costs little; lasts longer than a try. */
  private void hold(SubscriptionRow row, String holder, Instant now) {
    boolean soonOver =
        row.heldUntil == null || row.heldUntil.isBefore(now.plus(hold.minus(MARGIN.dividedBy(2))));
    if (!row.holder.equals(holder) || soonOver || row.heldUntil.isAfter(now.plus(hold))) {
      row.holder = holder;
      row.heldUntil = now.plus(hold);
    }
  }

  /** A time that lies further ahead than anybody can hold it is that of a clock set back since. */
  private boolean isHeld(SubscriptionRow row, String holder, Instant now) {
    return !row.holder.equals(holder)
        && row.heldUntil != null
        && row.heldUntil.isAfter(now)
        && row.heldUntil.isBefore(now.plus(hold).plusSeconds(1));
  }

  private Duration pause(SubscriptionRow row, Instant now) {
    if (row.nextTry == null || !row.nextTry.isAfter(now)) {
      return Duration.ZERO;
    }
    Duration wait = Duration.between(now, row.nextTry);
    if (wait.compareTo(retrying.longest()) > 0) {
      // the clock was set back
      row.nextTry = now.plus(retrying.longest());
      return retrying.longest();
    }
    return wait;
  }

  private List<DeadLetterRow> again(String id) {
    return entities
        .createQuery(
            "from DeadLetterRow where subscriptionId = :id and again order by id",
            DeadLetterRow.class)
        .setParameter("id", id)
        .setMaxResults(AT_ONCE)
        .getResultList();
  }

  /**
   * All up to there has been delivered or was not asked for.
   *
   * @param delivered whether any was
   * @return false when somebody else delivers by now
   */
  boolean reached(String id, String holder, long position, boolean delivered) {
    SubscriptionRow row = held(id, holder);
    if (row == null) {
      return false;
    }
    row.position = Math.max(row.position, position);
    row.tries = 0;
    row.nextTry = null;
    row.heldUntil = clock.instant().plus(hold);
    if (delivered) {
      row.deadInRow = 0;
      row.delivered = clock.instant();
    }
    return true;
  }

  /** The holder ends: another may go on at once. */
  boolean release(String id, String holder) {
    SubscriptionRow row = held(id, holder);
    if (row != null) {
      row.heldUntil = null;
    }
    return row != null;
  }

  /** A try failed: it is tried again later, or the change becomes a dead letter. */
  void failed(String id, String holder, FeedEvent event, HookSender.Outcome outcome) {
    SubscriptionRow row = held(id, holder);
    if (row == null) {
      return;
    }
    row.tries++;
    row.reason = outcome.problem();
    if (outcome.gone()) {
      row.stop("The subscriber answered 410: it wants no more.");
    } else if (retrying.isLast(row.tries)) {
      bury(row, event, outcome.problem());
    } else {
      double chance = ThreadLocalRandom.current().nextDouble();
      row.nextTry = clock.instant().plus(retrying.pause(row.tries, chance, outcome.pause()));
    }
  }

  private void bury(SubscriptionRow row, FeedEvent event, String problem) {
    entities.persist(DeadLetterRow.of(row.id, event, row.tries, problem, clock.instant()));
    row.position = event.position();
    row.tries = 0;
    row.nextTry = null;
    row.deadInRow++;
    if (row.deadInRow >= config.deadLettersInARow()) {
      row.stop(
          "%d changes in a row could not be delivered; the last: %s. Mend it, then resume."
              .formatted(row.deadInRow, problem));
    }
  }

  /**
   * What came of a dead letter that was sent once more.
   *
   * @return false when somebody else delivers by now
   */
  boolean sentAgain(String id, String holder, long letter, HookSender.Outcome outcome) {
    SubscriptionRow subscription = held(id, holder);
    if (subscription == null) {
      return false;
    }
    subscription.heldUntil = clock.instant().plus(hold);
    DeadLetterRow row = entities.find(DeadLetterRow.class, letter);
    if (row != null && outcome.delivered()) {
      entities.remove(row);
    } else if (row != null) {
      row.again = false;
      row.tries++;
      row.problem = outcome.problem();
    }
    return true;
  }

  private SubscriptionRow held(String id, String holder) {
    SubscriptionRow row = entities.find(SubscriptionRow.class, id, LockModeType.PESSIMISTIC_WRITE);
    return row != null && row.holder.equals(holder) && row.state.equals(SubscriptionRow.ACTIVE)
        ? row
        : null;
  }
}

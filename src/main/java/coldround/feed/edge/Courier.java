package coldround.feed.edge;

import coldround.http.Attempts;
import io.quarkus.logging.Log;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Delivers changes to subscribers, each on a thread of its own, so that one who is slow holds up
 * nobody else; to each one change after the other, so that the order holds.
 */
@ApplicationScoped
class Courier {

  private static final Duration SAVE_AFTER = Duration.ofMillis(500);
  private static final Duration LONGEST_REST = Duration.ofSeconds(2);
  private static final Duration AFTER_FAULT = Duration.ofSeconds(5);

  private final Subscriptions subscriptions;
  private final DeliveryBook book;
  private final HookSender sender;
  private final Ordering ordering;
  private final FeedSignal signal;
  private final Attempts attempts;
  private final HooksConfig config;
  private final String holder = UUID.randomUUID().toString();
  private final Map<String, Thread> ways = new ConcurrentHashMap<>();
  private volatile boolean open;

  @Inject
  Courier(
      Subscriptions subscriptions,
      DeliveryBook book,
      HookSender sender,
      Ordering ordering,
      FeedSignal signal,
      Attempts attempts,
      HooksConfig config) {
    this.subscriptions = subscriptions;
    this.book = book;
    this.sender = sender;
    this.ordering = ordering;
    this.signal = signal;
    this.attempts = attempts;
    this.config = config;
  }

  void begin(@Observes StartupEvent start) {
    open = true;
    look();
  }

  /** What is being sent is finished and written down, else another instance would send it again. */
  void end(@Observes ShutdownEvent stop) throws InterruptedException {
    open = false;
    signal.signal();
    List<Thread> under = List.copyOf(ways.values());
    long last = System.nanoTime() + book.hold().toNanos();
    for (Thread thread : under) {
      thread.join(Math.max(1, (last - System.nanoTime()) / 1_000_000));
    }
    under.forEach(Thread::interrupt);
  }

  /** Sets off for whoever has nobody on the way. */
  @Scheduled(every = "2s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void look() {
    if (open) {
      subscriptions.active().forEach(id -> ways.computeIfAbsent(id, this::setOff));
    }
  }

  private Thread setOff(String id) {
    Thread thread = new Thread(() -> deliver(id), "web-hook-" + id);
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  private void deliver(String id) {
    try {
      while (open && round(id)) {
        // until there is nothing more to do for it
      }
      if (!open) {
        attempts.inTransaction(() -> book.release(id, holder));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      ways.remove(id);
    }
  }

  /** False when there is nothing more for us to do. */
  private boolean round(String id) throws InterruptedException {
    try {
      long mark = signal.mark();
      ordering.some();
      DeliveryBook.Turn turn = attempts.inTransaction(() -> book.turn(id, holder)).orElse(null);
      if (turn == null) {
        return false;
      }
      if (!run(turn)) {
        rest(turn.pause(), mark);
      }
      return true;
    } catch (RuntimeException e) {
      if (!open) {
        return false;
      }
      // the database may be away for a while
      Log.warnf(e, "web hooks of subscription %s rest for %s", id, AFTER_FAULT);
      Thread.sleep(AFTER_FAULT.toMillis());
      return true;
    }
  }

  /** A subscriber that has failed is left alone; else the next change ends the rest. */
  private void rest(Duration pause, long mark) throws InterruptedException {
    if (pause.isZero()) {
      signal.await(mark, config.look());
    } else {
      Thread.sleep(Math.min(pause.toMillis() + 1, LONGEST_REST.toMillis()));
    }
  }

  /** True when something was done, and more may be waiting. */
  private boolean run(DeliveryBook.Turn turn) throws InterruptedException {
    for (DeadLetterRow letter : turn.again()) {
      HookSender.Outcome outcome =
          sender.send(turn.url(), turn.secrets(), letter.event(), letter.tries);
      attempts.inTransaction(
          () -> {
            book.sentAgain(letter.id, outcome);
            return true;
          });
    }
    boolean rests = !turn.pause().isZero() || turn.events().isEmpty();
    if (!rests) {
      new Way(turn).walk();
    }
    return !rests || !turn.again().isEmpty();
  }

  /** One subscriber's next changes, in order, until one fails. */
  private final class Way {
    private final DeliveryBook.Turn turn;
    private final SubscriptionRow to;
    private long reached;
    private boolean delivered;
    private long saved = System.nanoTime();

    Way(DeliveryBook.Turn turn) {
      this.turn = turn;
      this.to = turn.subscription();
      this.reached = to.position;
    }

    void walk() throws InterruptedException {
      int tries = to.tries;
      for (FeedEventRow event : turn.events()) {
        HookSender.Outcome outcome = to.wants(event.type) ? send(event, tries) : null;
        if (outcome != null && !outcome.delivered()) {
          fail(event, outcome);
          return;
        }
        tries = 0;
        delivered |= outcome != null;
        reached = event.position;
        if (!open) {
          break;
        }
        if (System.nanoTime() - saved > SAVE_AFTER.toNanos() && !save()) {
          return;
        }
      }
      save();
    }

    private HookSender.Outcome send(FeedEventRow event, int tries) throws InterruptedException {
      return sender.send(turn.url(), turn.secrets(), event, tries);
    }

    private void fail(FeedEventRow event, HookSender.Outcome outcome) {
      if (reached == to.position || save()) {
        attempts.inTransaction(
            () -> {
              book.failed(to.id, holder, event, outcome);
              return true;
            });
      }
    }

    private boolean save() {
      saved = System.nanoTime();
      return attempts.inTransaction(() -> book.reached(to.id, holder, reached, delivered));
    }
  }
}

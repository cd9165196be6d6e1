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
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Delivers changes to subscribers, each on a thread of its own, so that one who is slow holds up
 * nobody else; to each one change after the other, so that the order holds.
 */
@ApplicationScoped
class Courier {

  private static final Duration SAVE_AFTER = Duration.ofMillis(500);
  private static final Duration LONGEST_REST = Duration.ofSeconds(2);
  private static final Duration AFTER_FAULT = Duration.ofSeconds(5);
  private static final Duration AT_THE_END = Duration.ofMillis(200);

  private final Subscriptions subscriptions;
  private final DeliveryBook book;
  private final HookSender sender;
  private final Ordering ordering;
  private final FeedSignal signal;
  private final Attempts attempts;
  private final HooksConfig config;
  private final String holder = UUID.randomUUID().toString();
  private final Map<String, Thread> ways = new ConcurrentHashMap<>();
  private final CountDownLatch ending = new CountDownLatch(1);
  private volatile boolean open;
  private volatile long last;

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

  /**
   * What is being sent is finished and written down, else another instance would send it again.
   * Nobody is interrupted: a thread within the embedded store would close its file for all.
   */
  void end(@Observes ShutdownEvent stop) throws InterruptedException {
    last = System.nanoTime() + book.hold().toNanos();
    open = false;
    ending.countDown();
    signal.signal();
    for (Thread thread : List.copyOf(ways.values())) {
      thread.join(Math.max(1, (last - System.nanoTime()) / 1_000_000));
    }
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
    } catch (RuntimeException e) {
      // not released, for not all may be written down: another goes on when the hold is over
      Log.warnf(e, "web hooks of subscription %s end while the store fails", id);
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
        throw e;
      }
      // the database may be away for a while
      Log.warnf(e, "web hooks of subscription %s rest for %s", id, AFTER_FAULT);
      pause(AFTER_FAULT);
      return true;
    }
  }

  /** The end of the service ends it. */
  private void pause(Duration longest) throws InterruptedException {
    ending.await(longest.toMillis(), TimeUnit.MILLISECONDS);
  }

  /**
   * What was sent is written down, however often the store fails: else it would be sent again.
   *
   * @return false when somebody else delivers by now
   */
  private boolean write(Callable<Boolean> sent) throws InterruptedException {
    while (true) {
      try {
        return attempts.inTransaction(sent);
      } catch (RuntimeException e) {
        if (!open && System.nanoTime() - last > 0) {
          throw e;
        }
        Log.warnf(e, "what web hooks have brought is not written down yet");
        if (open) {
          pause(AFTER_FAULT);
        } else {
          Thread.sleep(AT_THE_END.toMillis());
        }
      }
    }
  }

  /** A subscriber that has failed is left alone; else the next change ends the rest. */
  private void rest(Duration pause, long mark) throws InterruptedException {
    if (pause.isZero()) {
      signal.await(mark, config.look());
    } else {
      pause(pause.compareTo(LONGEST_REST) < 0 ? pause.plusMillis(1) : LONGEST_REST);
    }
  }

  /** True when something was done, and more may be waiting. */
  private boolean run(DeliveryBook.Turn turn) throws InterruptedException {
    for (DeadLetterRow letter : turn.again()) {
      HookSender.Outcome outcome =
          sender.send(turn.url(), turn.secrets(), letter.event(), letter.tries);
      String id = turn.subscription().id;
      if (!write(() -> book.sentAgain(id, holder, letter.id, outcome)) || !open) {
        return true;
      }
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
      for (FeedEvent event : turn.events()) {
        HookSender.Outcome outcome = to.wants(event.type()) ? send(event, tries) : null;
        if (outcome != null && !outcome.delivered()) {
          fail(event, outcome);
          return;
        }
        tries = 0;
        delivered |= outcome != null;
        reached = event.position();
        if (!open) {
          break;
        }
        if (System.nanoTime() - saved > SAVE_AFTER.toNanos() && !save()) {
          return;
        }
      }
      save();
    }

    private HookSender.Outcome send(FeedEvent event, int tries) throws InterruptedException {
      return sender.send(turn.url(), turn.secrets(), event, tries);
    }

    private void fail(FeedEvent event, HookSender.Outcome outcome) throws InterruptedException {
      if (reached == to.position || save()) {
        attempts.inTransaction(
            () -> {
              book.failed(to.id, holder, event, outcome);
              return true;
            });
      }
    }

    private boolean save() throws InterruptedException {
      saved = System.nanoTime();
      return write(() -> book.reached(to.id, holder, reached, delivered));
    }
  }
}

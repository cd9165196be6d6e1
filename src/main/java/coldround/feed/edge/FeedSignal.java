package coldround.feed.edge;

import io.quarkus.runtime.ShutdownDelayInitiatedEvent;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.transaction.Status;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.time.Duration;
import java.util.function.BooleanSupplier;

/**
 * Wakes those who wait for changes as soon as a transaction of this service has committed some.
 * Other services on the same database do not reach it: who waits looks now and then by itself.
 */
@ApplicationScoped
class FeedSignal {

  private final TransactionSynchronizationRegistry transactions;
  private final Object monitor = new Object();
  private long count;
  private boolean closed;
  private volatile boolean ending;

  @Inject
  FeedSignal(TransactionSynchronizationRegistry transactions) {
    this.transactions = transactions;
  }

  /** Signals when the running transaction commits. */
  void onCommit() {
    transactions.registerInterposedSynchronization(
        new Synchronization() {
          @Override
          public void beforeCompletion() {
            // only its end matters
          }

          @Override
          public void afterCompletion(int status) {
            if (status == Status.STATUS_COMMITTED) {
              signal();
            }
          }
        });
  }

  void signal() {
    synchronized (monitor) {
      count++;
      monitor.notifyAll();
    }
  }

  /** Has those who wait look whether they still want to. */
  void stir() {
    synchronized (monitor) {
      monitor.notifyAll();
    }
  }

  /** A mark to wait behind: taken before looking, so that nothing falls between. */
  long mark() {
    synchronized (monitor) {
      return count;
    }
  }

  /** Until something was signalled behind the mark, at the longest so long. */
  void await(long mark, Duration longest) throws InterruptedException {
    await(mark, longest, () -> false);
  }

  /**
   * @param left true for one who wants to wait no more; asked again when stirred
   */
  void await(long mark, Duration longest, BooleanSupplier left) throws InterruptedException {
    long end = System.nanoTime() + longest.toNanos();
    synchronized (monitor) {
      long nanos = end - System.nanoTime();
      while (count == mark && !closed && nanos > 0 && !left.getAsBoolean()) {
        monitor.wait(nanos / 1_000_000, (int) (nanos % 1_000_000));
        nanos = end - System.nanoTime();
      }
    }
  }

  /** Who waits for changes is answered before the service ends, and asks another one. */
  void ending(@Observes ShutdownDelayInitiatedEvent end) {
    ending = true;
    signal();
  }

  /** The service still serves, but nobody should begin to wait. */
  boolean isEnding() {
    return ending;
  }

  @PreDestroy
  void close() {
    synchronized (monitor) {
      closed = true;
      monitor.notifyAll();
    }
  }
}

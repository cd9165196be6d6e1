package coldround.feed.edge;

import coldround.http.Attempts;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.concurrent.locks.ReentrantLock;

/**
 * Gives committed changes their places. Readers of this service queue here and not at the database,
 * which some give little time for; other services are waited for there.
 */
@ApplicationScoped
class Ordering {

  private final StoredFeed feed;
  private final Attempts attempts;
  private final ReentrantLock lock = new ReentrantLock(true);

  @Inject
  Ordering(StoredFeed feed, Attempts attempts) {
    this.feed = feed;
    this.attempts = attempts;
  }

  /** The first of those that wait, some hundred rows. */
  void some() {
    lock.lock();
    try {
      attempts.inTransaction(() -> feed.order(Long.MAX_VALUE));
    } finally {
      lock.unlock();
    }
  }

  /**
   * Until all that was committed before this call has its place; what is written meanwhile is not
   * waited for, else this might never end.
   */
  void all() {
    lock.lock();
    try {
      long last = attempts.inTransaction(feed::lastWaiting);
      boolean more = last > 0;
      while (more) {
        more = attempts.inTransaction(() -> feed.order(last));
      }
    } finally {
      lock.unlock();
    }
  }
}

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

  /** Until all that was committed before this call has its place. */
  void all() {
    lock.lock();
    try {
      boolean more;
      do {
        more = attempts.inTransaction(feed::order);
      } while (more);
    } finally {
      lock.unlock();
    }
  }
}

package coldround.http;

import io.quarkus.logging.Log;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.narayana.jta.QuarkusTransactionException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.PersistenceException;
import java.sql.PreparedStatement;
import java.util.concurrent.Callable;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.locks.LockSupport;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.hibernate.Session;
import org.hibernate.exception.DataException;

/**
 * Runs work in a transaction of its own, and once more where another call got in between: then what
 * the other wrote is there to be seen.
 */
@ApplicationScoped
public class Attempts {

  private static final int MOST = 6;
  private static final int SECONDS = 60;

  /** Who waits for others holds a connection meanwhile, and somebody waits for the answer. */
  private static final long LONGEST_NANOS = 5_000_000_000L;

  private static final long PAUSE_NANOS = 20_000_000;

  // PostgreSQL, until the end of the transaction. It hopes for a better plan for each array that it
  // is given and makes one anew each time; for a few rows by their keys there is one good plan,
  // which is never worth compiling.
  private static final String SHORT_WORK =
      "select set_config('lock_timeout', '2000ms', true),"
          + " set_config('plan_cache_mode', 'force_generic_plan', true),"
          + " set_config('jit', 'off', true)";

  private final EntityManager entities;
  private final boolean postgresql;

  @Inject
  public Attempts(
      EntityManager entities, @ConfigProperty(name = "quarkus.datasource.db-kind") String kind) {
    this.entities = entities;
    this.postgresql = kind.equals("postgresql");
  }

  /**
   * @throws Problem as the work throws it; 503 when the others do not come to an end or the
   *     database does not answer, 507 when its disk is full
   */
  public <T> T inTransaction(Callable<T> work) {
    Callable<T> shortWork =
        () -> {
          forShortWork();
          return work.call();
        };
    return inTransaction(shortWork, SECONDS, System.nanoTime() + LONGEST_NANOS);
  }

  /**
   * The same for work that nobody waits for.
   *
   * @param seconds that an attempt may take
   */
  public <T> T patiently(int seconds, Callable<T> work) {
    return inTransaction(work, seconds, Long.MAX_VALUE);
  }

  /** The embedded database needs none of it. */
  private void forShortWork() {
    if (postgresql) {
      entities
          .unwrap(Session.class)
          .doWork(
              connection -> {
                try (PreparedStatement set = connection.prepareStatement(SHORT_WORK)) {
                  set.execute();
                }
              });
    }
  }

  private <T> T inTransaction(Callable<T> work, int seconds, long end) {
    for (int attempt = 1; ; attempt++) {
      try {
        return QuarkusTransaction.requiringNew().timeout(seconds).call(work);
      } catch (DataException tooLong) {
        throw Problem.unprocessable(
            "too-long",
            "This cannot be stored",
            "A text, or all readings together, are longer than the store keeps. Shorten them.");
      } catch (PersistenceException | QuarkusTransactionException clash) {
        // to try at once again would only keep the caller waiting
        StoreFaults.of(clash)
            .ifPresent(
                away -> {
                  Log.warnf("the store fails: %s", clash);
                  throw away;
                });
        if (attempt == MOST || System.nanoTime() > end) {
          Log.warnf("gave up after %d attempts: %s", attempt, clash);
          throw StoreFaults.othersWrite();
        }
        LockSupport.parkNanos(attempt * ThreadLocalRandom.current().nextLong(PAUSE_NANOS));
      }
    }
  }
}

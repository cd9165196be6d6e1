package coldround.http;

import io.quarkus.logging.Log;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.narayana.jta.QuarkusTransactionException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PersistenceException;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.locks.LockSupport;
import org.hibernate.exception.DataException;

/**
 * Runs work in a transaction of its own, and once more where another call got in between: then what
 * the other wrote is there to be seen.
 */
@ApplicationScoped
public class Attempts {

  private static final int MOST = 6;
  private static final int SECONDS = 60;
  private static final long PAUSE_NANOS = 20_000_000;

  /**
   * @throws Problem as the work throws it; 503 when the others do not come to an end or the
   *     database does not answer, 507 when its disk is full
   */
  public <T> T inTransaction(Callable<T> work) {
    for (int attempt = 1; attempt <= MOST; attempt++) {
      try {
        return QuarkusTransaction.requiringNew().timeout(SECONDS).call(work);
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
        pause(attempt, clash);
      }
    }
    throw new Problem(
            503, "busy", "Others write the same at this time", "Send it again.", List.of())
        .with("Retry-After", "1");
  }

  private static void pause(int attempt, RuntimeException clash) {
    if (attempt == MOST) {
      Log.warnf(clash, "gave up after %d attempts", MOST);
    }
    LockSupport.parkNanos(attempt * ThreadLocalRandom.current().nextLong(PAUSE_NANOS));
  }
}

package coldround.http;

import coldround.store.Embedded;
import io.quarkus.logging.Log;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.sql.DataSource;
import org.h2.mvstore.MVStore;
import org.h2.mvstore.MVStoreException;

/**
 * What is committed in the store, as a text that is another one as soon as anything else is: the
 * number of the last version on disk of H2, which has one for each commit where commits are written
 * at once, and the snapshot of PostgreSQL. Empty for a store in memory, which has neither.
 */
@ApplicationScoped
class StoreState {

  private static final int LONGEST_MS = 2000;
  private static final String SNAPSHOT = "select cast(pg_current_snapshot() as text)";

  private final DataSource source;
  private final ExecutorService asker = Executors.newSingleThreadExecutor(StoreState::daemon);
  private final SharedQuestion<Optional<String>> question = new SharedQuestion<>(this::ask, asker);
  private volatile MVStore file;
  private volatile boolean failing;

  @Inject
  StoreState(DataSource source) {
    this.source = source;
  }

  // a worker is not to be had while all of them wait for the answer
  private static Thread daemon(Runnable asks) {
    Thread thread = new Thread(asks, "state-of-the-store");
    thread.setDaemon(true);
    return thread;
  }

  @PreDestroy
  void end() {
    asker.shutdownNow();
  }

  /**
   * For a thread that nothing may hold up. Empty also while the store does not tell: who reads it
   * finds out whether it is away.
   */
  CompletionStage<Optional<String>> soon() {
    MVStore open = file;
    Optional<String> known = open == null ? Optional.empty() : version(open);
    return known.isPresent()
        ? CompletableFuture.completedStage(known)
        : question.answer().handle(this::orEmpty);
  }

  /** The same, waited for. */
  Optional<String> now() {
    return soon().toCompletableFuture().join();
  }

  private Optional<String> orEmpty(Optional<String> told, Throwable fault) {
    boolean failed = fault != null;
    if (failed && !failing) {
      Log.warn("no answer is given again while the store does not tell its state", fault);
    }
    failing = failed;
    return failed ? Optional.empty() : told;
  }

  /**
   * Empty for a store that is closed, or is about to be: to ask for more would wait until it is.
   */
  private static Optional<String> version(MVStore open) {
    return open.getPanicException() != null || open.isClosed()
        ? Optional.empty()
        : Optional.of(Long.toString(open.getCurrentVersion()));
  }

  /**
   * The state seen, if all that is committed in it can be read from here on, so that what is read
   * may be kept under it: whatever commits behind it changes the state. A version of H2 that is
   * being written at the time is not told, for what commits meanwhile may or may not be in it.
   */
  Optional<String> settled(Optional<String> seen) {
    MVStore open = file;
    if (open == null) {
      return seen;
    }
    try {
      // waits for whoever is writing
      open.commit();
    } catch (MVStoreException lost) {
      // what is read next tells of it, if it is still so
      return Optional.empty();
    }
    return seen.equals(version(open)) ? seen : Optional.empty();
  }

  private Optional<String> ask() {
    try (Connection connection = source.getConnection()) {
      Optional<Embedded> embedded = Embedded.behind(connection);
      if (embedded.isEmpty()) {
        return Optional.of(snapshot(connection));
      }
      MVStore store = embedded.get().file();
      // in memory, or commits stay there for a while, without a version of their own
      if (store.getFileStore() == null || store.getAutoCommitDelay() != 0) {
        return Optional.empty();
      }
      file = store;
      return version(store);
    } catch (SQLException e) {
      throw new PersistenceException(e);
    }
  }

  private static String snapshot(Connection connection) throws SQLException {
    int patience = connection.getNetworkTimeout();
    // else one that is never answered would be waited for as long as the network likes
    connection.setNetworkTimeout(Runnable::run, LONGEST_MS);
    try (PreparedStatement statement = connection.prepareStatement(SNAPSHOT);
        ResultSet row = statement.executeQuery()) {
      row.next();
      return row.getString(1);
    } finally {
      if (!connection.isClosed()) {
        connection.setNetworkTimeout(Runnable::run, patience);
      }
    }
  }
}

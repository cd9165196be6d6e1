package coldround.http;

import coldround.store.Embedded;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.PersistenceException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
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

  private static final String SNAPSHOT = "select cast(pg_current_snapshot() as text)";

  private final DataSource source;
  private final SharedQuestion<Optional<String>> question =
      new SharedQuestion<>(this::ask, Infrastructure.getDefaultWorkerPool());
  private volatile MVStore file;

  @Inject
  StoreState(DataSource source) {
    this.source = source;
  }

  /** Without waiting; fails when the store is away, or does not answer in time. */
  CompletionStage<Optional<String>> soon() {
    MVStore open = file;
    Optional<String> known = open == null ? Optional.empty() : version(open);
    return known.isPresent() ? CompletableFuture.completedStage(known) : question.answer();
  }

  /**
   * @throws PersistenceException when the store is away, or does not answer in time
   */
  Optional<String> now() {
    try {
      return soon().toCompletableFuture().join();
    } catch (CompletionException e) {
      throw new PersistenceException(e.getCause());
    }
  }

  /** Empty for a store that is closed. */
  private static Optional<String> version(MVStore open) {
    return open.isClosed()
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
    try (PreparedStatement statement = connection.prepareStatement(SNAPSHOT);
        ResultSet row = statement.executeQuery()) {
      row.next();
      return row.getString(1);
    }
  }
}

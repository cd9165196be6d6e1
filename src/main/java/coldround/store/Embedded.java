package coldround.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.h2.engine.Database;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.h2.mvstore.MVStore;

/**
 * The embedded database behind a connection, by classes that H2 does not promise to keep as they
 * are: whoever takes its next version looks here.
 */
public record Embedded(Database database) {

  /**
   * @return empty for a connection to another database, and for one that is closed
   */
  public static Optional<Embedded> behind(Connection connection) throws SQLException {
    return connection.isWrapperFor(JdbcConnection.class)
            && connection.unwrap(JdbcConnection.class).getSession() instanceof SessionLocal session
        ? Optional.of(new Embedded(session.getDatabase()))
        : Optional.empty();
  }

  public MVStore file() {
    return database.getStore().getMvStore();
  }

  /** Whether it can be used no more, as after a write that failed; to be opened again then. */
  public boolean isLost() {
    return file().isClosed();
  }

  /**
   * Ends what is lost, so that the next connection opens the file anew; not again, as that would be
   * the end of whatever has been opened there since.
   */
  public void end() {
    synchronized (database) {
      if (!database.isClosing()) {
        database.shutdownImmediately();
      }
    }
  }
}

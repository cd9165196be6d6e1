package coldround.feed.edge;

import io.agroal.api.AgroalDataSource;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Has the embedded database reserve many numbers of changes at once. It writes its file whenever it
 * reserves some, by itself 32 of them, in the middle of a transaction that may write a hundred
 * thousand changes. A server is left as it is: there each connection would reserve its own, and
 * changes of one thing would no longer be numbered in their order.
 */
@ApplicationScoped
class NumbersAhead {

  private static final String RESERVE = "alter table feed_event alter column id set cache 10000";

  private final AgroalDataSource store;

  @Inject
  NumbersAhead(AgroalDataSource store) {
    this.store = store;
  }

  void atStart(@Observes @Priority(1) StartupEvent start) throws SQLException {
    try (Connection connection = store.getConnection()) {
      if (connection.getMetaData().getDatabaseProductName().equals("H2")) {
        try (Statement statement = connection.createStatement()) {
          statement.execute(RESERVE);
        }
      }
    }
  }
}

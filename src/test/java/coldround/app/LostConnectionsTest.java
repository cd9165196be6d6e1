package coldround.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.http.FileStore;
import coldround.store.Embedded;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(FileStore.class)
class LostConnectionsTest {

  private static final int CONNECTIONS = 4;
  private static final int PATIENCE_MS = 10_000;

  @Inject AgroalDataSource pool;

  @Test
  void oneThatIsLostTakesTheOthersAlong() throws Exception {
    List<Connection> open = several();
    Connection last = open.remove(0);
    for (Connection each : open) {
      each.close();
    }
    // as a write that failed leaves it
    Embedded.behind(last).orElseThrow().file().closeImmediately();
    last.close();
    List<Connection> anew = new ArrayList<>();
    for (int i = 0; i < CONNECTIONS; i++) {
      anew.add(afterAMoment());
    }
    for (Connection each : anew) {
      assertEquals(1, one(each), "can be used");
      each.close();
    }
  }

  /** What was opened anew is not ended by who comes back late from what was lost. */
  @Test
  void whoComesBackLateLeavesTheOthersAlone() throws Exception {
    List<Connection> lost = several();
    Embedded.behind(lost.get(0)).orElseThrow().file().closeImmediately();
    lost.get(0).close();
    try (Connection anew = afterAMoment()) {
      Embedded opened = Embedded.behind(anew).orElseThrow();
      for (Connection late : lost.subList(1, CONNECTIONS)) {
        late.close();
        try (Connection further = pool.getConnection()) {
          assertEquals(1, one(further));
          assertEquals(opened, Embedded.behind(further).orElseThrow());
        }
      }
      assertEquals(1, one(anew));
    }
  }

  /** The pool lets go of what is lost by another thread. */
  private Connection afterAMoment() throws Exception {
    for (int waited = 0; waited < PATIENCE_MS; waited++) {
      Connection open = pool.getConnection();
      if (!Embedded.behind(open).orElseThrow().isLost()) {
        return open;
      }
      open.close();
      Thread.sleep(1);
    }
    throw new AssertionError("what is lost is handed out again and again");
  }

  private List<Connection> several() throws SQLException {
    List<Connection> open = new ArrayList<>();
    for (int i = 0; i < CONNECTIONS; i++) {
      open.add(pool.getConnection());
    }
    return open;
  }

  private static int one(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("select min(1) from account")) {
      row.next();
      return row.getInt(1);
    }
  }
}

package coldround.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.store.Embedded;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.h2.jdbcx.JdbcDataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StoreStateTest {

  @TempDir Path folder;

  private JdbcDataSource source(String url) throws SQLException {
    JdbcDataSource source = new JdbcDataSource();
    source.setURL(url.replace("FOLDER", folder.toString()));
    return source;
  }

  private static void run(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private static int count(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        var rows = statement.executeQuery("select count(*) from t")) {
      rows.next();
      return rows.getInt(1);
    }
  }

  @Test
  void itChangesWithEachCommitAndWithNothingElse() throws SQLException {
    JdbcDataSource source = source("jdbc:h2:file:FOLDER/a;WRITE_DELAY=0");
    StoreState state = new StoreState(source);
    try (Connection one = source.getConnection();
        Connection other = source.getConnection()) {
      run(one, "create table t (a int)");
      one.setAutoCommit(false);
      Optional<String> before = state.settled(state.now());
      assertTrue(before.isPresent());
      run(one, "insert into t values (1)");
      assertEquals(before, state.now(), "not committed yet");
      assertEquals(0, count(other));
      one.commit();
      Optional<String> after = state.now();
      assertNotEquals(before, after);
      assertEquals(1, count(other));
      assertEquals(after, state.settled(after));
      assertEquals(Optional.empty(), state.settled(before), "not what was seen");
    }
  }

  @Test
  void aStoreOpenedAgainIsAsked() throws SQLException {
    JdbcDataSource source = source("jdbc:h2:file:FOLDER/b;WRITE_DELAY=0");
    StoreState state = new StoreState(source);
    try (Connection one = source.getConnection()) {
      run(one, "create table t (a int)");
      assertTrue(state.now().isPresent());
    }
    try (Connection one = source.getConnection()) {
      Optional<String> opened = state.now();
      run(one, "insert into t values (1)");
      assertNotEquals(opened, state.now());
    }
  }

  @Test
  void aStoreThatIsLostHasNoneAndNoFaultOfItsOwn() throws SQLException {
    JdbcDataSource source = source("jdbc:h2:file:FOLDER/lost;WRITE_DELAY=0");
    StoreState state = new StoreState(source);
    Connection pooled = source.getConnection();
    run(pooled, "create table t (a int)");
    Optional<String> seen = state.now();
    assertTrue(seen.isPresent());
    Embedded embedded = Embedded.behind(pooled).orElseThrow();
    embedded.file().closeImmediately();
    assertEquals(Optional.empty(), state.settled(seen), "lost since it was seen");
    assertEquals(Optional.empty(), new StoreState(only(pooled)).now(), "lost before");
    embedded.end();
    assertTrue(state.now().isPresent(), "opened again");
  }

  @Test
  void aStoreThatIsAwayHasNone() throws Exception {
    JdbcDataSource nowhere = source("jdbc:h2:file:FOLDER/nowhere;IFEXISTS=TRUE");
    StoreState state = new StoreState(nowhere);
    assertEquals(Optional.empty(), state.soon().toCompletableFuture().get());
    assertEquals(Optional.empty(), state.now());
  }

  /** A pool with one connection that does not know yet that it is of no use. */
  private static DataSource only(Connection one) {
    return (DataSource)
        Proxy.newProxyInstance(
            DataSource.class.getClassLoader(),
            new Class<?>[] {DataSource.class},
            (proxy, method, arguments) -> one);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"jdbc:h2:mem:state;WRITE_DELAY=0", "jdbc:h2:file:FOLDER/c;WRITE_DELAY=500"})
  void aStoreWithoutAVersionForEachCommitHasNone(String url) throws SQLException {
    JdbcDataSource source = source(url);
    try (Connection open = source.getConnection()) {
      assertEquals(Optional.empty(), new StoreState(source).now(), open.toString());
    }
  }

  /** What was counted under a state is what there is for as long as the state is the same. */
  @Test
  void nothingIsMissedWhileManyWrite() throws Exception {
    JdbcDataSource source = source("jdbc:h2:file:FOLDER/d;WRITE_DELAY=0");
    StoreState state = new StoreState(source);
    int writers = 4;
    int each = 500;
    ExecutorService threads = Executors.newFixedThreadPool(writers);
    try (Connection reader = source.getConnection()) {
      run(reader, "create table t (a int)");
      Callable<Void> write =
          () -> {
            try (Connection own = source.getConnection()) {
              for (int i = 0; i < each; i++) {
                run(own, "insert into t values (1)");
              }
            }
            return null;
          };
      Future<Void>[] all = new Future[writers];
      for (int i = 0; i < writers; i++) {
        all[i] = threads.submit(write);
      }
      int counted = 0;
      while (counted < writers * each) {
        Optional<String> settled = state.settled(state.now());
        counted = count(reader);
        if (settled.isPresent() && settled.equals(state.now())) {
          assertTrue(count(reader) >= counted);
        }
      }
      for (Future<Void> one : all) {
        one.get();
      }
      Optional<String> last = state.settled(state.now());
      assertEquals(writers * each, count(reader));
      assertEquals(last, state.now());
      assertTrue(last.isPresent(), "nobody writes any more");
    } finally {
      threads.shutdownNow();
    }
  }
}

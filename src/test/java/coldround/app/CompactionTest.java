package coldround.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.store.Embedded;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Random;
import org.h2.jdbcx.JdbcDataSource;
import org.h2.mvstore.MVStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompactionTest {

  private static final int ROWS = 20_000;
  private static final int COMMITS = 2_000;

  @TempDir Path folder;

  private final JdbcDataSource source = new JdbcDataSource();
  private final Random chance = new Random(1);

  @BeforeEach
  void embeddedAsTheServiceHasIt() {
    source.setURL("jdbc:h2:file:" + folder.resolve("things") + ";WRITE_DELAY=0");
  }

  @Test
  void roomThatSmallCommitsLeftIsUsedAgain() throws Exception {
    long written;
    try (Connection connection = source.getConnection()) {
      MVStore file = fill(connection);
      long filled = size();
      change(connection);
      int before = file.getFileStore().getChunksFillRate();
      assertTrue(before < 50, "needed before: " + before + " %");
      long size = size();
      Compaction compaction = new Compaction(source);
      compaction.atStart(null);
      compaction.steps();
      int after = file.getFileStore().getChunksFillRate();
      assertTrue(after >= 70, "needed after: " + after + " %, before: " + before + " %");
      change(connection);
      String sizes = filled + ", " + size + " and " + size() + " bytes";
      assertTrue(size() - size < (size - filled) / 2, "it grew as fast as before: " + sizes);
      written = sum(connection);
    }
    try (Connection again = source.getConnection()) {
      assertEquals(written, sum(again));
    }
  }

  private MVStore fill(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("create table thing (id int primary key, said int, text varchar)");
      statement.execute(
          "insert into thing select x, x, repeat('x', 300) from system_range(1, " + ROWS + ")");
    }
    MVStore file = Embedded.behind(connection).orElseThrow().file();
    // else what is left is taken again only after 45 s
    file.setRetentionTime(0);
    return file;
  }

  /** All over the file, a commit each. */
  private void change(Connection connection) throws SQLException {
    try (PreparedStatement update =
        connection.prepareStatement("update thing set said = ? where id = ?")) {
      for (int i = 1; i <= COMMITS; i++) {
        update.setInt(1, i);
        update.setInt(2, 1 + chance.nextInt(ROWS));
        assertEquals(1, update.executeUpdate());
      }
    }
  }

  private static long sum(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet found =
            statement.executeQuery("select sum(cast(said as bigint) * id) from thing")) {
      found.next();
      return found.getLong(1);
    }
  }

  private long size() throws Exception {
    return Files.size(folder.resolve("things.mv.db"));
  }
}

package coldround.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A store of every schema version that there ever was, with a row in each table that it had, comes
 * to the newest version with all its rows, on both databases.
 */
class MigrationTest {

  private static final Path MIGRATIONS = Path.of("src/main/resources/db/migration");

  /** Made anew by the program from the rest, so that a migration may clear them. */
  private static final List<String> MADE_ANEW = List.of("assessment_basis");

  private static EmbeddedPostgres server;

  @BeforeAll
  static void start() throws IOException {
    server = EmbeddedPostgres.start();
  }

  @AfterAll
  static void stop() throws IOException {
    server.close();
  }

  static IntStream versions() throws IOException {
    try (Stream<Path> files = Files.list(MIGRATIONS)) {
      return files
          .map(file -> file.getFileName().toString())
          .mapToInt(name -> Integer.parseInt(name.substring(1, name.indexOf("__"))))
          .sorted()
          .boxed()
          .toList()
          .stream()
          .mapToInt(Integer::intValue);
    }
  }

  @ParameterizedTest
  @MethodSource("versions")
  void onH2(int version) throws SQLException {
    String url =
        "jdbc:h2:mem:v%d;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE"
            .formatted(version);
    rise(url, "sa", "", version);
  }

  @ParameterizedTest
  @MethodSource("versions")
  void onPostgres(int version) throws SQLException {
    try (Connection admin = server.getPostgresDatabase().getConnection();
        Statement statement = admin.createStatement()) {
      statement.execute("create database v" + version);
    }
    rise(server.getJdbcUrl("postgres", "v" + version), "postgres", "postgres", version);
  }

  private static void migrate(String url, String user, String password, String to) {
    Flyway.configure()
        .dataSource(url, user, password)
        .locations("filesystem:" + MIGRATIONS)
        .target(to)
        .load()
        .migrate();
  }

  private void rise(String url, String user, String password, int version) throws SQLException {
    migrate(url, user, password, Integer.toString(version));
    try (Connection store = DriverManager.getConnection(url, user, password)) {
      new OneRowEach(store).fill();
      Map<String, Map<String, String>> before = rows(store);
      assertTrue(before.containsKey("visit"), "there are tables");
      migrate(url, user, password, "latest");
      Map<String, Map<String, String>> after = rows(store);
      before.forEach(
          (table, cells) -> {
            Map<String, String> found = after.get(table);
            cells.forEach(
                (column, cell) -> assertEquals(cell, found.get(column), table + "." + column));
          });
      try (Statement statement = store.createStatement();
          ResultSet listed = statement.executeQuery("select count(*) from unit_place")) {
        listed.next();
        assertEquals(1, listed.getInt(1), "the views see the rows");
      }
    }
  }

  /** Cells of the one row of each table. */
  private static Map<String, Map<String, String>> rows(Connection store) throws SQLException {
    Map<String, Map<String, String>> rows = new TreeMap<>();
    for (String table : OneRowEach.tables(store)) {
      if (MADE_ANEW.contains(table)) {
        continue;
      }
      try (Statement statement = store.createStatement();
          ResultSet row =
              statement.executeQuery("select * from \"" + table + "\" order by 1 limit 1")) {
        Map<String, String> cells = new TreeMap<>();
        if (row.next()) {
          for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
            cells.put(row.getMetaData().getColumnName(i), row.getString(i));
          }
        }
        rows.put(table, cells);
      }
    }
    return rows;
  }

  /** Puts a row into each empty table of any schema; what refers to another row refers to it. */
  private static final class OneRowEach {
    private final Connection store;

    OneRowEach(Connection store) {
      this.store = store;
    }

    static List<String> tables(Connection store) throws SQLException {
      List<String> tables = new ArrayList<>();
      try (ResultSet found =
          store
              .getMetaData()
              .getTables(
                  store.getCatalog(),
                  store.getSchema(),
                  "%",
                  new String[] {"TABLE", "BASE TABLE"})) {
        while (found.next()) {
          tables.add(found.getString("TABLE_NAME"));
        }
      }
      tables.remove("flyway_schema_history");
      return tables;
    }

    /** Again and again, for a row can only come behind those that it refers to. */
    void fill() throws SQLException {
      List<String> open = tables(store);
      while (!open.isEmpty()) {
        int before = open.size();
        SQLException last = null;
        for (String table : List.copyOf(open)) {
          try {
            put(table);
            open.remove(table);
          } catch (SQLException e) {
            last = e;
          }
        }
        if (open.size() == before) {
          throw new SQLException("no row can be put into " + open, last);
        }
      }
    }

    private void put(String table) throws SQLException {
      try (Statement statement = store.createStatement();
          ResultSet there = statement.executeQuery("select 1 from \"" + table + "\" limit 1")) {
        if (there.next()) {
          return;
        }
      }
      List<String> names = new ArrayList<>();
      List<String> values = new ArrayList<>();
      try (ResultSet column =
          store
              .getMetaData()
              .getColumns(store.getCatalog(), store.getSchema(), table.replace("_", "\\_"), "%")) {
        while (column.next()) {
          names.add('"' + column.getString("COLUMN_NAME") + '"');
          values.add(value(column));
        }
      }
      try (Statement statement = store.createStatement()) {
        statement.execute(
            "insert into \"%s\" (%s) values (%s)"
                .formatted(table, String.join(", ", names), String.join(", ", values)));
      }
    }

    /** The same everywhere, so that keys meet. */
    private static String value(ResultSet column) throws SQLException {
      if (column.getString("COLUMN_NAME").equals("moved_to")) {
        // what is brought forward is so to an earlier day
        return "date '2026-05-11'";
      }
      int type = column.getInt("DATA_TYPE");
      int size = column.getInt("COLUMN_SIZE");
      return switch (type) {
        case java.sql.Types.BIT, java.sql.Types.BOOLEAN -> "true";
        case java.sql.Types.DATE -> "date '2026-05-12'";
        case java.sql.Types.TIMESTAMP, java.sql.Types.TIMESTAMP_WITH_TIMEZONE ->
            "timestamp with time zone '2026-05-12 09:00:00+00:00'";
        case java.sql.Types.BINARY, java.sql.Types.VARBINARY -> "'\\x0102'";
        case java.sql.Types.VARCHAR -> "'" + "kept 7".substring(0, Math.min(size, 6)) + "'";
        default -> "7";
      };
    }
  }
}

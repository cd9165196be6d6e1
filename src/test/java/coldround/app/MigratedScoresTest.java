package coldround.app;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A fleet that was stored under each earlier schema and came from there to the newest has the
 * scores, to the last reason, that the same lists have where they are read in now.
 */
@QuarkusTest
class MigratedScoresTest {

  /**
   * What scores are made of, and for each table its rows of one customer. What is referred to
   * first.
   */
  private static final Map<String, String> FLEET = new LinkedHashMap<>();

  static {
    String units =
        "select u.id from unit u join site s on s.id = u.site_id join customer c on c.id ="
            + " s.customer_id where c.code = 'MIGRATED'";
    FLEET.put("customer", "code = 'MIGRATED'");
    FLEET.put("site", "customer_id in (select id from customer where code = 'MIGRATED')");
    FLEET.put("unit", "id in (" + units + ")");
    FLEET.put("visit", "unit_id in (" + units + ")");
    FLEET.put("fault", "unit_id in (" + units + ")");
  }

  private static Map<String, String> fresh;

  @Inject AgroalDataSource store;

  static IntStream versions() throws Exception {
    return MigrationTest.versions();
  }

  @BeforeEach
  void readIn() {
    if (fresh != null) {
      return;
    }
    Api.put("customers", "customer,name\nMIGRATED,Came Along\n");
    Api.put(
        "sites",
        "customer,site,name,elevation [m],time_zone,surroundings\n"
            + "MIGRATED,S1,Market,1600,America/Denver,greasy\n");
    Api.put(
        "units",
        """
        customer,site,unit,kind,installed,refrigerant,charge [lb],design_split [deltaF],high_cutout [psig],condenser_place,replacement_cost [USD]
        MIGRATED,S1,WC1,walk-in-cooler,2011-04-01,R-404A,12,25,400,roof,9000
        MIGRATED,S1,IM1,ice-machine,2022-03-01,R-410A,4,30,,indoors,
        MIGRATED,S1,RC1,reach-in-cooler,,,,,,,
        """);
    Api.put(
        "visits",
        """
        customer,site,unit,visit,date,purpose,ambient [degF],head_pressure [psig],suction_pressure [psig],condenser_coil,refrigerant_added [lb],work,faults
        MIGRATED,S1,WC1,1,2025-07-10,breakdown,95,365,n/t: port blocked,heavy,2,condenser-coil-cleaned,high-head-lockout
        MIGRATED,S1,WC1,2,2026-05-12,planned,85,262,48,moderate,,,
        MIGRATED,S1,IM1,1,2026-05-12,planned,75,290,110,light,,inspected,
        """);
    Api.put(
        "faults",
        "customer,site,unit,date,failure_mode,cause\n"
            + "MIGRATED,S1,WC1,2024-08-01,high-head-lockout,dirty coil\n"
            + "MIGRATED,S1,RC1,2026-02-02,evaporator-fan-failed,\n");
    fresh = conditions();
    assertEquals(3, fresh.size());
  }

  private static Map<String, String> conditions() {
    Map<String, String> told = new TreeMap<>();
    List<String> units =
        asPlanner()
            .queryParam("customer", "MIGRATED")
            .get("/api/v1/units")
            .jsonPath()
            .getList("items.unit.id");
    for (String unit : units) {
      String condition =
          asPlanner().get("/api/v1/units/" + unit + "/condition?asOf=2026-07-01").asString();
      assertTrue(condition.contains("\"score\""), unit);
      told.put(unit, condition);
    }
    return told;
  }

  @ParameterizedTest
  @MethodSource("versions")
  void scoresAreThoseOfTheSameListsReadInNow(int version) throws SQLException {
    String url =
        "jdbc:h2:mem:scores%d;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE"
            .formatted(version);
    migrate(url, Integer.toString(version));
    try (Connection old = DriverManager.getConnection(url, "sa", "");
        Connection now = store.getConnection()) {
      for (Map.Entry<String, String> table : FLEET.entrySet()) {
        copy(now, old, table.getKey(), table.getValue());
      }
      migrate(url, "latest");
      now.setAutoCommit(false);
      List<String> last = new ArrayList<>(FLEET.keySet());
      Collections.reverse(last);
      List<String> removed = List.of("visit", "fault");
      for (String table : last) {
        // the rest is referred to by what the service makes of it: its columns are written over
        if (removed.contains(table)) {
          execute(now, "delete from %s where %s".formatted(table, FLEET.get(table)));
        }
      }
      for (String table : FLEET.keySet()) {
        if (removed.contains(table)) {
          copy(old, now, table, "true");
        } else {
          overwrite(old, now, table);
        }
      }
      now.commit();
      now.setAutoCommit(true);
    }
    assertEquals(fresh, conditions(), "from version " + version);
  }

  private static void migrate(String url, String to) {
    Flyway.configure()
        .dataSource(url, "sa", "")
        .locations("filesystem:src/main/resources/db/migration")
        .target(to)
        .load()
        .migrate();
  }

  private static void execute(Connection store, String sql) throws SQLException {
    try (Statement statement = store.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Columns that the table has there; a table of an earlier schema may lack some. */
  private static List<String> columns(Connection store, String table) throws SQLException {
    List<String> names = new ArrayList<>();
    try (Statement statement = store.createStatement();
        ResultSet none = statement.executeQuery("select * from " + table + " where false")) {
      for (int i = 1; i <= none.getMetaData().getColumnCount(); i++) {
        names.add(none.getMetaData().getColumnName(i));
      }
    }
    return names;
  }

  private static void copy(Connection from, Connection to, String table, String which)
      throws SQLException {
    List<String> columns = columns(from, table);
    columns.retainAll(columns(to, table));
    String names = String.join(", ", columns);
    String marks = String.join(", ", Collections.nCopies(columns.size(), "?"));
    try (Statement read = from.createStatement();
        ResultSet rows =
            read.executeQuery("select %s from %s where %s".formatted(names, table, which));
        PreparedStatement write =
            to.prepareStatement("insert into %s (%s) values (%s)".formatted(table, names, marks))) {
      int copied = 0;
      while (rows.next()) {
        for (int i = 1; i <= columns.size(); i++) {
          write.setObject(i, rows.getObject(i));
        }
        copied += write.executeUpdate();
      }
      assertTrue(copied > 0, table);
    }
  }

  private static void overwrite(Connection from, Connection to, String table) throws SQLException {
    List<String> columns = columns(from, table);
    String set = String.join(" = ?, ", columns) + " = ?";
    try (Statement read = from.createStatement();
        ResultSet rows =
            read.executeQuery(
                "select %s, id from %s".formatted(String.join(", ", columns), table));
        PreparedStatement write =
            to.prepareStatement("update %s set %s where id = ?".formatted(table, set))) {
      int written = 0;
      while (rows.next()) {
        for (int i = 1; i <= columns.size() + 1; i++) {
          write.setObject(i, rows.getObject(i));
        }
        written += write.executeUpdate();
      }
      assertTrue(written > 0, table);
    }
  }
}

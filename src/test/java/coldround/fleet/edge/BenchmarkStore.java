package coldround.fleet.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Reading;
import coldround.quantity.Quantity;
import jakarta.persistence.EntityManager;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hibernate.SessionFactory;
import org.hibernate.boot.model.naming.CamelCaseToUnderscoresNamingStrategy;
import org.hibernate.cfg.Configuration;

/** A database with an invented fleet, written by plain JDBC and read as the service does. */
public final class BenchmarkStore implements AutoCloseable {

  public static final LocalDate DAY = LocalDate.of(2026, 7, 1);

  /** Nothing is written here, and so nothing held back. */
  private static final TransactionSynchronizationRegistry HOLDS_NOTHING =
      (TransactionSynchronizationRegistry)
          Proxy.newProxyInstance(
              BenchmarkStore.class.getClassLoader(),
              new Class<?>[] {TransactionSynchronizationRegistry.class},
              (registry, method, arguments) -> null);

  private static final int READINGS_A_VISIT = 5;
  private static final int BATCH = 1000;
  private static final String[] KINDS = {
    "walk-in-cooler", "walk-in-freezer", "reach-in-cooler", "ice-machine", "split-air-conditioner"
  };
  private static final String[] GASES = {"R-404A", "R-22", "R-134a", "R-448A", "R-410A"};
  private static final String[] GRADES = {"clean", "light", "moderate", "heavy"};
  private static final String[] ROWS = {
    "select * from unit order by id",
    "select * from visit order by unit_id",
    "select * from fault order by unit_id"
  };

  private final String url;
  private SessionFactory sessions;

  /**
   * That many units and, nearly, readings.
   *
   * @param url of an empty database, H2 or PostgreSQL
   */
  public BenchmarkStore(String url, int units, int readings) throws IOException, SQLException {
    this.url = url;
    try (Connection connection = DriverManager.getConnection(url)) {
      try (Statement statement = connection.createStatement()) {
        statement.execute(
            Files.readString(Path.of("src/main/resources/db/migration/V1__fleet.sql")));
      }
      connection.setAutoCommit(false);
      new Filling(connection).fill(units, Math.max(1, readings / units / READINGS_A_VISIT));
      connection.commit();
      try (Statement statement = connection.createStatement()) {
        statement.execute("analyze");
        connection.commit();
      }
    }
  }

  /** Reads every column of every unit, visit and fault, one row after the other. */
  public long plainRows() throws SQLException {
    long rows = 0;
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      rowByRow(connection, statement);
      for (String query : ROWS) {
        try (ResultSet result = statement.executeQuery(query)) {
          int columns = result.getMetaData().getColumnCount();
          while (result.next()) {
            for (int i = 1; i <= columns; i++) {
              result.getObject(i);
            }
            rows++;
          }
        }
      }
    }
    return rows;
  }

  /** A whole result would be held in memory, or written to a file of its own, before it is read. */
  private void rowByRow(Connection connection, Statement statement) throws SQLException {
    if (url.startsWith("jdbc:h2:")) {
      statement.execute("set lazy_query_execution 1");
    } else {
      connection.setAutoCommit(false);
      statement.setFetchSize(BATCH);
    }
  }

  /** Lends the reader of the service. */
  public void read(Consumer<Fleet> work) {
    if (sessions == null) {
      sessions = sessions();
    }
    try (EntityManager entities = sessions.createEntityManager()) {
      entities.getTransaction().begin();
      work.accept(
          new FleetReads(
              entities,
              new StoredEquipment(entities, HOLDS_NOTHING),
              new StoredVisits(entities, HOLDS_NOTHING),
              new LastHistory(HOLDS_NOTHING)));
      entities.getTransaction().rollback();
    }
  }

  private SessionFactory sessions() {
    Configuration configuration = new Configuration();
    Stream.of(
            CustomerRow.class,
            SiteRow.class,
            UnitRow.class,
            VisitRow.class,
            FaultRow.class,
            TechnicianRow.class,
            TravelTimeRow.class)
        .forEach(configuration::addAnnotatedClass);
    configuration.setPhysicalNamingStrategy(new CamelCaseToUnderscoresNamingStrategy());
    configuration.setProperty("hibernate.connection.url", url);
    configuration.setProperty("hibernate.hbm2ddl.auto", "none");
    return configuration.buildSessionFactory();
  }

  @Override
  public void close() {
    if (sessions != null) {
      sessions.close();
    }
  }

  /** Writes the invented fleet. */
  private static final class Filling {
    private final Random random = new Random(20260701);
    private final Connection connection;
    private final List<PreparedStatement> open = new ArrayList<>();

    Filling(Connection connection) {
      this.connection = connection;
    }

    private PreparedStatement into(String table, int columns) throws SQLException {
      String marks = "?,".repeat(columns).substring(0, 2 * columns - 1);
      PreparedStatement statement =
          connection.prepareStatement("insert into " + table + " values (" + marks + ")");
      open.add(statement);
      return statement;
    }

    private static void row(PreparedStatement statement, Object... values) throws SQLException {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      statement.addBatch();
    }

    void fill(int units, int visits) throws SQLException {
      PreparedStatement customer = into("customer", 5);
      PreparedStatement site = into("site", 13);
      PreparedStatement unit = into("unit", 13);
      PreparedStatement visit = into("visit", 10);
      PreparedStatement fault = into("fault", 8);
      row(customer, 1, "C", "C", "", "");
      for (int i = 0; i < units; i++) {
        if (i % 10 == 0) {
          row(
              site,
              i / 10 + 1,
              1,
              "S" + i,
              "",
              "",
              38.0,
              -79.0,
              "",
              "",
              "US-VA",
              "greasy",
              "",
              "95.0 degF");
        }
        unit(unit, i);
        for (int n = 0; n < visits; n++) {
          visit(visit, i + 1, n, visits);
        }
        if (random.nextInt(3) == 0) {
          LocalDate day = DAY.minusDays(random.nextInt(900) + 1);
          row(fault, i + 1, day, "compressor-no-start", "", day.plusDays(1), "", "", "");
        }
        if (i % BATCH == BATCH - 1) {
          write();
        }
      }
      write();
      for (PreparedStatement statement : open) {
        statement.close();
      }
    }

    private void write() throws SQLException {
      for (PreparedStatement statement : open) {
        statement.executeBatch();
      }
      // millions of rows in one transaction would be kept twice until its end
      connection.commit();
    }

    private void unit(PreparedStatement unit, int i) throws SQLException {
      String plate =
          Packed.text(
              Map.of(
                  "charge", Quantity.of(8.5, "lb"),
                  "high_cutout", Quantity.of(400, "psig"),
                  "compressor_rated", Quantity.of(12, "A")));
      row(
          unit,
          i + 1,
          i / 10 + 1,
          "U" + i,
          KINDS[i % KINDS.length],
          "",
          "Maker",
          "Model",
          "",
          DAY.minusDays(random.nextInt(7000) + 400),
          GASES[random.nextInt(GASES.length)],
          "roof",
          null,
          plate);
    }

    private void visit(PreparedStatement visit, int unit, int n, int visits) throws SQLException {
      LocalDate day = DAY.minusDays((long) (visits - n) * 120 + random.nextInt(60));
      double ambient = 70 + random.nextInt(25);
      String readings =
          Packed.readingsText(
              List.of(
                  Reading.taken("ambient", Quantity.of(ambient, "degF")),
                  Reading.taken("head_pressure", Quantity.of(180 + random.nextInt(150), "psig")),
                  Reading.taken("suction_pressure", Quantity.of(20 + random.nextInt(30), "psig")),
                  Reading.taken("compressor", Quantity.of(7 + random.nextInt(4), "A")),
                  Reading.taken("box", Quantity.of(34 + random.nextInt(5), "degF"))));
      String findings =
          Packed.textsText(Map.of("condenser_coil", GRADES[random.nextInt(GRADES.length)]));
      String work = n % 2 == 0 ? "condenser-coil-cleaned" : "inspected";
      row(visit, unit, "V" + n, day, "T1", "planned", readings, findings, work, "", "");
    }
  }
}

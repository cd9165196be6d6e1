package coldround.scoring.edge;

import coldround.scoring.FleetList;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.Date;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Random;
import org.flywaydb.core.Flyway;
import org.hibernate.SessionFactory;
import org.hibernate.boot.model.naming.CamelCaseToUnderscoresNamingStrategy;
import org.hibernate.cfg.Configuration;

/** An invented fleet written by plain JDBC, listed as the service lists it. */
public final class FleetListStore implements AutoCloseable {

  private static final int BATCH = 1000;
  private static final int SITES_OF_A_CUSTOMER = 20;
  private static final int UNITS_OF_A_SITE = 10;
  private static final String[] KINDS = {
    "walk-in-cooler", "walk-in-freezer", "reach-in-cooler", "ice-machine", "chiller"
  };
  private static final String[] GASES = {"R-404A", "R-22", "R-134a", "R-448A", "R-410A"};
  // as long as those of the service
  private static final String FACTORS =
      "[{\"factor\":\"age\",\"weight\":25,\"lost\":12.5,\"known\":true},"
          + "{\"factor\":\"refrigerant\",\"weight\":20,\"lost\":4.4,\"known\":true},"
          + "{\"factor\":\"coil\",\"weight\":25,\"lost\":10.3,\"known\":true},"
          + "{\"factor\":\"repeat-faults\",\"weight\":30,\"lost\":7.1,\"known\":false}]";

  private static final String AS_KEPT =
      "update assessment set words = (select lower(concat(u.tag, ' ', u.kind, ' ', u.maker, ' ',"
          + " u.model, ' ', u.refrigerant, ' ', c.code, ' ', c.name, ' ', s.code, ' ', s.name))"
          + " from unit u join site s on s.id = u.site_id join customer c on c.id = s.customer_id"
          + " where u.id = unit_id)";

  private final SessionFactory sessions;
  private final EntityManager entities;

  /**
   * @param url of an empty database, H2 or PostgreSQL, with user and password
   */
  public FleetListStore(String url, int units) throws SQLException {
    Flyway.configure().dataSource(url, null, null).load().migrate();
    try (Connection connection = DriverManager.getConnection(url)) {
      connection.setAutoCommit(false);
      fill(connection, units);
      connection.createStatement().execute(AS_KEPT);
      connection.commit();
      connection.setAutoCommit(true);
      connection.createStatement().execute("analyze");
    }
    Configuration configuration = new Configuration();
    configuration.addAnnotatedClass(FleetLineRow.class).addAnnotatedClass(AssessmentRow.class);
    configuration.setPhysicalNamingStrategy(new CamelCaseToUnderscoresNamingStrategy());
    configuration.setProperty("hibernate.connection.url", url);
    configuration.setProperty("hibernate.hbm2ddl.auto", "none");
    sessions = configuration.buildSessionFactory();
    entities = sessions.createEntityManager();
  }

  /** The list of the service; {@link #forget} between two reads. */
  public FleetList list() {
    return new StoredFleetList(entities, new ObjectMapper(), null, null);
  }

  /** So that nothing is answered from memory. */
  public void forget() {
    entities.clear();
  }

  private static void fill(Connection connection, int units) throws SQLException {
    int sites = (units + UNITS_OF_A_SITE - 1) / UNITS_OF_A_SITE;
    int customers = (sites + SITES_OF_A_CUSTOMER - 1) / SITES_OF_A_CUSTOMER;
    write(
        connection,
        "insert into customer values (?, ?, ?, '', '')",
        customers,
        (row, i) -> {
          row.setString(2, "C" + i);
          row.setString(3, "Customer number " + i);
        });
    write(
        connection,
        "insert into site (id, code, customer_id, name, address, elevation, time_zone,"
            + " jurisdiction, surroundings, visiting_hours, design_ambient)"
            + " values (?, ?, ?, ?, '', '', '', '', '', '', '')",
        sites,
        (row, i) -> {
          row.setString(2, "S" + i);
          row.setLong(3, 1 + i / SITES_OF_A_CUSTOMER);
          row.setString(4, "Dock street " + i);
        });
    Random chance = new Random(1);
    write(
        connection,
        "insert into unit (id, tag, site_id, kind, refrigerant, machine, maker, model, serial,"
            + " installed, condenser_place, plate)"
            + " values (?, ?, ?, ?, ?, '', 'Thornfield', ?, ?, date '2012-04-30', 'roof', ?)",
        units,
        (row, i) -> {
          row.setString(2, "U-" + i);
          row.setLong(3, 1 + i / UNITS_OF_A_SITE);
          row.setString(4, KINDS[i % KINDS.length]);
          row.setString(5, GASES[chance.nextInt(GASES.length)]);
          row.setString(6, "WC " + i % 500);
          row.setString(7, "SN" + i);
          row.setString(8, "charge=11 lb;design_split=30 deltaF;high_cutout=410 psig");
        });
    write(
        connection,
        "insert into assessment (unit_id, as_of, score, low, high, completeness, factors,"
            + " next_due, next_task, words) values (?, date '2026-07-01', ?, 30, 80, 0.8,"
            + " ?, ?, 'condenser-coil-cleaning', '')",
        units,
        (row, i) -> {
          row.setDouble(2, chance.nextDouble() * 100);
          row.setString(3, FACTORS);
          row.setDate(4, Date.valueOf(LocalDate.of(2026, 7, 1).plusDays(chance.nextInt(365))));
        });
  }

  /** Sets all but the first column, which is the number from 1. */
  private interface Setting {
    void set(PreparedStatement row, int number) throws SQLException;
  }

  private static void write(Connection connection, String insert, int rows, Setting setting)
      throws SQLException {
    try (PreparedStatement row = connection.prepareStatement(insert)) {
      for (int i = 0; i < rows; i++) {
        row.setLong(1, i + 1);
        setting.set(row, i);
        row.addBatch();
        if (i % BATCH == BATCH - 1) {
          row.executeBatch();
        }
      }
      row.executeBatch();
    }
  }

  @Override
  public void close() {
    entities.close();
    sessions.close();
  }
}

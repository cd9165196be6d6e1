package coldround.fleet.edge;

import coldround.fleet.FleetFilter;
import coldround.fleet.Site;
import coldround.fleet.UnitIds;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.hibernate.Session;

/** Units with their sites by ascending id, in plain JDBC. */
@ApplicationScoped
class StoredEquipment {

  /** A unit as it is stored, and its site as it is read. */
  record Equipment(UnitRow unit, Site site) {
    long id() {
      return unit.id;
    }
  }

  private static final String SELECT =
      "select u.id, u.tag, u.kind, u.machine, u.maker, u.model, u.serial, u.installed,"
          + " u.refrigerant, u.condenser_place, u.retired, u.plate, s.id, s.code, s.name, s.address,"
          + " s.latitude, s.longitude, s.elevation, s.time_zone, s.jurisdiction, s.surroundings,"
          + " s.visiting_hours, s.design_ambient, c.code from ";
  private static final String WHERE =
      " join site s on s.id = u.site_id join customer c on c.id = s.customer_id where ";
  private static final String NEXT = SELECT + "unit u" + WHERE + "u.id > ?";
  // the ids lead, so that units are found by their primary key however few or many there are
  private static final String OF =
      SELECT
          + "unnest(cast(? as bigint array)) as k (id) join unit u on u.id = k.id"
          + WHERE
          + "true order by u.id";

  private final EntityManager entities;
  private final TransactionSynchronizationRegistry transaction;

  @Inject
  StoredEquipment(EntityManager entities, TransactionSynchronizationRegistry transaction) {
    this.entities = entities;
    this.transaction = transaction;
  }

  /** The next units that fit, at most so many. */
  List<Equipment> next(FleetFilter filter, long after, int most) {
    StringBuilder query = new StringBuilder(NEXT);
    List<Object> values = new ArrayList<>(List.of(after));
    condition("c.code", filter.customer(), query, values);
    condition("s.code", filter.site(), query, values);
    condition("u.kind", filter.kind(), query, values);
    condition("u.refrigerant", filter.refrigerant(), query, values);
    if (!filter.unit().isEmpty()) {
      OptionalLong id = UnitIds.number(filter.unit());
      condition("u.id", id.orElse(-1), query, values);
    }
    query.append(" order by u.id fetch first ").append(most).append(" rows only");
    return read(query.toString(), values);
  }

  private static void condition(
      String column, Object value, StringBuilder query, List<Object> values) {
    if (!value.equals("")) {
      query.append(" and ").append(column).append(" = ?");
      values.add(value);
    }
  }

  List<Equipment> of(Collection<Long> ids) {
    if (ids.size() == 1) {
      Equipment last = last();
      if (last != null && ids.contains(last.id())) {
        return List.of(last);
      }
    }
    List<Equipment> found = read(OF, List.of((Object) ids.toArray()));
    if (ids.size() == 1 && !found.isEmpty()) {
      transaction.putResource(StoredEquipment.class, found.get(0));
    }
    return found;
  }

  /**
   * The one that this transaction has asked for by itself: what comes for one unit asks for it
   * again and again. Null for none.
   */
  Equipment last() {
    return (Equipment) transaction.getResource(StoredEquipment.class);
  }

  /** To be called before units or sites are written, and when rows of units are locked. */
  void forget() {
    transaction.putResource(StoredEquipment.class, null);
  }

  private List<Equipment> read(String query, List<Object> values) {
    return entities
        .unwrap(Session.class)
        .doReturningWork(
            connection -> {
              try (PreparedStatement find = connection.prepareStatement(query)) {
                bind(connection, find, values);
                try (ResultSet rows = find.executeQuery()) {
                  return read(rows);
                }
              }
            });
  }

  private static void bind(Connection connection, PreparedStatement find, List<Object> values)
      throws SQLException {
    for (int i = 0; i < values.size(); i++) {
      if (values.get(i) instanceof Object[] several) {
        Array array = connection.createArrayOf("bigint", several);
        find.setArray(i + 1, array);
      } else {
        find.setObject(i + 1, values.get(i));
      }
    }
  }

  private static List<Equipment> read(ResultSet rows) throws SQLException {
    List<Equipment> read = new ArrayList<>();
    Map<Long, SiteRow> sites = new HashMap<>();
    Map<Long, Site> readSites = new HashMap<>();
    while (rows.next()) {
      long id = rows.getLong(13);
      SiteRow site = sites.get(id);
      if (site == null) {
        site = site(rows);
        sites.put(id, site);
        readSites.put(id, site.read());
      }
      read.add(new Equipment(unit(rows, site), readSites.get(id)));
    }
    return read;
  }

  private static UnitRow unit(ResultSet rows, SiteRow site) throws SQLException {
    UnitRow unit = new UnitRow();
    unit.id = rows.getLong(1);
    unit.site = site;
    unit.tag = rows.getString(2);
    unit.kind = rows.getString(3);
    unit.machine = rows.getString(4);
    unit.maker = rows.getString(5);
    unit.model = rows.getString(6);
    unit.serial = rows.getString(7);
    unit.installed = rows.getObject(8, LocalDate.class);
    unit.refrigerant = rows.getString(9);
    unit.condenserPlace = rows.getString(10);
    unit.retired = rows.getObject(11, LocalDate.class);
    unit.plate = rows.getString(12);
    return unit;
  }

  private static SiteRow site(ResultSet rows) throws SQLException {
    SiteRow site = new SiteRow();
    site.id = rows.getLong(13);
    site.code = rows.getString(14);
    site.name = rows.getString(15);
    site.address = rows.getString(16);
    site.latitude = rows.getObject(17, Double.class);
    site.longitude = rows.getObject(18, Double.class);
    site.elevation = rows.getString(19);
    site.timeZone = rows.getString(20);
    site.jurisdiction = rows.getString(21);
    site.surroundings = rows.getString(22);
    site.visitingHours = rows.getString(23);
    site.designAmbient = rows.getString(24);
    site.customer = new CustomerRow();
    site.customer.code = rows.getString(25);
    return site;
  }
}

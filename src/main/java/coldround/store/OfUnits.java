package coldround.store;

import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.hibernate.Session;

/**
 * Rows of one table that belong to some units, in plain JDBC: histories are read by the hundred
 * thousand, and no session has to watch them.
 */
public final class OfUnits {

  private final String range;
  private final String list;

  /**
   * @param columns behind the id of the unit; the first of them is never null in a row
   */
  public OfUnits(String table, String... columns) {
    String select = "select t.unit_id, t." + String.join(", t.", columns);
    range = select + " from " + table + " t where t.unit_id between ? and ?";
    // the keys lead, so that the rows are found by an index however few or many there are
    list =
        select
            + " from unnest(cast(? as bigint array)) as k (unit_id) left join "
            + table
            + " t on t.unit_id = k.unit_id";
  }

  /** Hands over all rows of these units, in no order; the first column is the id of the unit. */
  public void each(EntityManager entities, Collection<Long> units, ByKeys.Row each) {
    if (!units.isEmpty()) {
      entities.unwrap(Session.class).doWork(connection -> each(connection, units, each));
    }
  }

  /** Makes something of a row. */
  public interface Reading<T> {
    T of(ResultSet row) throws SQLException;
  }

  /** What all rows of these units say, by its own id. */
  public <T> Map<String, T> all(
      EntityManager entities,
      Collection<Long> units,
      Reading<T> reading,
      Function<T, String> ownId) {
    Map<String, T> all = new HashMap<>();
    each(
        entities,
        units,
        row -> {
          T read = reading.of(row);
          all.put(ownId.apply(read), read);
        });
    return all;
  }

  private void each(Connection connection, Collection<Long> units, ByKeys.Row each)
      throws SQLException {
    long first = Collections.min(units);
    long last = Collections.max(units);
    // a range costs a database far less than a list, and a few rows too many cost little
    boolean neighbours = last - first < 2L * units.size();
    Set<Long> wanted = Set.copyOf(units);
    try (PreparedStatement find = connection.prepareStatement(neighbours ? range : list)) {
      if (neighbours) {
        find.setLong(1, first);
        find.setLong(2, last);
      } else {
        find.setArray(1, connection.createArrayOf("bigint", units.toArray()));
      }
      try (ResultSet rows = find.executeQuery()) {
        while (rows.next()) {
          // a unit of the list without rows has one that says nothing
          if (rows.getObject(2) != null && wanted.contains(rows.getLong(1))) {
            each.take(rows);
          }
        }
      }
    }
  }
}

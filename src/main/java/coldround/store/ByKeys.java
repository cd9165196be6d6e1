package coldround.store;

import jakarta.persistence.EntityManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import org.hibernate.Session;

/**
 * A question in plain JDBC about any number of keys. They are one array, so that the statement is
 * the same for all numbers of them and is made ready once, where a list is translated each time.
 */
public final class ByKeys {

  /** Takes a row. */
  public interface Row {
    void take(ResultSet row) throws SQLException;
  }

  private final String select;
  private final String element;

  private ByKeys(String select, String element) {
    this.select = select;
    this.element = element;
  }

  /**
   * @param select with one {@code = any(cast(? as bigint array))}
   */
  public static ByKeys ids(String select) {
    return new ByKeys(select, "bigint");
  }

  /**
   * @param select with one {@code = any(cast(? as varchar array))}
   */
  public static ByKeys texts(String select) {
    return new ByKeys(select, "varchar");
  }

  /** Hands over all rows that are found; asks nobody where there is no key. */
  public void each(EntityManager entities, Collection<?> keys, Row each) {
    if (keys.isEmpty()) {
      return;
    }
    entities
        .unwrap(Session.class)
        .doWork(
            connection -> {
              try (PreparedStatement find = connection.prepareStatement(select)) {
                find.setArray(1, connection.createArrayOf(element, keys.toArray()));
                try (ResultSet rows = find.executeQuery()) {
                  while (rows.next()) {
                    each.take(rows);
                  }
                }
              }
            });
  }
}

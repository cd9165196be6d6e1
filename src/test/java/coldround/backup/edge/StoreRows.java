package coldround.backup.edge;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** All rows of a store as text, read in another way than a backup reads them. */
final class StoreRows {

  /** Written now and then by the running service itself. */
  private static final Set<String> RESTLESS = Set.of("last_used", "holder", "held_until", "beat");

  private StoreRows() {}

  /** Rows of each table, sorted, each with its cells by the names of the columns. */
  static Map<String, String> of(Connection connection) throws SQLException {
    Map<String, String> rows = new TreeMap<>();
    for (String table : new Schema(connection).tables()) {
      rows.put(table, rows(connection, table));
    }
    return rows;
  }

  private static String rows(Connection connection, String table) throws SQLException {
    Map<String, Integer> lines = new TreeMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet found = statement.executeQuery("select * from \"" + table + '"')) {
      while (found.next()) {
        Map<String, String> cells = new TreeMap<>();
        for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
          if (RESTLESS.contains(found.getMetaData().getColumnName(i))) {
            continue;
          }
          cells.put(found.getMetaData().getColumnName(i), cell(found, i));
        }
        lines.merge(cells.toString(), 1, Integer::sum);
      }
    }
    return lines.toString().replace("}=", "}\n");
  }

  private static String cell(ResultSet row, int place) throws SQLException {
    Object value = row.getObject(place);
    if (value instanceof java.time.OffsetDateTime moment) {
      return moment.toInstant().toString();
    }
    if (value instanceof java.sql.Timestamp moment) {
      return moment.toInstant().toString();
    }
    return value instanceof byte[] bytes ? HexFormat.of().formatHex(bytes) : String.valueOf(value);
  }
}

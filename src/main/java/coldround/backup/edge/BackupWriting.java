package coldround.backup.edge;

import coldround.backup.Manifest;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes all rows of a store as they are at one moment, while others go on writing: a zip with the
 * manifest and, for each table, one JSON array a line for a row.
 */
final class BackupWriting {

  static final String MANIFEST = "manifest.json";

  // H2's level that shows all tables as they were at the first statement; java.sql has no name for
  // it
  private static final int H2_SNAPSHOT = 6;
  private static final int FETCHED_AT_ONCE = 500;

  private final ObjectMapper json;

  BackupWriting(ObjectMapper json) {
    this.json = json;
  }

  static String file(String table) {
    return "rows/" + table + ".jsonl";
  }

  /**
   * @param connection given back as it came
   */
  Manifest write(Connection connection, Instant now, OutputStream out)
      throws SQLException, IOException {
    int usual = connection.getTransactionIsolation();
    boolean alone = connection.getAutoCommit();
    Schema schema = new Schema(connection);
    connection.setAutoCommit(false);
    try {
      connection.setTransactionIsolation(
          schema.isH2() ? H2_SNAPSHOT : Connection.TRANSACTION_REPEATABLE_READ);
      return write(schema, connection, now, out);
    } finally {
      connection.rollback();
      lazily(schema, connection, false);
      connection.commit();
      connection.setTransactionIsolation(usual);
      connection.setAutoCommit(alone);
    }
  }

  private Manifest write(Schema schema, Connection connection, Instant now, OutputStream out)
      throws SQLException, IOException {
    lazily(schema, connection, true);
    Map<String, Long> rows = new LinkedHashMap<>();
    for (String table : schema.tables()) {
      rows.put(table, schema.rows(table));
    }
    // read behind the first rows: numbers only grow, so none that a row has is given again
    Manifest manifest = new Manifest(Manifest.FORMAT, schema.version(), now, rows, schema.next());
    ZipOutputStream zip = new ZipOutputStream(out);
    zip.putNextEntry(new ZipEntry(MANIFEST));
    zip.write(json.writeValueAsBytes(manifest));
    zip.closeEntry();
    for (String table : rows.keySet()) {
      zip.putNextEntry(new ZipEntry(file(table)));
      rows(connection, table, schema.columns(table), zip);
      zip.closeEntry();
    }
    zip.finish();
    return manifest;
  }

  /** Else H2 lays every row of a table aside before it gives the first. */
  private static void lazily(Schema schema, Connection connection, boolean on) throws SQLException {
    if (schema.isH2()) {
      try (Statement statement = connection.createStatement()) {
        statement.execute("set lazy_query_execution " + (on ? 1 : 0));
      }
    }
  }

  private void rows(Connection connection, String table, List<Column> columns, OutputStream out)
      throws SQLException, IOException {
    String names =
        columns.stream().map(each -> Schema.quoted(each.name())).collect(Collectors.joining(", "));
    try (Statement statement = connection.createStatement()) {
      statement.setFetchSize(FETCHED_AT_ONCE);
      try (ResultSet row =
          statement.executeQuery("select " + names + " from " + Schema.quoted(table))) {
        JsonGenerator line = json.getFactory().createGenerator(out);
        line.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
        // half of a character that takes two, as a caller may have sent it, has no UTF-8
        line.enable(JsonGenerator.Feature.ESCAPE_NON_ASCII);
        line.setRootValueSeparator(null);
        names(columns, line);
        while (row.next()) {
          line.writeStartArray();
          for (int i = 1; i <= columns.size(); i++) {
            cell(row, i, columns.get(i - 1).type(), line);
          }
          line.writeEndArray();
          line.writeRaw('\n');
        }
        line.close();
      }
    }
  }

  private static void names(List<Column> columns, JsonGenerator line) throws IOException {
    line.writeStartArray();
    for (Column column : columns) {
      line.writeString(column.name());
    }
    line.writeEndArray();
    line.writeRaw('\n');
  }

  private static void cell(ResultSet row, int place, CellType type, JsonGenerator line)
      throws SQLException, IOException {
    row.getObject(place);
    if (row.wasNull()) {
      line.writeNull();
    } else {
      type.write(row, place, line);
    }
  }
}

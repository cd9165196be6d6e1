package coldround.backup.edge;

import coldround.backup.BadBackup;
import coldround.backup.Manifest;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Puts the rows of a backup into a store that has its schema and that nobody has used yet. */
final class Restoring {

  private static final int WRITTEN_AT_ONCE = 500;
  private static final TypeReference<List<String>> NAMES = new TypeReference<>() {};

  private final BackupFile file;
  private final ObjectMapper json;
  private final Consumer<String> told;

  /**
   * @param told gets a sentence for each cell that the store could not keep as it was
   */
  Restoring(BackupFile file, ObjectMapper json, Consumer<String> told) {
    this.file = file;
    this.json = json;
    this.told = told;
  }

  /** All rows in one transaction, or none. */
  void into(Connection connection) throws SQLException, IOException {
    Manifest manifest = file.manifest();
    connection.setAutoCommit(false);
    try {
      Schema schema = new Schema(connection);
      List<String> tables = new ArrayList<>(schema.tables());
      check(tables, manifest);
      // what migrations put there is in the backup as it was then
      Collections.reverse(tables);
      for (String table : tables) {
        execute(connection, "delete from " + Schema.quoted(table));
      }
      for (Map.Entry<String, Long> table : manifest.rows().entrySet()) {
        long put = rows(connection, table.getKey(), schema);
        if (put != table.getValue()) {
          throw new BadBackup(
              "Table %s of the backup has %d rows where its manifest says %d. Use another backup."
                  .formatted(table.getKey(), put, table.getValue()));
        }
      }
      connection.commit();
      for (String statement : Schema.goingOnFrom(manifest.next())) {
        execute(connection, statement);
      }
      connection.commit();
    } catch (SQLException | IOException | RuntimeException e) {
      connection.rollback();
      throw e;
    }
  }

  private static void check(List<String> tables, Manifest manifest) {
    List<String> unknown = new ArrayList<>(manifest.rows().keySet());
    unknown.removeAll(tables);
    if (!unknown.isEmpty()) {
      throw new BadBackup(
          "The backup has tables that its version of the schema has not: " + unknown);
    }
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private long rows(Connection connection, String table, Schema schema)
      throws SQLException, IOException {
    Map<String, Column> known =
        schema.columns(table).stream().collect(Collectors.toMap(Column::name, Function.identity()));
    try (BufferedReader lines = file.lines(table)) {
      List<Column> given = new ArrayList<>();
      for (String name : names(table, lines.readLine())) {
        if (!known.containsKey(name)) {
          throw new BadBackup(
              "Table %s of the backup has an unknown column %s.".formatted(table, name));
        }
        given.add(known.get(name));
      }
      RestoredCells cells = new RestoredCells(table, given, schema.isH2(), json, told);
      long count = rows(connection, table, given, cells, lines);
      cells.end();
      return count;
    }
  }

  private List<String> names(String table, String line) {
    try {
      return json.readValue(line == null ? "" : line, NAMES);
    } catch (IOException e) {
      throw new BadBackup(
          "Table %s of the backup does not begin with the names of its columns. Use another backup."
              .formatted(table),
          e);
    }
  }

  private static long rows(
      Connection connection,
      String table,
      List<Column> columns,
      RestoredCells cells,
      BufferedReader lines)
      throws SQLException, IOException {
    String names =
        columns.stream().map(each -> Schema.quoted(each.name())).collect(Collectors.joining(", "));
    String marks = String.join(", ", Collections.nCopies(columns.size(), "?"));
    long count = 0;
    try (PreparedStatement insert =
        connection.prepareStatement(
            "insert into %s (%s) values (%s)".formatted(Schema.quoted(table), names, marks))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        Object[] row = cells.row(line, ++count);
        for (int i = 0; i < row.length; i++) {
          insert.setObject(i + 1, row[i]);
        }
        insert.addBatch();
        if (count % WRITTEN_AT_ONCE == 0) {
          insert.executeBatch();
        }
      }
      insert.executeBatch();
    } catch (SQLException e) {
      if (!isOfTheRows(e)) {
        throw e;
      }
      throw new BadBackup(
          "Table %s of the backup does not go into the database, at row %d or up to %d before: %s"
              .formatted(table, count, WRITTEN_AT_ONCE, e.getMessage()),
          e);
    }
    return count;
  }

  /** A value that is none of its column, or against a constraint: classes 22 and 23 of SQL. */
  private static boolean isOfTheRows(SQLException e) {
    String state = String.valueOf(e.getSQLState());
    return state.startsWith("22") || state.startsWith("23");
  }
}

package coldround.backup.edge;

import coldround.backup.TableOrder;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What tables, columns and sequences there are, asked of the database itself. */
final class Schema {

  /** The tool that brings the schema up to date keeps this one for itself. */
  static final String HISTORY = "flyway_schema_history";

  private static final String NUMBER =
      "select max(cast(version as int)) from "
          + quoted(HISTORY)
          + " where success and version"
          + " is not null";

  private final Connection connection;
  private final boolean h2;
  private final String name;

  Schema(Connection connection) throws SQLException {
    this.connection = connection;
    this.h2 = connection.getMetaData().getDatabaseProductName().equals("H2");
    this.name = connection.getSchema();
  }

  boolean isH2() {
    return h2;
  }

  static String quoted(String name) {
    return '"' + name + '"';
  }

  /** All of ours, each behind those that it refers to. */
  List<String> tables() throws SQLException {
    Set<String> names = new TreeSet<>();
    try (ResultSet found =
        connection
            .getMetaData()
            .getTables(connection.getCatalog(), name, "%", new String[] {"TABLE", "BASE TABLE"})) {
      while (found.next()) {
        names.add(found.getString("TABLE_NAME"));
      }
    }
    names.remove(HISTORY);
    Map<String, Set<String>> references = new TreeMap<>();
    for (String table : names) {
      references.put(table, references(table));
    }
    return TableOrder.of(references);
  }

  private Set<String> references(String table) throws SQLException {
    Set<String> others = new TreeSet<>();
    try (ResultSet keys =
        connection.getMetaData().getImportedKeys(connection.getCatalog(), name, table)) {
      while (keys.next()) {
        others.add(keys.getString("PKTABLE_NAME"));
      }
    }
    return others;
  }

  List<Column> columns(String table) throws SQLException {
    List<Column> columns = new ArrayList<>();
    try (ResultSet found =
        connection
            .getMetaData()
            .getColumns(connection.getCatalog(), name, table.replace("_", "\\_"), "%")) {
      while (found.next()) {
        columns.add(
            new Column(
                found.getString("COLUMN_NAME"),
                CellType.of(found.getInt("DATA_TYPE"), found.getString("TYPE_NAME")),
                found.getString("IS_AUTOINCREMENT").equals("YES")));
      }
    }
    return columns;
  }

  /** Version of the schema; 0 where there is none yet. */
  int version() throws SQLException {
    try (ResultSet found =
        connection.getMetaData().getTables(connection.getCatalog(), name, HISTORY, null)) {
      if (!found.next()) {
        return 0;
      }
    }
    return (int) number(NUMBER);
  }

  long rows(String table) throws SQLException {
    return number("select count(*) from " + quoted(table));
  }

  private long number(String question) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery(question)) {
      answer.next();
      return answer.getLong(1);
    }
  }

  /** What each sequence, and each numbered column as table.column, gives next. */
  Map<String, Long> next() throws SQLException {
    Map<String, Long> next = new TreeMap<>();
    for (String sequence : sequences()) {
      next.put(sequence, h2 ? nextOfH2(sequence) : nextOfPostgres(sequence));
    }
    for (String table : tables()) {
      for (Column column : columns(table)) {
        if (column.numbered()) {
          next.put(table + "." + column.name(), next(table, column.name()));
        }
      }
    }
    return next;
  }

  private List<String> sequences() throws SQLException {
    List<String> names = new ArrayList<>();
    try (PreparedStatement ask =
        connection.prepareStatement(
            "select sequence_name from information_schema.sequences where sequence_schema = ?"
                + " and sequence_name like '%\\_seq' order by sequence_name")) {
      ask.setString(1, name);
      try (ResultSet found = ask.executeQuery()) {
        while (found.next()) {
          names.add(found.getString(1));
        }
      }
    }
    // those that belong to a column are told with it
    Set<String> owned = new TreeSet<>();
    for (String table : tables()) {
      owned.addAll(
          columns(table).stream()
              .filter(Column::numbered)
              .map(column -> table + "_" + column.name() + "_seq")
              .collect(Collectors.toSet()));
    }
    names.removeAll(owned);
    return names;
  }

  private long nextOfH2(String sequence) throws SQLException {
    return number(
        "select base_value from information_schema.sequences where sequence_name = '"
            + sequence
            + "'");
  }

  private long nextOfPostgres(String sequence) throws SQLException {
    return number(
        "select s.last_value + case when s.is_called then d.seqincrement else 0 end from "
            + quoted(sequence)
            + " s, pg_sequence d where d.seqrelid = '"
            + quoted(sequence)
            + "'::regclass");
  }

  private long next(String table, String column) throws SQLException {
    if (h2) {
      return number(
          "select identity_base from information_schema.columns where table_name = '%s' and column_name = '%s'"
              .formatted(table, column));
    }
    return nextOfPostgres(table + "_" + column + "_seq");
  }

  /** Statements after which numbering goes on from there. */
  static List<String> goingOnFrom(Map<String, Long> next) {
    Map<String, String> statements = new LinkedHashMap<>();
    next.forEach(
        (what, number) -> {
          int dot = what.indexOf('.');
          statements.put(
              what,
              dot < 0
                  ? "alter sequence %s restart with %d".formatted(quoted(what), number)
                  : "alter table %s alter column %s restart with %d"
                      .formatted(
                          quoted(what.substring(0, dot)), quoted(what.substring(dot + 1)), number));
        });
    return List.copyOf(statements.values());
  }
}

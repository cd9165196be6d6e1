package coldround.benchmark;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a visit could not do without: the rows that a service has left for visits are taken out of
 * its tables and put in again by plain JDBC, a commit each: the visit, the tasks it has planned or
 * moved, and the changes for the feed.
 */
final class VisitFloor implements AutoCloseable {

  private static final int WARM_UP = 3;

  /**
   * A visit that a service has taken.
   *
   * @param unit number of the row of its unit
   * @param number of the visit
   * @param changes that the feed told of it
   */
  record Taken(long unit, String number, int changes) {}

  private enum Table {
    VISIT(2, " where unit_id = ? and number = ?"),
    UPKEEP_TASK(1, " where unit_id = ? and changed >= ?"),
    FEED_EVENT(1, " where position > ? order by position");

    private final int keys;
    private final String search;

    /**
     * @param keys how many of the first columns tell a row from all others
     */
    Table(int keys, String search) {
      this.keys = keys;
      this.search = search;
    }
  }

  private final Connection connection;
  private final Map<Table, List<String>> columns = new EnumMap<>(Table.class);
  private final Map<Table, PreparedStatement> inserts = new EnumMap<>(Table.class);
  private final Map<Table, PreparedStatement> deletes = new EnumMap<>(Table.class);

  private int told;

  /** The rows of each visit. */
  private final List<Map<Table, List<Object[]>>> visits = new ArrayList<>();

  /**
   * @param connection to the store of the service, which must have ended; closed with this
   * @param visits in their order, each at another unit, and nothing else was changed meanwhile
   * @param since moment before the first of them
   * @param position place in the feed before the first of them
   */
  VisitFloor(Connection connection, List<Taken> visits, Instant since, long position)
      throws SQLException {
    this.connection = connection;
    connection.setAutoCommit(false);
    List<Object[]> changes = rows(Table.FEED_EVENT, position);
    int changesColumn = columns.get(Table.FEED_EVENT).indexOf("changes");
    int row = 0;
    for (Taken visit : visits) {
      Map<Table, List<Object[]>> its = new EnumMap<>(Table.class);
      its.put(Table.VISIT, rows(Table.VISIT, visit.unit(), visit.number()));
      its.put(
          Table.UPKEEP_TASK, rows(Table.UPKEEP_TASK, visit.unit(), since.atOffset(ZoneOffset.UTC)));
      int first = row;
      for (int in = 0; in < visit.changes() && row < changes.size(); row++) {
        in += (int) changes.get(row)[changesColumn];
      }
      its.put(Table.FEED_EVENT, changes.subList(first, row));
      told += visit.changes();
      if (its.get(Table.VISIT).size() != 1) {
        throw new IllegalStateException("not stored: " + visit);
      }
      this.visits.add(its);
    }
    if (row != changes.size()) {
      throw new IllegalStateException(
          changes.size() + " rows of changes are stored, those told of fill " + row);
    }
    for (Table table : Table.values()) {
      prepare(table);
    }
  }

  private List<Object[]> rows(Table table, Object... sought) throws SQLException {
    List<Object[]> rows = new ArrayList<>();
    try (PreparedStatement select =
        connection.prepareStatement("select * from " + table + table.search)) {
      for (int i = 0; i < sought.length; i++) {
        select.setObject(i + 1, sought[i]);
      }
      try (ResultSet found = select.executeQuery()) {
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= found.getMetaData().getColumnCount(); i++) {
          names.add(found.getMetaData().getColumnName(i));
        }
        columns.put(table, names);
        while (found.next()) {
          Object[] row = new Object[names.size()];
          for (int i = 0; i < row.length; i++) {
            row[i] = found.getObject(i + 1);
          }
          rows.add(row);
        }
      }
    }
    return rows;
  }

  private void prepare(Table table) throws SQLException {
    List<String> names = columns.get(table);
    String marks = String.join(", ", Collections.nCopies(names.size(), "?"));
    inserts.put(
        table, connection.prepareStatement("insert into " + table + " values (" + marks + ")"));
    String keys = String.join(" = ? and ", names.subList(0, table.keys)) + " = ?";
    deletes.put(table, connection.prepareStatement("delete from " + table + " where " + keys));
  }

  /** Rows of a kind that a visit has left, on average. */
  private double mean(Table table) {
    return visits.stream().mapToInt(its -> its.get(table).size()).average().orElse(0);
  }

  double tasks() {
    return mean(Table.UPKEEP_TASK);
  }

  double changes() {
    return (double) told / visits.size();
  }

  /** Of each visit put in again, the last of several times. */
  Times measure() throws SQLException {
    Times times = new Times();
    for (int round = 0; round <= WARM_UP; round++) {
      takeOut();
      times = putIn();
    }
    return times;
  }

  private void takeOut() throws SQLException {
    for (Map<Table, List<Object[]>> its : visits) {
      for (Table table : Table.values()) {
        run(deletes.get(table), its.get(table), table.keys);
      }
    }
    connection.commit();
  }

  private Times putIn() throws SQLException {
    Times times = new Times();
    for (Map<Table, List<Object[]>> its : visits) {
      long begin = System.nanoTime();
      for (Table table : Table.values()) {
        run(inserts.get(table), its.get(table), columns.get(table).size());
      }
      connection.commit();
      times.add(System.nanoTime() - begin);
    }
    return times;
  }

  /**
   * @param parameters how many of the first columns the statement takes
   */
  private static void run(PreparedStatement statement, List<Object[]> rows, int parameters)
      throws SQLException {
    for (Object[] row : rows) {
      for (int i = 0; i < parameters; i++) {
        statement.setObject(i + 1, row[i]);
      }
      statement.addBatch();
    }
    statement.executeBatch();
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}

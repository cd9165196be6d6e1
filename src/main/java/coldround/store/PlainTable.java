package coldround.store;

import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hibernate.Session;

/**
 * Writes the rows of one table in plain JDBC: some hundred of them in one statement, which has one
 * array a column. Where hundred thousands are written, entities that are watched for changes take
 * more time than the database. What a session has of such rows is not true any more afterwards.
 */
public final class PlainTable<T> {

  // a statement holds all of its arrays in memory
  private static final int BATCH = 500;

  private final List<Column<T>> columns;
  private final List<Column<T>> key;
  private final String insert;
  private final String put;
  private final String delete;

  /**
   * @param columns those of the primary key first
   * @param keys how many of them are the key
   */
  public PlainTable(String name, int keys, List<Column<T>> columns) {
    this.columns = columns;
    this.key = columns.subList(0, keys);
    String names = list(columns, ", ", Column::name);
    List<Column<T>> rest = columns.subList(keys, columns.size());
    this.insert = "insert into " + name + " (" + names + ") " + select(columns);
    this.put =
        merge(name, columns)
            + (" when matched and (" + list(rest, ", ", column -> "t." + column.name()))
            + (") is distinct from (" + list(rest, ", ", column -> "k." + column.name()))
            + ") then update set "
            + list(rest, ", ", column -> column.name() + " = k." + column.name())
            + (" when not matched then insert (" + names + ") values (")
            + list(columns, ", ", column -> "k." + column.name())
            + ")";
    // keys of several columns are looked up in their index by this in both databases, and one by
    // one in the whole table by a condition
    this.delete = merge(name, key) + " when matched then delete";
  }

  private String merge(String name, List<Column<T>> columns) {
    return ("merge into " + name + " as t using (" + select(columns) + ") as k on ")
        + list(key, " and ", column -> "t." + column.name() + " = k." + column.name());
  }

  private static <T> String select(List<Column<T>> columns) {
    return "select * from unnest("
        + list(columns, ", ", column -> "cast(? as " + column.type() + " array)")
        + ") as k ("
        + list(columns, ", ", Column::name)
        + ")";
  }

  private static <T> String list(
      List<Column<T>> columns, String between, Function<Column<T>, String> text) {
    return columns.stream().map(text).collect(Collectors.joining(between));
  }

  /** Rows that are not there yet. */
  public void insert(EntityManager entities, Collection<T> rows) {
    write(entities, insert, columns, rows);
  }

  /**
   * Rows take the place of those with the same key.
   *
   * @param rows with different keys
   * @return how many were written: one that is there as it is, is not
   */
  public int put(EntityManager entities, Collection<T> rows) {
    return write(entities, put, columns, rows);
  }

  /** Of the rows only the key is looked at. */
  public void delete(EntityManager entities, Collection<T> rows) {
    write(entities, delete, key, rows);
  }

  private int write(
      EntityManager entities, String statement, List<Column<T>> columns, Collection<T> rows) {
    if (rows.isEmpty()) {
      return 0;
    }
    List<T> all = new ArrayList<>(rows);
    return entities
        .unwrap(Session.class)
        .doReturningWork(
            connection -> {
              int written = 0;
              try (PreparedStatement write = connection.prepareStatement(statement)) {
                for (int from = 0; from < all.size(); from += BATCH) {
                  List<T> some = all.subList(from, Math.min(all.size(), from + BATCH));
                  bind(connection, write, columns, some);
                  written += write.executeUpdate();
                }
              }
              return written;
            });
  }

  private void bind(
      Connection connection, PreparedStatement write, List<Column<T>> columns, List<T> rows)
      throws SQLException {
    for (int i = 0; i < columns.size(); i++) {
      Column<T> column = columns.get(i);
      Object[] values = rows.stream().map(column.value()).toArray();
      write.setArray(i + 1, connection.createArrayOf(column.element(), values));
    }
  }
}

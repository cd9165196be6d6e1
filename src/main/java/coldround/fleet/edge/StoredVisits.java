package coldround.fleet.edge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.hibernate.Session;

/**
 * Visits by the batch, in plain JDBC: a log of a million visits is what imports are slowest at, and
 * each visit is one row that nothing points at.
 */
@ApplicationScoped
class StoredVisits {

  private static final String[] COLUMNS = {
    "number", "visited", "technician", "purpose", "readings", "findings", "work", "faults", "note"
  };
  private static final OfUnits OF_UNITS = new OfUnits("visit", COLUMNS);
  private static final OfUnits NUMBERS = new OfUnits("visit", "number");
  private static final String FIND =
      "select v.unit_id, v."
          + String.join(", v.", COLUMNS)
          + " from unnest(cast(? as bigint array), cast(? as varchar array)) as k (unit_id, number)"
          + " left join visit v on v.unit_id = k.unit_id and v.number = k.number";
  private static final String INSERT =
      "insert into visit (visited, technician, purpose, readings, findings, work, faults, note,"
          + " unit_id, number) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
  private static final String UPDATE =
      "update visit set visited = ?, technician = ?, purpose = ?, readings = ?, findings = ?,"
          + " work = ?, faults = ?, note = ? where unit_id = ? and number = ?";

  private static final int BATCH = 500;

  private final EntityManager entities;
  private final TransactionSynchronizationRegistry transaction;

  @Inject
  StoredVisits(EntityManager entities, TransactionSynchronizationRegistry transaction) {
    this.entities = entities;
    this.transaction = transaction;
  }

  /** All visits of these units, in no order. */
  void eachOf(Collection<Long> units, Consumer<VisitRow> each) {
    writeHeld();
    OF_UNITS.each(entities, units, row -> each.accept(read(row)));
  }

  /** Takes the key of a visit. */
  interface Keys {
    void take(long unit, String number);
  }

  /** The numbers of all visits of these units that are written. */
  void numbers(Collection<Long> units, Keys each) {
    NUMBERS.each(entities, units, row -> each.take(row.getLong(1), row.getString(2)));
  }

  /** Those of the keys that are stored. */
  Map<VisitRow.Key, VisitRow> find(Collection<VisitRow.Key> keys) {
    if (keys.isEmpty()) {
      return new HashMap<>();
    }
    writeHeld();
    return entities.unwrap(Session.class).doReturningWork(connection -> find(connection, keys));
  }

  private static Map<VisitRow.Key, VisitRow> find(
      Connection connection, Collection<VisitRow.Key> keys) throws SQLException {
    Map<VisitRow.Key, VisitRow> found = new HashMap<>();
    try (PreparedStatement find = connection.prepareStatement(FIND)) {
      find.setArray(
          1, connection.createArrayOf("bigint", keys.stream().map(VisitRow.Key::unitId).toArray()));
      find.setArray(
          2,
          connection.createArrayOf("varchar", keys.stream().map(VisitRow.Key::number).toArray()));
      try (ResultSet rows = find.executeQuery()) {
        while (rows.next()) {
          if (rows.getString(2) != null) {
            VisitRow row = read(rows);
            found.put(new VisitRow.Key(row.unitId, row.number), row);
          }
        }
      }
    }
    return found;
  }

  private static VisitRow read(ResultSet rows) throws SQLException {
    VisitRow row = new VisitRow();
    row.unitId = rows.getLong(1);
    row.number = rows.getString(2);
    row.visited = rows.getObject(3, java.time.LocalDate.class);
    row.technician = rows.getString(4);
    row.purpose = rows.getString(5);
    row.readings = rows.getString(6);
    row.findings = rows.getString(7);
    row.work = rows.getString(8);
    row.faults = rows.getString(9);
    row.note = rows.getString(10);
    return row;
  }

  /** Written when there are many, before any is read, and at the latest with the transaction. */
  void insert(List<VisitRow> rows) {
    HeldVisits held = held();
    held.add(rows);
    if (held.isFull()) {
      writeHeld();
    }
  }

  void update(List<VisitRow> rows) {
    if (!rows.isEmpty()) {
      writeHeld();
      write(UPDATE, rows);
    }
  }

  private void writeHeld() {
    if (transaction.getResource(HeldVisits.class) instanceof HeldVisits held) {
      List<VisitRow> rows = held.take();
      for (int from = 0; from < rows.size(); from += BATCH) {
        write(INSERT, rows.subList(from, Math.min(rows.size(), from + BATCH)));
      }
    }
  }

  private HeldVisits held() {
    HeldVisits held = (HeldVisits) transaction.getResource(HeldVisits.class);
    if (held == null) {
      held = new HeldVisits();
      transaction.putResource(HeldVisits.class, held);
      transaction.registerInterposedSynchronization(new Last());
    }
    return held;
  }

  /** What nobody has asked for is written when the transaction ends well. */
  private final class Last implements Synchronization {
    @Override
    public void beforeCompletion() {
      writeHeld();
    }

    @Override
    public void afterCompletion(int status) {
      // held by the transaction, and gone with it
    }
  }

  private void write(String sql, List<VisitRow> rows) {
    entities
        .unwrap(Session.class)
        .doWork(
            connection -> {
              try (PreparedStatement statement = connection.prepareStatement(sql)) {
                for (VisitRow row : rows) {
                  bind(statement, row);
                  statement.addBatch();
                }
                statement.executeBatch();
              }
            });
  }

  private static void bind(PreparedStatement statement, VisitRow row) throws SQLException {
    statement.setObject(1, row.visited);
    statement.setString(2, row.technician);
    statement.setString(3, row.purpose);
    statement.setString(4, row.readings);
    statement.setString(5, row.findings);
    statement.setString(6, row.work);
    statement.setString(7, row.faults);
    statement.setString(8, row.note);
    statement.setLong(9, row.unitId);
    statement.setString(10, row.number);
  }
}

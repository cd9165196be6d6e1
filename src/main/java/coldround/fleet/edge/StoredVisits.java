package coldround.fleet.edge;

import coldround.fleet.Ahead;
import coldround.fleet.HeldRows;
import coldround.store.Column;
import coldround.store.OfUnits;
import coldround.store.PlainTable;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import org.hibernate.Session;

/**
 * Visits by the batch, in plain JDBC: a log of a million visits is what imports are slowest at, and
 * each visit is one row that nothing points at.
 */
@ApplicationScoped
class StoredVisits implements HeldRows {

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
  private static final PlainTable<VisitRow> TABLE =
      new PlainTable<>(
          "visit",
          2,
          List.of(
              Column.id("unit_id", row -> row.unitId),
              Column.text("number", row -> row.number),
              Column.day("visited", row -> row.visited),
              Column.text("technician", row -> row.technician),
              Column.text("purpose", row -> row.purpose),
              Column.text("readings", row -> row.readings),
              Column.text("findings", row -> row.findings),
              Column.text("work", row -> row.work),
              Column.text("faults", row -> row.faults),
              Column.text("note", row -> row.note)));

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

  /** Those of the keys that are written. */
  Map<VisitRow.Key, VisitRow> find(Collection<VisitRow.Key> keys) {
    if (keys.isEmpty()) {
      return new HashMap<>();
    }
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

  void update(List<VisitRow> rows) {
    TABLE.put(entities, rows);
  }

  /**
   * Written when there are very many, before any of them is read, and at the latest with the
   * transaction.
   */
  void insert(List<VisitRow> rows) {
    if (!rows.isEmpty()) {
      HeldVisits held = ofTransaction().orElseGet(this::hold);
      held.add(rows);
      if (held.isFull()) {
        writeHeld();
      }
    }
  }

  @Override
  public long held() {
    return ofTransaction().map(HeldVisits::count).orElse(0L);
  }

  @Override
  public void follow(IntConsumer written) {
    transaction.putResource(HeldRows.class, written);
  }

  @Override
  public void writeHeld() {
    ofTransaction()
        .filter(held -> held.count() > 0)
        .ifPresent(
            held -> {
              write(held);
              held.empty();
            });
  }

  private void write(HeldVisits held) {
    Iterator<VisitRow> rows = held.inOrder();
    if (held.count() <= BATCH) {
      insertNow(some(rows));
      return;
    }
    try (Ahead<VisitRow> ahead = new Ahead<>(() -> some(rows))) {
      for (List<VisitRow> batch = ahead.take(); !batch.isEmpty(); batch = ahead.take()) {
        insertNow(batch);
      }
    }
  }

  private static List<VisitRow> some(Iterator<VisitRow> rows) {
    List<VisitRow> some = new ArrayList<>(BATCH);
    while (some.size() < BATCH && rows.hasNext()) {
      some.add(rows.next());
    }
    return some;
  }

  private Optional<HeldVisits> ofTransaction() {
    return Optional.ofNullable((HeldVisits) transaction.getResource(HeldVisits.class));
  }

  private HeldVisits hold() {
    HeldVisits held = new HeldVisits();
    transaction.putResource(HeldVisits.class, held);
    transaction.registerInterposedSynchronization(new Last(held));
    return held;
  }

  /** What nobody has asked for is written when the transaction ends well. */
  private final class Last implements Synchronization {
    private final HeldVisits held;

    Last(HeldVisits held) {
      this.held = held;
    }

    @Override
    public void beforeCompletion() {
      writeHeld();
    }

    @Override
    public void afterCompletion(int status) {
      // perhaps by another thread, when it took too long
      held.close();
    }
  }

  private void insertNow(List<VisitRow> rows) {
    TABLE.insert(entities, rows);
    if (transaction.getResource(HeldRows.class) instanceof IntConsumer written) {
      written.accept(rows.size());
    }
  }
}

package coldround.intake.edge;

import coldround.access.Audit;
import coldround.fleet.FleetListener;
import coldround.fleet.FleetWriting;
import coldround.fleet.HeldRows;
import coldround.fleet.Kind;
import coldround.fleet.Today;
import coldround.fleet.UnitIds;
import coldround.fleet.UnitNames;
import coldround.http.Problem;
import coldround.http.Turns;
import coldround.intake.CellRules;
import coldround.intake.DateScan;
import coldround.intake.Importing;
import coldround.intake.IntakeTables;
import coldround.intake.Profile;
import coldround.intake.Proposal;
import coldround.intake.Receipt;
import coldround.intake.TableFile;
import coldround.intake.Tally;
import coldround.intake.Vanished;
import coldround.intake.Watch;
import coldround.sheet.Row;
import coldround.sheet.SheetWriter;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.locks.ReentrantLock;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Takes one file into the store: all of it in one transaction, one file after the other. */
@ApplicationScoped
class FileImport {

  /**
   * What is asked of an import.
   *
   * @param preview only say what would happen
   * @param partial take the good rows where others are bad
   * @param sheet name of the sheet of a workbook; empty for the first that is filled
   */
  record Order(Kind kind, Profile profile, boolean preview, boolean partial, String sheet) {}

  /**
   * One import under way.
   *
   * @param id that its receipt will have
   */
  record Begun(String id, Instant received, Watch watch) {}

  // units assessed between two looks whether the service ends
  private static final int CHUNK = 1000;

  // files of this instance queue here and not at the database, which some give little time for
  private final ReentrantLock one = new ReentrantLock(true);

  private final IntakeTables tables;
  private final FleetWriting writing;
  private final HeldRows held;
  private final UnitNames names;
  private final Instance<FleetListener> listeners;
  private final StoredReceipts receipts;
  private final Audit audit;
  private final Turns turns;
  private final Clock clock;
  private final Today today;
  private final int longestSeconds;
  private final long mostRows;
  private volatile boolean ending;

  @Inject
  FileImport(
      IntakeTables tables,
      FleetWriting writing,
      HeldRows held,
      UnitNames names,
      @Any Instance<FleetListener> listeners,
      StoredReceipts receipts,
      Audit audit,
      Turns turns,
      Clock clock,
      Today today,
      @ConfigProperty(name = "coldround.upload.longest-seconds", defaultValue = "7200")
          int longestSeconds,
      @ConfigProperty(name = "coldround.upload.most-rows") long mostRows) {
    this.tables = tables;
    this.writing = writing;
    this.held = held;
    this.names = names;
    this.listeners = listeners;
    this.receipts = receipts;
    this.audit = audit;
    this.turns = turns;
    this.clock = clock;
    this.today = today;
    this.longestSeconds = longestSeconds;
    this.mostRows = mostRows;
  }

  /** The service ends: files under way are given up, and none is begun. */
  void end() {
    ending = true;
  }

  private void goOn() {
    if (ending) {
      throw new Problem(
              503,
              "busy",
              "The service ends; nothing of the file was applied",
              "Send it again when the service is back.",
              List.of())
          .with("Retry-After", "30");
    }
  }

  /** A new import, not begun yet. */
  Begun begin() {
    return new Begun(
        UUID.randomUUID().toString(),
        // as exact as it is stored
        clock.instant().truncatedTo(ChronoUnit.MICROS),
        new Watch(clock));
  }

  /**
   * @throws coldround.intake.UnreadableFile when the file as a whole cannot be used
   */
  Receipt run(Path file, Order order, Begun begun) {
    CellRules plain = tables.rules(order.profile(), today.usually());
    CellRules rules = plain.with(new DateScan(() -> open(file, order, plain)));
    one.lock();
    try (TableFile table = open(file, order, rules);
        Spool rejected = Spool.empty()) {
      goOn();
      begun.watch().reading(table.rowBytes(file), table.bytes()::count);
      return new Taking(table, rejected, order, rules, begun).inTransaction();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      one.unlock();
    }
  }

  /** Guesses a profile from the file. */
  Proposal propose(Path file, String sheet, Kind kind) {
    try {
      return tables.propose(file, sheet, kind, today.usually());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private TableFile open(Path file, Order order, CellRules rules) {
    try {
      return TableFile.open(file, order.sheet(), order.kind(), tables.columns(order.kind()), rules);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Rows up to as many as are taken of one file. */
  private final class Limited implements Iterator<Row> {
    private final Iterator<Row> rows;
    private long read;

    Limited(Iterator<Row> rows) {
      this.rows = rows;
    }

    @Override
    public boolean hasNext() {
      return rows.hasNext();
    }

    @Override
    public Row next() {
      goOn();
      if (++read > mostRows) {
        throw new Problem(
            413,
            "too-many-rows",
            "The file has too many rows; nothing was applied",
            "At most %d rows are taken of one file (coldround.upload.most-rows). Split it."
                .formatted(mostRows),
            List.of());
      }
      return rows.next();
    }
  }

  /** Rolls back all that was written of a file. */
  private static final class NotApplied extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient Receipt receipt;

    NotApplied(Receipt receipt) {
      super(null, null, false, false);
      this.receipt = receipt;
    }
  }

  /** One file on its way into the store. */
  private final class Taking {
    private final TableFile table;
    private final Spool rejected;
    private final Order order;
    private final CellRules rules;
    private final Begun begun;
    private Importing importing;

    Taking(TableFile table, Spool rejected, Order order, CellRules rules, Begun begun) {
      this.table = table;
      this.rejected = rejected;
      this.order = order;
      this.rules = rules;
      this.begun = begun;
    }

    Receipt inTransaction() {
      try {
        return QuarkusTransaction.requiringNew().timeout(longestSeconds).call(this::applied);
      } catch (NotApplied rolledBack) {
        receipts.keep(rolledBack.receipt, rejected.file());
        return rolledBack.receipt;
      }
    }

    /** Rows and receipt together, or neither. */
    private Receipt applied() {
      turns.await(Turns.IMPORTS);
      Receipt receipt = take();
      if (!receipt.applied()) {
        throw new NotApplied(receipt);
      }
      receipts.keep(receipt, rejected.file());
      note(receipt);
      return receipt;
    }

    /** An import of several customers is nobody's in particular. */
    private void note(Receipt receipt) {
      Set<String> customers = importing.customers();
      String customer = customers.size() == 1 ? customers.iterator().next() : "";
      Tally.Rows rows = receipt.rows();
      String became =
          "%d %s made, %d changed, %d rejected"
              .formatted(rows.created(), order.kind().code(), rows.changed(), rows.rejected());
      audit.note(new Audit.Change("import", receipt.id(), "applied", customer, "", became));
    }

    private Receipt take() {
      try (SheetWriter rows = SheetWriter.guarded(rejected.packedText())) {
        importing =
            new Importing(
                order.kind(),
                table.heading(),
                tables.columns(order.kind()),
                rules,
                writing,
                new Importing.Run(begun.id(), begun.watch()),
                rows);
        held.follow(
            rowsWritten -> {
              goOn();
              begun.watch().more(rowsWritten);
            });
        Tally tally = importing.run(new Limited(table.rows()));
        Vanished vanished = importing.vanished(names);
        if (applies(tally)) {
          writeHeld();
          tell(inOrderOfStore(importing.units()));
        }
        return receipt(tally, vanished);
      }
    }

    private boolean applies(Tally tally) {
      return !order.preview() && (order.partial() || tally.rows().rejected() == 0);
    }

    private void writeHeld() {
      if (held.held() > 0) {
        begun.watch().writing(held.held());
        held.writeHeld();
      }
    }

    /** Neighbours in the store are read together. */
    private static List<String> inOrderOfStore(Set<String> units) {
      return units.stream()
          .sorted(Comparator.comparingLong(id -> UnitIds.number(id).orElseThrow()))
          .toList();
    }

    private void tell(List<String> units) {
      begun.watch().assessing(units.size());
      for (int from = 0; from < units.size(); from += CHUNK) {
        goOn();
        List<String> some = units.subList(from, Math.min(units.size(), from + CHUNK));
        listeners.forEach(listener -> listener.changed(some));
        begun.watch().more(some.size());
      }
    }

    private Receipt receipt(Tally tally, Vanished vanished) {
      return new Receipt(
          begun.id(),
          order.kind(),
          begun.received(),
          order.preview(),
          order.partial(),
          applies(tally),
          tally.rows(),
          new Receipt.Detected(
              table.dialect().charset().name(),
              table.dialect().delimiter(),
              order.profile().name()),
          tally.problems(),
          tally.problemCount(),
          tally.problemsByCode(),
          tally.groups(),
          tally.firstRows(),
          vanished);
    }
  }
}

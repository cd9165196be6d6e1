package coldround.intake;

import coldround.fleet.Ahead;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting;
import coldround.fleet.FleetWriting.Doubted;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.fleet.UnitNames;
import coldround.intake.RowReading.Understood;
import coldround.sheet.Row;
import coldround.sheet.SheetWriter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/**
 * Takes the rows of one file into the fleet, batch by batch: good ones are written, bad ones noted
 * with all that is wrong with them. Memory does not grow with the file but for 16 to 64 bytes a
 * row.
 */
public final class Importing {

  private static final int BATCH = 500;
  private static final int GIVES_UP_AFTER = 20_000;

  private final Kind kind;
  private final Heading heading;
  private final List<String> keyColumns;
  private final RowReading reading;
  private final FleetWriting writing;
  private final Run run;
  private final SheetWriter rejectedRows;
  private final SeenKeys seen = new SeenKeys();
  private final ListedUnits listed = new ListedUnits();
  private final Tally tally = new Tally();
  private final Set<String> units = new HashSet<>();
  private final Set<String> customers = new TreeSet<>();

  /**
   * Whose rows they are.
   *
   * @param id of the import, which corrections are told by
   * @param watch told how far it has come
   */
  public record Run(String id, Watch watch) {}

  /**
   * @param rejectedRows takes the file of rejected rows
   */
  public Importing(
      Kind kind,
      Heading heading,
      List<Column> columns,
      CellRules rules,
      FleetWriting writing,
      Run run,
      SheetWriter rejectedRows) {
    this.kind = kind;
    this.heading = heading;
    this.keyColumns = columns.stream().filter(Column::isKey).map(Column::name).toList();
    this.reading = new RowReading(kind, heading, rules);
    this.writing = writing;
    this.run = run;
    this.rejectedRows = rejectedRows;
  }

  /**
   * Takes all rows behind the header. The caller holds the transaction.
   *
   * @throws UnreadableFile when none of very many rows can be taken
   */
  public Tally run(Iterator<Row> rows) {
    heading.problems().forEach(tally::problem);
    rejectedRows.write(RejectedRows.header(heading.ownLabels()));
    try (Ahead<Keyed> ahead = new Ahead<>(() -> batch(rows))) {
      for (List<Keyed> batch = ahead.take(); !batch.isEmpty(); batch = ahead.take()) {
        batch.forEach(keyed -> note(keyed.row()));
        write(batch);
      }
    }
    return tally;
  }

  /**
   * A row by which it is known again in the file.
   *
   * @param key natural key; empty for a row that is rejected
   * @param content hash of what it says
   */
  private record Keyed(Understood row, String key, int content) {}

  /** Reads rows ahead of those that are written: uses nothing that a written row changes. */
  private List<Keyed> batch(Iterator<Row> rows) {
    List<Keyed> batch = new ArrayList<>(BATCH);
    while (batch.size() < BATCH && rows.hasNext()) {
      Row row = rows.next();
      if (!row.isBlank()) {
        batch.add(keyed(reading.read(row)));
      }
    }
    return batch;
  }

  private Keyed keyed(Understood row) {
    return row.entry() == null
        ? new Keyed(row, "", 0)
        : new Keyed(row, key(row.entry()), row.entry().said().hashCode());
  }

  /** Ids of the units whose history changed. */
  public Set<String> units() {
    return Set.copyOf(units);
  }

  /** Codes of the customers about whom something changed. */
  public Set<String> customers() {
    return Set.copyOf(customers);
  }

  /** Units in use that the list, if it is one of units, does not have. */
  public Vanished vanished(UnitNames names) {
    return kind == Kind.UNITS ? listed.missing(names) : Vanished.NONE;
  }

  private void note(Understood row) {
    if (row.entry() != null) {
      tally.understood(row.entry());
    }
    if (kind == Kind.UNITS) {
      listed.note(row.said());
    }
  }

  private void write(List<Keyed> batch) {
    List<Entry> entries =
        batch.stream().map(keyed -> keyed.row().entry()).filter(Objects::nonNull).toList();
    Written written =
        entries.isEmpty()
            ? new Written(List.of(), Set.of(), List.of())
            : writing.write(kind, entries, run.id());
    Map<Integer, List<RowProblem>> doubts = doubts(written, entries);
    int next = 0;
    for (Keyed keyed : batch) {
      boolean taken = keyed.row().entry() != null;
      Outcome outcome = taken ? written.outcomes().get(next) : null;
      List<RowProblem> more = taken ? doubts.get(next++) : List.of();
      note(keyed, outcome, more == null ? List.of() : more);
    }
    units.addAll(written.units());
    run.watch().rows(tally.rows().read());
    giveUpOnNoise();
  }

  /** By place of the entry: values that were kept but are not believed. */
  private Map<Integer, List<RowProblem>> doubts(Written written, List<Entry> entries) {
    Map<Integer, List<RowProblem>> doubts = new HashMap<>();
    for (Doubted doubted : written.doubted()) {
      doubts
          .computeIfAbsent(doubted.entry(), entry -> new ArrayList<>())
          .add(SuspectValue.of(doubted, entries.get(doubted.entry()), heading));
    }
    return doubts;
  }

  /** Where nothing at all can be taken, telling it a million times helps nobody. */
  private void giveUpOnNoise() {
    Tally.Rows rows = tally.rows();
    if (rows.rejected() >= GIVES_UP_AFTER && rows.rejected() == rows.read()) {
      RowProblem first = tally.firstRejection();
      throw new UnreadableFile(
          "nothing-usable",
          "None of the first %d rows can be taken. The first problem is in line %d, column %s: %s"
              .formatted(rows.read(), first.row(), first.column(), first.message()));
    }
  }

  /**
   * @param outcome null for a row that was rejected before it came to the store
   * @param doubts what the store does not believe of it
   */
  private void note(Keyed keyed, Outcome outcome, List<RowProblem> doubts) {
    Understood row = keyed.row();
    List<RowProblem> problems = new ArrayList<>(row.problems());
    problems.addAll(doubts);
    if (outcome != null && outcome.refused()) {
      problems.add(Refusal.of(outcome, row.entry(), heading));
    } else if (outcome != null) {
      tally.taken(outcome);
      if (outcome != Outcome.UNCHANGED && row.entry().said().get("customer") instanceof String of) {
        customers.add(of);
      }
      noteTwin(keyed, problems);
    }
    problems.forEach(tally::problem);
    List<RowProblem> rejecting = problems.stream().filter(RowProblem::rejects).toList();
    if (!rejecting.isEmpty()) {
      tally.rejected();
      rejectedRows.write(RejectedRows.row(heading.ownCells(row.cells()), rejecting));
    }
  }

  private void noteTwin(Keyed keyed, List<RowProblem> problems) {
    long line = keyed.row().line();
    long twin = seen.note(keyed.key(), keyed.content(), line);
    if (twin > 0) {
      String message =
          "line %d has the same %s but says something else; what this later row says was taken."
              .formatted(twin, String.join(", ", keyColumns));
      problems.add(new RowProblem(line, "", "", ProblemCode.DUPLICATE_IN_FILE, message));
    }
  }

  private String key(Entry entry) {
    StringBuilder key = new StringBuilder();
    for (String column : keyColumns) {
      Object value = entry.said().get(column);
      key.append(value).append('\u0001');
    }
    return entry.said().get("value") instanceof Reading reading
        ? key.append(reading.part()).toString()
        : key.toString();
  }
}

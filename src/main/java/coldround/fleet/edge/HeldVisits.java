package coldround.fleet.edge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;

/**
 * New visits of a transaction before they are written. A log is in the order of its days, and so
 * every row of it belongs elsewhere in the store: written in the order of their keys, those of one
 * unit stand together, and each page of the store is written once for all of them. More than memory
 * should hold are kept in a file.
 */
final class HeldVisits implements AutoCloseable {

  // of all that is in memory, the rest of each row counted in
  private static final long MOST_CHARACTERS = 8_000_000;
  // of the file: a folder in memory of two gigabytes holds it beside the largest file that is sent
  private static final long MOST_BYTES = 700_000_000;
  // what a row is besides its text, counted as characters
  private static final int ROW = 300;
  private static final Comparator<VisitRow> AS_STORED =
      Comparator.comparing((VisitRow row) -> row.unitId).thenComparing(row -> row.number);

  private final long mostCharacters;
  private final long mostBytes;
  private final List<VisitRow> rows = new ArrayList<>();
  private long characters;
  private long count;
  // null while memory holds all
  private SortedRuns runs;
  private boolean over;

  HeldVisits() {
    this(MOST_CHARACTERS, MOST_BYTES);
  }

  HeldVisits(long mostCharacters, long mostBytes) {
    this.mostCharacters = mostCharacters;
    this.mostBytes = mostBytes;
  }

  /**
   * @throws IllegalStateException when the transaction has ended
   */
  synchronized void add(List<VisitRow> more) {
    if (over) {
      throw new IllegalStateException("the transaction of these visits has ended");
    }
    rows.addAll(more);
    count += more.size();
    for (VisitRow row : more) {
      characters += ROW + row.readings.length() + row.note.length() + row.findings.length();
    }
    if (characters >= mostCharacters) {
      putAway();
    }
  }

  private void putAway() {
    rows.sort(AS_STORED);
    if (runs == null) {
      runs = new SortedRuns(AS_STORED);
    }
    runs.add(rows);
    rows.clear();
    characters = 0;
  }

  /** True when they should be written before more are added. */
  synchronized boolean isFull() {
    return runs != null && runs.bytes() >= mostBytes;
  }

  synchronized long count() {
    return count;
  }

  /** All of them in the order of the store, until they are emptied. */
  synchronized Iterator<VisitRow> inOrder() {
    if (runs == null) {
      rows.sort(AS_STORED);
      return List.copyOf(rows).iterator();
    }
    putAway();
    return runs.merged();
  }

  /** Lets go of all of them; others may follow. */
  synchronized void empty() {
    if (runs != null) {
      runs.close();
      runs = null;
    }
    rows.clear();
    characters = 0;
    count = 0;
  }

  /** The transaction has ended: none follow. */
  @Override
  public synchronized void close() {
    empty();
    over = true;
  }
}

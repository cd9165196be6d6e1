package coldround.fleet.edge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * New visits of a transaction before they are written. A log is in the order of its days, and so
 * every row of it belongs elsewhere in the store: written by the ten thousand and in the order of
 * their keys, those of one unit stand together, and each page of the store is written once for all
 * of them.
 */
final class HeldVisits {

  // of text, some thirty megabytes of memory
  private static final long MOST_CHARACTERS = 32_000_000;
  // what a row is besides its text, counted as characters
  private static final int ROW = 300;
  private static final Comparator<VisitRow> AS_STORED =
      Comparator.comparing((VisitRow row) -> row.unitId).thenComparing(row -> row.number);

  private final List<VisitRow> rows = new ArrayList<>();
  private long characters;

  void add(List<VisitRow> more) {
    rows.addAll(more);
    for (VisitRow row : more) {
      characters += ROW + row.readings.length() + row.note.length() + row.findings.length();
    }
  }

  boolean isFull() {
    return characters >= MOST_CHARACTERS;
  }

  /** All of them in the order of the store; none is held any more. */
  List<VisitRow> take() {
    List<VisitRow> taken = new ArrayList<>(rows);
    taken.sort(AS_STORED);
    rows.clear();
    characters = 0;
    return taken;
  }
}

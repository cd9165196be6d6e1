package coldround.sheet;

import coldround.sheet.Fault.Code;
import coldround.sheet.RowMender.Mended;
import java.util.List;

/**
 * Reads the records that do not fit their table: chooses between taking the line as it is, mending
 * it, and reading it with another delimiter, and says how sure the result is.
 */
final class RecordRepair {

  /** Delimiters that a single row may have been written with by mistake. */
  private static final List<String> OTHERS = List.of(",", ";", "\t", "|", " ");

  /** Price of another delimiter, in the unit of {@link ColumnModel#cost}. */
  private static final double OTHER = 5;

  private static final int MOST_LINES = 25;
  private static final int LONGEST = 10_000;
  private static final int WIDEST = 600;
  private static final int CERTAIN_DEPARTURES = 2;

  /** Logarithm of the odds of the best reading against the next: about 7 to 1. */
  private static final double CERTAIN_MARGIN = 2;

  private static final int STEPS_PER_RECORD = 500;
  private static final int KNOWN_ROWS = 8;

  private final ColumnModel model;
  private final Layout layout;
  private final Dialect dialect;
  private final CellSplitter splitter;
  private final RowMender mender;
  private final RepairFaults faults;

  /** Steps of search that misfit records may still take; bounds the time of a spoilt file. */
  private long budget = 10_000_000;

  RecordRepair(ColumnModel model, Layout layout, Dialect dialect) {
    this.model = model;
    this.layout = layout;
    this.dialect = dialect;
    this.splitter = new CellSplitter(dialect);
    this.mender = new RowMender(model, dialect);
    this.faults = new RepairFaults(model.width());
  }

  int width() {
    return model.width();
  }

  /** Reads a record whose quotes are irregular; leaves the scanner at the lines that were taken. */
  Row irregular(long line, RecordScanner scanner) {
    String first = scanner.record();
    List<String> cells = splitter.split(first);
    int strays = splitter.strays();
    Row single = overLines(line, scanner, 1, 1);
    if (single != null) {
      return single;
    }
    if (cells.size() == width() && areUsual(cells)) {
      return faults.strays(line, cells, strays);
    }
    Row several = overLines(line, scanner, 2, Math.min(MOST_LINES, scanner.reach() + 3));
    if (several != null) {
      return several;
    }
    scanner.takeLines(1);
    return best(line, first, cells, strays);
  }

  /** Reads a well-formed record of another width than the table's. */
  Row misfit(long line, List<String> cells, RecordScanner scanner) {
    if (HeaderRow.isAgain(layout, cells)) {
      return faults.asItIs(line, cells, 0);
    }
    String record = scanner.record();
    if (scanner.lines() > 1) {
      int lines = scanner.lines();
      Row single = overLines(line, scanner, 1, 1);
      if (single != null) {
        return single;
      }
      scanner.takeLines(lines);
    }
    List<String> padded = HeaderRow.fitted(cells, width());
    if (isOnlyEnd(cells) && areUsual(padded)) {
      return faults.fitted(line, padded, cells.size(), model.rows() >= KNOWN_ROWS);
    }
    return best(line, record, cells, 0);
  }

  /** Whether the row differs from the table only by empty cells at its end. */
  private boolean isOnlyEnd(List<String> cells) {
    for (int i = width(); i < cells.size(); i++) {
      if (!cells.get(i).isBlank()) {
        return false;
      }
    }
    return true;
  }

  /** The first reading over so many lines that is certain, or null. */
  private Row overLines(long line, RecordScanner scanner, int least, int most) {
    for (int lines = least; lines <= most && scanner.takeLines(lines); lines++) {
      if (lines > 1 && isRowByItself(scanner.record())) {
        return null;
      }
      Mended mended = mend(mender, scanner.record());
      if (mended != null && isCertain(mended)) {
        return faults.mended(line, mended, true);
      }
    }
    return null;
  }

  /** A line that fits the table by itself is no part of the record before it. */
  private boolean isRowByItself(String lines) {
    int start = Math.max(lines.lastIndexOf('\n'), lines.lastIndexOf('\r')) + 1;
    List<String> cells = splitter.split(lines.substring(start));
    return cells.size() == width() && splitter.strays() == 0 && areUsual(cells);
  }

  private Row best(long line, String record, List<String> cells, int strays) {
    if (isComment(cells)) {
      return faults.asItIs(line, cells, strays);
    }
    Mended mended = mend(mender, record);
    if (width() > 1 && (mended == null || mended.count() > CERTAIN_DEPARTURES)) {
      Row other = otherDelimiter(line, record, mended);
      if (other != null) {
        return other;
      }
    }
    if (mended == null || isGuess(mended, cells)) {
      return faults.asItIs(line, cells, strays);
    }
    return faults.mended(line, mended, isCertain(mended));
  }

  /** Too far from what stands in the file to be shown as a reading of it. */
  private boolean isGuess(Mended mended, List<String> cells) {
    boolean uncut = cells.size() == 1 && width() > 2;
    int strays = mended.departures().getOrDefault(Code.STRAY_QUOTE, 0);
    boolean blank = dialect.delimiter().isBlank();
    int joined = blank ? mended.departures().getOrDefault(Code.SURPLUS_DELIMITER, 0) : 0;
    return uncut || mended.count() - strays - joined > CERTAIN_DEPARTURES;
  }

  /** A comment line is no row written in another way. */
  private static boolean isComment(List<String> cells) {
    return cells.size() == 1 && cells.get(0).startsWith("#");
  }

  private Row otherDelimiter(long line, String record, Mended rival) {
    Mended best = null;
    String used = null;
    for (String other : OTHERS) {
      if (!other.equals(dialect.delimiter()) && occurrences(record, other) >= width() - 1) {
        Mended mended = mend(new RowMender(model, dialect.delimitedBy(other)), record);
        if (mended != null && (best == null || mended.cost() < best.cost())) {
          best = mended;
          used = other;
        }
      }
    }
    boolean better = best != null && (rival == null || best.cost() + OTHER < rival.cost());
    return better ? otherRow(line, best, used) : null;
  }

  private Row otherRow(long line, Mended mended, String used) {
    boolean certain =
        model.rows() >= KNOWN_ROWS && mended.margin() >= CERTAIN_MARGIN && areUsual(mended.cells());
    return faults.otherDelimiter(line, mended, used, certain);
  }

  private static int occurrences(String record, String part) {
    int count = 0;
    for (int i = record.indexOf(part); i >= 0; i = record.indexOf(part, i + part.length())) {
      count++;
    }
    return count;
  }

  private Mended mend(RowMender with, String record) {
    budget += STEPS_PER_RECORD;
    if (record.length() > LONGEST || width() > WIDEST || budget < 0) {
      return null;
    }
    Mended mended = with.mend(record);
    budget -= with.steps();
    return mended;
  }

  private boolean isCertain(Mended mended) {
    return mended.count() <= CERTAIN_DEPARTURES
        && mended.margin() >= CERTAIN_MARGIN
        && model.rows() >= KNOWN_ROWS
        && areUsual(mended.cells());
  }

  private boolean areUsual(List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      if (!model.isUsual(i, cells.get(i)) && !isStrayOnly(i, cells.get(i))) {
        return false;
      }
    }
    return true;
  }

  private boolean isStrayOnly(int column, String cell) {
    return dialect.hasQuote()
        && cell.indexOf(dialect.quote()) >= 0
        && model.isUsual(column, cell.replace(String.valueOf(dialect.quote()), ""));
  }
}

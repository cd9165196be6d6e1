package coldround.sheet;

import coldround.sheet.Sample.Entry;
import coldround.sheet.Shape.Kind;
import java.util.ArrayList;
import java.util.List;

/**
 * Tells title rows, header rows and data rows apart at the top of a table: a data row has numbers,
 * dates and codes in the columns that have them further down, a header row has not.
 */
final class LayoutDetector {

  private static final int LOOK = 40;
  private static final int MOST_HEADER_ROWS = 4;

  /** Share of the filled cells of a column from which on their kind is the column's. */
  private static final double TYPICAL = 0.6;

  private final List<Entry> records;
  private final int width;
  private final Kind[] kinds;
  private final HeaderRepair repair;

  LayoutDetector(Sample sample, Dialect dialect) {
    this.records = sample.records();
    this.width = width(sample.filledRecords());
    this.repair = new HeaderRepair(width, dialect);
    this.kinds = new Kind[width];
    List<Entry> body = body(sample.filledRecords());
    for (int i = 0; i < width; i++) {
      kinds[i] = kind(body, i);
    }
  }

  /**
   * The common width; where no width is common, that of the first record, if delimiters inside
   * cells can explain the others.
   */
  private static int width(List<Entry> filled) {
    if (filled.isEmpty()) {
      return 0;
    }
    int common = DialectScore.commonWidth(filled);
    int first = filled.get(0).width();
    long wider = filled.stream().filter(r -> r.width() >= first).count();
    boolean scattered = DialectScore.steadiness(filled, common) < 0.5;
    return scattered && first > 1 && wider >= 0.9 * filled.size() ? first : common;
  }

  private List<Entry> body(List<Entry> filled) {
    List<Entry> fitting = filled.stream().filter(r -> r.width() == width).toList();
    int skip = fitting.size() > 12 ? 5 : Math.min(1, fitting.size() - 1);
    return fitting.isEmpty() ? fitting : fitting.subList(skip, fitting.size());
  }

  private static Kind kind(List<Entry> body, int column) {
    int[] counts = new int[Kind.values().length];
    for (Entry record : body) {
      counts[Shape.kind(record.cells().get(column)).ordinal()]++;
    }
    int filled = body.size() - counts[Kind.EMPTY.ordinal()];
    for (Kind kind : List.of(Kind.NUMBER, Kind.CODE)) {
      if (filled > 0 && counts[kind.ordinal()] >= TYPICAL * filled) {
        return kind;
      }
    }
    return null;
  }

  Layout detect() {
    List<Entry> header = new ArrayList<>();
    int titles = 0;
    for (int i = 0; i < Math.min(LOOK, records.size()); i++) {
      Entry record = records.get(i);
      if (record.isBlank()) {
        continue;
      }
      if (header.isEmpty() && isTitle(i)) {
        titles++;
      } else if (isHeader(header, record)) {
        header.add(record);
      } else {
        return layout(header, record.line(), titles);
      }
    }
    return header.isEmpty() ? firstAsHeader() : layout(header, afterLast(header), titles);
  }

  private long afterLast(List<Entry> header) {
    Entry last = header.get(header.size() - 1);
    int next = records.indexOf(last) + 1;
    return next < records.size() ? records.get(next).line() : Long.MAX_VALUE;
  }

  /** Nothing but titles: then the widest of them was the header. */
  private Layout firstAsHeader() {
    for (int i = 0; i < records.size(); i++) {
      Entry record = records.get(i);
      if (!record.isBlank() && record.width() == width) {
        long next = i + 1 < records.size() ? records.get(i + 1).line() : Long.MAX_VALUE;
        return layout(List.of(record), next, 0);
      }
    }
    return new Layout(width, List.of(), 0, 1, 0);
  }

  private Layout layout(List<Entry> header, long firstDataLine, int titles) {
    List<List<String>> rows = header.stream().map(repair::labels).toList();
    long line = header.isEmpty() ? 0 : header.get(0).line();
    return new Layout(width, rows, line, firstDataLine, titles);
  }

  private boolean isTitle(int index) {
    Entry record = records.get(index);
    if (width < 2 || hasDataCell(record)) {
      return false;
    }
    if (record.filled() == 1) {
      return !(dataFollows(index) && repair.labels(record).size() == width && width > 2);
    }
    return record.width() != width && headerFollows(index);
  }

  private boolean dataFollows(int index) {
    boolean last = index + 1 >= records.size();
    return !last && records.get(index + 1).width() == width && isData(records.get(index + 1));
  }

  private boolean headerFollows(int index) {
    for (Entry next : records.subList(index + 1, records.size())) {
      if (!next.isBlank()) {
        return next.width() == width && next.filled() > 1 && matches(next) == 0 && typed(next) > 0;
      }
    }
    return false;
  }

  private boolean hasDataCell(Entry record) {
    return record.width() == width && matches(record) > 0;
  }

  private boolean isHeader(List<Entry> above, Entry record) {
    if (above.size() >= MOST_HEADER_ROWS) {
      return false;
    }
    if (above.isEmpty()) {
      return !isData(record);
    }
    Entry last = above.get(above.size() - 1);
    return last.cells().equals(record.cells())
        || (typed(record) > 0
            && matches(record) == 0
            && (completes(last, record) || isFull(record)));
  }

  /** Numbers decide; codes, which look like some labels, only where no column holds numbers. */
  private boolean isData(Entry record) {
    int numbers = count(record, Kind.NUMBER, false);
    if (numbers > 0) {
      return 2 * count(record, Kind.NUMBER, true) >= numbers;
    }
    int codes = count(record, Kind.CODE, false);
    return codes > 0 && 2 * count(record, Kind.CODE, true) >= codes;
  }

  /** Fills gaps that the row above left between or under its labels. */
  private boolean completes(Entry above, Entry record) {
    int filledGaps = 0;
    for (int i = 0; i < Math.min(width, record.width()); i++) {
      boolean gap = i >= above.width() || above.cells().get(i).isBlank();
      filledGaps += gap && !record.cells().get(i).isBlank() ? 1 : 0;
    }
    return filledGaps > 0 && record.filled() > 1;
  }

  /** Nearly a label in every column, or units of measure below the labels of numbers. */
  private boolean isFull(Entry record) {
    boolean unitsBelow = record.cells().get(0).isBlank() && count(record, Kind.NUMBER, false) > 1;
    return typed(record) > 1 && (unitsBelow || record.filled() >= 0.7 * width);
  }

  /** Filled cells in columns of a known kind. */
  private int typed(Entry record) {
    return count(record, Kind.NUMBER, false) + count(record, Kind.CODE, false);
  }

  /** Filled cells that are of the kind of their column. */
  private int matches(Entry record) {
    return count(record, Kind.NUMBER, true) + count(record, Kind.CODE, true);
  }

  private int count(Entry record, Kind wanted, boolean matching) {
    int count = 0;
    for (int i = 0; i < Math.min(width, record.width()); i++) {
      Kind kind = Shape.kind(record.cells().get(i));
      boolean typed = kinds[i] == wanted && kind != Kind.EMPTY;
      count += typed && (!matching || kind == kinds[i]) ? 1 : 0;
    }
    return count;
  }
}

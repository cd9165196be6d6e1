package coldround.sheet;

import coldround.sheet.Fault.Code;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Reads a record that does not fit its table: finds the cheapest way to cut it into as many cells
 * as there are columns, where every departure from the dialect (a quote taken literally, a
 * delimiter put in, taken out or taken literally) has a price and so has a cell unlike its column.
 *
 * <p>A search over places in the record and columns, from left to right, that keeps the few
 * cheapest ways at each place. A first search without cutting cells in two bounds the price of the
 * second one with it.
 */
final class RowMender {

  /** Prices in the unit of {@link ColumnModel#cost}, the natural logarithm of odds. */
  private static final double STRAY_QUOTE = 4;

  private static final double PUT_IN = 7;
  private static final double TAKEN_OUT = 6;
  private static final double TAKEN_LITERALLY = 6;
  private static final double LITERAL_BLANK = 0.7;
  private static final double MISSING_AT_END = 4;
  private static final double LINE_BREAK = 2;

  /** Readings dearer than the best by this much do not matter. */
  static final double MARGIN = 3;

  private static final double TIE = 1e-9;
  private static final int BEAM = 8;
  private static final int MOST_EDITS = 4;
  private static final int MOST_JOINS = 3;
  private static final int MOST_BLANKS = 12;
  private static final int MOST_CLOSINGS = 6;
  private static final int LONGEST_CUT = 60;

  /**
   * A reading.
   *
   * @param cost its price
   * @param margin how much dearer the next best reading is
   * @param departures how many departures of each kind it took
   */
  record Mended(List<String> cells, double cost, double margin, Map<Code, Integer> departures) {
    int count() {
      return departures.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  /**
   * One way to the start of a cell.
   *
   * @param at offset of the start; beyond the end of the record once the last cell is read
   * @param from offset where the last cell starts; -1 if it is none of the record
   * @param quoted whether the last cell stands between quotes
   * @param margin how much dearer the next best way to any place on this way is
   */
  private record Way(
      Way before,
      int at,
      int column,
      int from,
      int to,
      boolean quoted,
      Code code,
      int codes,
      int edits,
      double cost,
      double margin) {

    private boolean isEmpty() {
      return from == NO_CELL || from == to;
    }

    private Way atMost(double other) {
      return other >= margin
          ? this
          : new Way(before, at, column, from, to, quoted, code, codes, edits, cost, other);
    }
  }

  private static final int NO_CELL = -2;

  private final ColumnModel model;
  private final Dialect dialect;
  private final char quote;
  private final int skip;
  private final boolean blank;
  private final CellSplitter splitter;
  private RecordText text;
  private TreeMap<Integer, List<Way>> open;
  private boolean cutting;
  private Way best;

  RowMender(ColumnModel model, Dialect dialect) {
    this.model = model;
    this.dialect = dialect;
    this.quote = dialect.quote();
    this.skip = dialect.delimiter().length();
    this.blank = dialect.delimiter().equals(" ");
    this.splitter = new CellSplitter(dialect);
  }

  /** The cheapest reading, or null if the record cannot be cut into the columns. */
  Mended mend(String record) {
    text = new RecordText(record, dialect);
    best = null;
    search(false);
    if (best == null || best.cost > PUT_IN) {
      search(true);
    }
    return best == null ? null : result(best);
  }

  private void search(boolean withCuts) {
    cutting = withCuts;
    open = new TreeMap<>();
    add(new Way(null, 0, 0, NO_CELL, 0, false, null, 0, 0, 0, MARGIN));
    while (!open.isEmpty()) {
      for (Way way : open.pollFirstEntry().getValue()) {
        if (way.at > text.length()) {
          finish(way);
        } else {
          extend(way);
        }
      }
    }
  }

  /** Columns without a cell at the end of the record are empty. */
  private void finish(Way way) {
    Way end = way;
    while (end.column < model.width()) {
      double cost = MISSING_AT_END + model.cost(end.column, Shape.EMPTY);
      end = step(end, end.at, -1, -1, false, Code.TOO_FEW_CELLS, 1, 0, cost);
    }
    if (best == null) {
      best = end;
    } else if (Math.abs(end.cost - best.cost) > TIE) {
      best = cheaper(best, end);
    }
  }

  private static Way cheaper(Way one, Way other) {
    double difference = Math.abs(one.cost - other.cost);
    boolean same = difference < TIE && one.isEmpty() && other.isEmpty();
    Way winner = other.cost < one.cost ? other : one;
    return same ? winner : winner.atMost(difference);
  }

  private Way step(
      Way way,
      int at,
      int from,
      int to,
      boolean quoted,
      Code code,
      int codes,
      int edits,
      double cost) {
    return new Way(
        way,
        at,
        way.column + 1,
        from,
        to,
        quoted,
        code,
        codes,
        way.edits + edits,
        way.cost + cost,
        way.margin);
  }

  private void add(Way reached) {
    if (reached.edits > MOST_EDITS || (best != null && reached.cost >= best.cost + MARGIN)) {
      return;
    }
    Way way = dialect.padded() ? behindBlanks(reached) : reached;
    List<Way> ways = open.computeIfAbsent(way.at, k -> new ArrayList<>());
    for (int i = 0; i < ways.size(); i++) {
      if (ways.get(i).column == way.column) {
        ways.set(i, cheaper(ways.get(i), way));
        return;
      }
    }
    ways.add(way);
    if (ways.size() > BEAM) {
      ways.remove(dearest(ways));
    }
  }

  private Way behindBlanks(Way way) {
    int at = way.at;
    while (at < text.length() && text.at(at) == ' ') {
      at++;
    }
    return new Way(
        way.before,
        at,
        way.column,
        way.from,
        way.to,
        way.quoted,
        way.code,
        way.codes,
        way.edits,
        way.cost,
        way.margin);
  }

  private static int dearest(List<Way> ways) {
    int worst = 0;
    for (int i = 1; i < ways.size(); i++) {
      worst = ways.get(i).cost > ways.get(worst).cost ? i : worst;
    }
    return worst;
  }

  private void extend(Way way) {
    if (text.isDelimiter(way.at)) {
      dropEmpty(way, way.at + skip);
    } else if (way.at == text.length() && way.column > 0) {
      dropEmpty(way, way.at + 1);
    }
    if (way.column == model.width()) {
      return;
    }
    if (dialect.hasQuote() && way.at < text.length() && text.at(way.at) == quote) {
      quoted(way);
    }
    unquoted(way);
  }

  /** The cell is empty and one too many. */
  private void dropEmpty(Way way, int next) {
    double cost = way.cost + TAKEN_OUT;
    Code code = Code.SURPLUS_DELIMITER;
    add(
        new Way(
            way, next, way.column, NO_CELL, 0, false, code, 1, way.edits + 1, cost, way.margin));
  }

  /** Tries every quote that may close the cell. */
  private void quoted(Way way) {
    int strays = 0;
    int found = 0;
    for (int i = way.at + 1; i < text.length() && found < MOST_CLOSINGS; i++) {
      if (text.at(i) != quote) {
        continue;
      }
      boolean doubled = i + 1 < text.length() && text.at(i + 1) == quote;
      if (text.isCellEnd(i + 1)) {
        close(way, i, strays++, skip, 0);
        found++;
      } else if (doubled) {
        found += closeDoubled(way, i, strays);
        i++;
      } else {
        close(way, i, strays++, 0, PUT_IN);
      }
    }
  }

  /** A quote twice is an escaped one, or a closing and an opening one, or a stray and a closing. */
  private int closeDoubled(Way way, int at, int strays) {
    close(way, at, strays, 0, PUT_IN + STRAY_QUOTE / 2);
    if (text.isCellEnd(at + 2)) {
      close(way, at + 1, strays + 1, skip, 0);
      return 1;
    }
    return 0;
  }

  private void close(Way way, int closing, int strays, int delimiter, double price) {
    if (price > 0 && !cutting) {
      return;
    }
    int from = way.at + 1;
    double cost = price + strays * STRAY_QUOTE + text.breaks(from, closing) * LINE_BREAK;
    cost += model.cost(way.column, text.look(from, closing, quote));
    Code code = price > 0 ? Code.MISSING_DELIMITER : strays > 0 ? Code.STRAY_QUOTE : null;
    int next = closing + 1 + (closing + 1 >= text.length() ? 1 : delimiter);
    add(step(way, next, from, closing, true, code, Math.max(1, strays), price > 0 ? 1 : 0, cost));
  }

  private void unquoted(Way way) {
    int end = way.at;
    for (int joins = 0; joins <= (blank ? MOST_BLANKS : MOST_JOINS); joins++) {
      end = text.nextDelimiter(end);
      literal(way, end, joins);
      if (end >= text.length()) {
        break;
      }
      end += skip;
    }
    if (cutting) {
      cut(way, text.nextDelimiter(way.at));
    }
  }

  private void literal(Way way, int end, int joins) {
    int strays = text.quotes(way.at, end);
    double cost = strays * STRAY_QUOTE + joins * (blank ? LITERAL_BLANK : TAKEN_LITERALLY);
    cost += 2 * LINE_BREAK * text.breaks(way.at, end);
    cost += model.cost(way.column, text.look(way.at, end, quote));
    Code code = joins > 0 ? Code.SURPLUS_DELIMITER : strays > 0 ? Code.STRAY_QUOTE : null;
    int next = end >= text.length() ? end + 1 : end + skip;
    int codes = Math.max(joins, strays);
    add(step(way, next, way.at, end, false, code, codes, blank ? 0 : joins, cost));
  }

  /** A delimiter is missing inside the cell that ends at {@code end}. */
  private void cut(Way way, int end) {
    boolean cutBefore = way.code == Code.MISSING_DELIMITER && !way.quoted;
    double empty = PUT_IN + model.cost(way.column, Shape.EMPTY);
    add(step(way, way.at, -1, -1, false, Code.MISSING_DELIMITER, 1, 1, empty));
    for (int i = way.at + 1; i < end && !cutBefore; i++) {
      boolean opening = dialect.hasQuote() && text.at(i) == quote;
      if (opening || i - way.at <= LONGEST_CUT) {
        double cost = PUT_IN + text.quotes(way.at, i) * STRAY_QUOTE;
        cost += model.cost(way.column, text.look(way.at, i, quote));
        add(step(way, i, way.at, i, false, Code.MISSING_DELIMITER, 1, 1, cost));
      }
    }
  }

  private Mended result(Way end) {
    List<String> cells = new ArrayList<>();
    Map<Code, Integer> departures = new EnumMap<>(Code.class);
    for (Way way = end; way.before != null; way = way.before) {
      if (way.from != NO_CELL) {
        cells.add(0, cell(way));
      }
      if (way.code != null) {
        departures.merge(way.code, way.codes, Integer::sum);
      }
    }
    return new Mended(cells, end.cost, end.margin, departures);
  }

  private String cell(Way way) {
    if (way.from < 0) {
      return "";
    }
    String part = text.part(way.from, way.to);
    return way.quoted ? splitter.inside(part) : part;
  }
}

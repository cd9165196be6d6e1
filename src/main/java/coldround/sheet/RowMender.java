package coldround.sheet;

import coldround.sheet.Fault.Code;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Reads a record that does not fit its table: finds the cheapest way to cut it into as many cells
 * as there are columns, where every departure from the dialect (a quote taken literally, a
 * delimiter put in, taken out or taken literally) has a price and so has a cell unlike its column.
 *
 * <p>A search over places in the record and columns, from left to right. A first search without
 * cutting cells in two bounds the price of the second one with it.
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

  private static final int MOST_JOINS = 3;
  private static final int MOST_BLANKS = 12;
  private static final int MOST_CLOSINGS = 6;
  private static final int MOST_STRAYS = 12;
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

  private final ColumnModel model;
  private final Dialect dialect;
  private final char quote;
  private final int skip;
  private final boolean blank;
  private final CellSplitter splitter;
  private RecordText text;
  private MendFrontier frontier;
  private boolean cutting;

  RowMender(ColumnModel model, Dialect dialect) {
    this.model = model;
    this.dialect = dialect;
    this.quote = dialect.quote();
    this.skip = dialect.delimiter().length();
    this.blank = dialect.delimiter().equals(" ");
    this.splitter = new CellSplitter(dialect);
  }

  /** Steps the last search took. */
  int steps() {
    return frontier == null ? 0 : frontier.steps();
  }

  /** The cheapest reading, or null if the record cannot be cut into the columns. */
  Mended mend(String record) {
    text = new RecordText(record, dialect);
    frontier = new MendFrontier();
    search(false);
    if (frontier.best() == null || frontier.best().cost() > PUT_IN) {
      search(true);
    }
    boolean found = frontier.best() != null && !frontier.isExhausted();
    return found ? result(frontier.best()) : null;
  }

  private void search(boolean withCuts) {
    cutting = withCuts;
    frontier.add(MendWay.start(MendFrontier.MARGIN));
    for (List<MendWay> ways = frontier.next(); ways != null; ways = frontier.next()) {
      for (MendWay way : ways) {
        if (way.at() > text.length()) {
          finish(way);
        } else {
          extend(way);
        }
      }
    }
  }

  /** Columns without a cell at the end of the record are empty. */
  private void finish(MendWay way) {
    MendWay end = way;
    while (end.column() < model.width()) {
      double price = MISSING_AT_END + model.cost(end.column(), Shape.EMPTY);
      end = end.cell(end.at(), 0, 0, false, price).by(Code.TOO_FEW_CELLS, 1, 0);
    }
    frontier.finish(end);
  }

  private void add(MendWay way) {
    int at = way.at();
    while (dialect.padded() && at < text.length() && text.at(at) == ' ') {
      at++;
    }
    frontier.add(way.at(at));
  }

  private void extend(MendWay way) {
    if (text.isDelimiter(way.at())) {
      dropEmpty(way, way.at() + skip);
    } else if (way.at() == text.length() && way.column() > 0) {
      dropEmpty(way, way.at() + 1);
    }
    if (way.column() == model.width()) {
      return;
    }
    if (dialect.hasQuote() && way.at() < text.length() && text.at(way.at()) == quote) {
      quoted(way);
    }
    unquoted(way);
  }

  /** The cell is empty and one too many. */
  private void dropEmpty(MendWay way, int next) {
    add(way.past(next, TAKEN_OUT).by(Code.SURPLUS_DELIMITER, 1, 1));
  }

  /** Tries every quote that may close the cell. */
  private void quoted(MendWay way) {
    int strays = 0;
    int found = 0;
    for (int i = way.at() + 1;
        i < text.length() && found < MOST_CLOSINGS && strays <= MOST_STRAYS;
        i++) {
      if (text.at(i) != quote) {
        continue;
      }
      frontier.step();
      boolean doubled = i + 1 < text.length() && text.at(i + 1) == quote;
      if (text.isCellEnd(i + 1)) {
        close(way, i, strays++);
        found++;
      } else if (doubled) {
        found += closeDoubled(way, i, strays);
        i++;
      } else {
        closeWithoutDelimiter(way, i, strays++, PUT_IN);
      }
    }
  }

  /** A quote twice is an escaped one, or a closing and an opening one, or a stray and a closing. */
  private int closeDoubled(MendWay way, int at, int strays) {
    closeWithoutDelimiter(way, at, strays, PUT_IN + STRAY_QUOTE / 2);
    if (text.isCellEnd(at + 2)) {
      close(way, at + 1, strays + 1);
      return 1;
    }
    return 0;
  }

  private void close(MendWay way, int closing, int strays) {
    int next = closing + 1 >= text.length() ? closing + 2 : closing + 1 + skip;
    MendWay closed = way.cell(next, way.at() + 1, closing, true, closedPrice(way, closing, strays));
    add(strays > 0 ? closed.by(Code.STRAY_QUOTE, strays, 0) : closed);
  }

  private void closeWithoutDelimiter(MendWay way, int closing, int strays, double price) {
    if (cutting) {
      double whole = price + closedPrice(way, closing, strays);
      MendWay closed = way.cell(closing + 1, way.at() + 1, closing, true, whole);
      add(closed.by(Code.MISSING_DELIMITER, Math.max(1, strays), 1));
    }
  }

  private double closedPrice(MendWay way, int closing, int strays) {
    int from = way.at() + 1;
    return strays * STRAY_QUOTE
        + text.breaks(from, closing) * LINE_BREAK
        + model.cost(way.column(), text.look(from, closing, quote));
  }

  private void unquoted(MendWay way) {
    int end = way.at();
    for (int joins = 0; joins <= (blank ? MOST_BLANKS : MOST_JOINS); joins++) {
      end = text.nextDelimiter(end);
      literal(way, end, joins);
      if (end >= text.length()) {
        break;
      }
      end += skip;
    }
    if (cutting) {
      cut(way, text.nextDelimiter(way.at()));
    }
  }

  private void literal(MendWay way, int end, int joins) {
    int strays = text.quotes(way.at(), end);
    double price = strays * STRAY_QUOTE + joins * (blank ? LITERAL_BLANK : TAKEN_LITERALLY);
    price += 2 * LINE_BREAK * text.breaks(way.at(), end);
    price += model.cost(way.column(), text.look(way.at(), end, quote));
    int next = end >= text.length() ? end + 1 : end + skip;
    MendWay read = way.cell(next, way.at(), end, false, price);
    if (joins > 0) {
      read = read.by(Code.SURPLUS_DELIMITER, Math.max(joins, strays), blank ? 0 : joins);
    } else if (strays > 0) {
      read = read.by(Code.STRAY_QUOTE, strays, 0);
    }
    add(read);
  }

  /** A delimiter is missing before, or inside, the cell that ends at {@code end}. */
  private void cut(MendWay way, int end) {
    double empty = PUT_IN + model.cost(way.column(), Shape.EMPTY);
    add(way.cell(way.at(), 0, 0, false, empty).by(Code.MISSING_DELIMITER, 1, 1));
    boolean cutBefore = way.code() == Code.MISSING_DELIMITER && !way.quoted();
    for (int i = way.at() + 1; i < end && !cutBefore; i++) {
      boolean opening = dialect.hasQuote() && text.at(i) == quote;
      if (opening || i - way.at() <= LONGEST_CUT) {
        double price = PUT_IN + text.quotes(way.at(), i) * STRAY_QUOTE;
        price += model.cost(way.column(), text.look(way.at(), i, quote));
        add(way.cell(i, way.at(), i, false, price).by(Code.MISSING_DELIMITER, 1, 1));
      }
    }
  }

  private Mended result(MendWay end) {
    List<String> cells = new ArrayList<>();
    Map<Code, Integer> departures = new EnumMap<>(Code.class);
    for (MendWay way = end; way.before() != null; way = way.before()) {
      if (way.from() != MendWay.NO_CELL) {
        cells.add(0, cell(way));
      }
      if (way.code() != null) {
        departures.merge(way.code(), way.codes(), Integer::sum);
      }
    }
    return new Mended(cells, end.cost(), end.margin(), departures);
  }

  private String cell(MendWay way) {
    String part = text.part(way.from(), way.to());
    return way.quoted() ? splitter.inside(part) : part;
  }
}

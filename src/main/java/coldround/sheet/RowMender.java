package coldround.sheet;

import coldround.sheet.Fault.Code;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Reads a record that does not fit its table: finds the cheapest way to cut it into as many cells
 * as there are columns, where every departure from the dialect (a quote taken literally, a
 * delimiter put in, taken out or taken literally) has a price and so has a cell unlike its column.
 *
 * <p>A search over places in the record and columns, from left to right, that keeps the few
 * cheapest ways at each place.
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

  private static final int BEAM = 8;
  private static final int MOST_JOINS = 12;
  private static final int MOST_CLOSINGS = 6;
  private static final int LONGEST_CUT = 60;

  /** A reading: the cells, what it costs, and how many departures of each kind it took. */
  record Mended(List<String> cells, double cost, Map<Code, Integer> departures) {
    int count() {
      return departures.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  /** One way to the start of a cell; {@code at} is beyond the end once the last cell is read. */
  private record Way(
      Way before, int at, int column, String cell, Code code, int codes, double cost) {}

  private final ColumnModel model;
  private final String delimiter;
  private final char quote;
  private final boolean hasQuote;
  private final boolean padded;
  private final double joinPrice;
  private final CellSplitter splitter;
  private String text;
  private TreeMap<Integer, List<Way>> open;

  RowMender(ColumnModel model, Dialect dialect) {
    this.model = model;
    this.delimiter = dialect.delimiter();
    this.quote = dialect.quote();
    this.hasQuote = dialect.hasQuote();
    this.padded = dialect.padded();
    this.joinPrice =
        delimiter.isBlank() && !delimiter.equals("\t") ? LITERAL_BLANK : TAKEN_LITERALLY;
    this.splitter = new CellSplitter(dialect);
  }

  /** The cheapest reading, or null if the record cannot be cut into the columns. */
  Mended mend(String record) {
    text = record;
    open = new TreeMap<>();
    add(new Way(null, 0, 0, null, null, 0, 0));
    Way best = null;
    while (!open.isEmpty()) {
      List<Way> ways = open.pollFirstEntry().getValue();
      for (Way way : ways) {
        if (way.at > text.length()) {
          best = cheaper(best, finished(way));
        } else {
          extend(way);
        }
      }
    }
    return best == null ? null : result(best);
  }

  private Way cheaper(Way one, Way other) {
    return one == null || other.cost < one.cost ? other : one;
  }

  /** Columns without a cell at the end of the record are empty. */
  private Way finished(Way way) {
    Way end = way;
    while (end.column < model.width()) {
      double cost = MISSING_AT_END + model.cost(end.column, "");
      end = step(end, end.at, "", Code.TOO_FEW_CELLS, 1, cost);
    }
    return end;
  }

  private Way step(Way way, int at, String cell, Code code, int codes, double cost) {
    return new Way(way, at, way.column + 1, cell, code, codes, way.cost + cost);
  }

  private void add(Way reached) {
    Way way = padded ? behindBlanks(reached) : reached;
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
    while (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
    return new Way(way.before, at, way.column, way.cell, way.code, way.codes, way.cost);
  }

  private int dearest(List<Way> ways) {
    int worst = 0;
    for (int i = 1; i < ways.size(); i++) {
      if (ways.get(i).cost > ways.get(worst).cost) {
        worst = i;
      }
    }
    return worst;
  }

  private void extend(Way way) {
    if (text.startsWith(delimiter, way.at)) {
      dropEmpty(way, way.at + delimiter.length());
    } else if (way.at == text.length() && way.column > 0) {
      dropEmpty(way, text.length() + 1);
    }
    if (way.column == model.width()) {
      return;
    }
    if (hasQuote && way.at < text.length() && text.charAt(way.at) == quote) {
      quoted(way);
    }
    unquoted(way);
  }

  /** The cell is empty and one too many. */
  private void dropEmpty(Way way, int next) {
    add(new Way(way, next, way.column, null, Code.SURPLUS_DELIMITER, 1, way.cost + TAKEN_OUT));
  }

  private void quoted(Way way) {
    int strays = 0;
    int found = 0;
    for (int i = way.at + 1; i < text.length() && found < MOST_CLOSINGS; i++) {
      if (text.charAt(i) != quote) {
        continue;
      }
      boolean doubled = i + 1 < text.length() && text.charAt(i + 1) == quote;
      if (isCellEnd(i + 1)) {
        close(way, i, strays, i + 1 + delimiter.length(), 0);
        found++;
      } else if (!doubled) {
        close(way, i, strays, i + 1, PUT_IN);
      }
      if (doubled && !isCellEnd(i + 1)) {
        close(way, i, strays, i + 1, PUT_IN + STRAY_QUOTE / 2);
        i++;
        if (isCellEnd(i + 1)) {
          close(way, i, strays + 1, i + 1 + delimiter.length(), 0);
          found++;
        }
      } else {
        strays++;
      }
    }
  }

  private boolean isCellEnd(int offset) {
    return offset >= text.length() || text.startsWith(delimiter, offset);
  }

  private void close(Way way, int closing, int strays, int next, double price) {
    String cell = splitter.inside(text.substring(way.at + 1, closing));
    double cost = price + strays * STRAY_QUOTE + breaks(cell) * LINE_BREAK;
    Code code = price > 0 ? Code.MISSING_DELIMITER : strays > 0 ? Code.STRAY_QUOTE : null;
    add(step(way, next, cell, code, Math.max(1, strays), cost + model.cost(way.column, cell)));
  }

  private static long breaks(String cell) {
    return cell.chars().filter(c -> c == '\n').count();
  }

  private void unquoted(Way way) {
    int end = way.at;
    for (int joins = 0; joins <= MOST_JOINS; joins++) {
      end = nextDelimiter(end);
      literal(way, end, joins);
      if (end >= text.length()) {
        break;
      }
      end += delimiter.length();
    }
    cut(way, nextDelimiter(way.at));
  }

  private int nextDelimiter(int offset) {
    int end = text.indexOf(delimiter, offset);
    return end < 0 ? text.length() : end;
  }

  private void literal(Way way, int end, int joins) {
    String cell = text.substring(way.at, end);
    int strays = strays(cell);
    double cost = strays * STRAY_QUOTE + joins * joinPrice + breaks(cell) * 2 * LINE_BREAK;
    Code code = joins > 0 ? Code.SURPLUS_DELIMITER : strays > 0 ? Code.STRAY_QUOTE : null;
    double look =
        model.cost(way.column, strays > 0 ? cell.replace(String.valueOf(quote), "") : cell);
    add(step(way, end + delimiter.length(), cell, code, Math.max(joins, strays), cost + look));
  }

  private int strays(String cell) {
    return hasQuote ? (int) cell.chars().filter(c -> c == quote).count() : 0;
  }

  /** A delimiter is missing inside the cell that ends at {@code end}. */
  private void cut(Way way, int end) {
    if (end - way.at > LONGEST_CUT && text.indexOf(quote, way.at) >= end) {
      return;
    }
    for (int i = way.at + 1; i < end; i++) {
      if (isPlaceToCut(way.at, i)) {
        String cell = text.substring(way.at, i);
        double cost = PUT_IN + strays(cell) * STRAY_QUOTE + model.cost(way.column, cell);
        add(step(way, i, cell, Code.MISSING_DELIMITER, 1, cost));
      }
    }
  }

  private boolean isPlaceToCut(int start, int offset) {
    return offset - start <= LONGEST_CUT || (hasQuote && text.charAt(offset) == quote);
  }

  private Mended result(Way end) {
    List<String> cells = new ArrayList<>();
    Map<Code, Integer> departures = new EnumMap<>(Code.class);
    for (Way way = end; way.before != null; way = way.before) {
      if (way.cell != null) {
        cells.add(0, way.cell);
      }
      if (way.code != null) {
        departures.merge(way.code, way.codes, Integer::sum);
      }
    }
    return new Mended(cells, end.cost, new LinkedHashMap<>(departures));
  }
}

package coldround.sheet;

import coldround.sheet.Dialect.Escape;
import java.util.ArrayList;
import java.util.List;

/**
 * Splits one record into cells in any dialect, forgiving every misplaced quote: an opening quote
 * without a closing one before a delimiter, and a quote inside an unquoted cell, are plain
 * characters.
 */
final class CellSplitter {

  private final String delimiter;
  private final char quote;
  private final boolean hasQuote;
  private final boolean backslash;
  private final boolean padded;
  private int strays;
  private boolean closable;

  CellSplitter(Dialect dialect) {
    this.delimiter = dialect.delimiter();
    this.quote = dialect.quote();
    this.hasQuote = dialect.hasQuote();
    this.backslash = dialect.escape() == Escape.BACKSLASH;
    this.padded = dialect.padded();
  }

  /** Misplaced quotes of the record split last. */
  int strays() {
    return strays;
  }

  List<String> split(String record) {
    strays = 0;
    closable = true;
    List<String> cells = new ArrayList<>();
    int i = 0;
    while (i >= 0) {
      i = cell(record, skipBlanks(record, i), cells);
    }
    return cells;
  }

  private int skipBlanks(String record, int offset) {
    int i = offset;
    while (padded && i < record.length() && record.charAt(i) == ' ') {
      i++;
    }
    return i;
  }

  /** Adds the cell at {@code start}; where the next one starts, or -1 behind the last. */
  private int cell(String record, int start, List<String> cells) {
    if (hasQuote && closable && start < record.length() && record.charAt(start) == quote) {
      int close = closing(record, start + 1);
      if (close >= 0) {
        cells.add(unquoted(record.substring(start + 1, close)));
        return next(record, close + 1);
      }
      // no quote closes a cell from here to the end, so none need be looked for again
      closable = false;
    }
    int end = unquotedEnd(record, start);
    cells.add(literal(record.substring(start, end)));
    return next(record, end);
  }

  private int next(String record, int end) {
    return end >= record.length() ? -1 : end + delimiter.length();
  }

  private int unquotedEnd(String record, int start) {
    if (!backslash) {
      int end = record.indexOf(delimiter, start);
      return end < 0 ? record.length() : end;
    }
    for (int i = start; i < record.length(); i++) {
      if (record.startsWith(delimiter, i)) {
        return i;
      }
      if (record.charAt(i) == '\\') {
        i++;
      }
    }
    return record.length();
  }

  private int closing(String record, int start) {
    for (int i = start; i < record.length(); i++) {
      char c = record.charAt(i);
      if (backslash && c == '\\') {
        i++;
      } else if (c == quote && closes(record, i)) {
        return i;
      } else if (c == quote && i + 1 < record.length() && record.charAt(i + 1) == quote) {
        i++;
      }
    }
    return -1;
  }

  /** A run of an odd number of quotes before a delimiter or the end closes the cell. */
  private boolean closes(String record, int offset) {
    if (offset + 1 < record.length() && record.charAt(offset + 1) == quote && !backslash) {
      return false;
    }
    return offset + 1 == record.length() || record.startsWith(delimiter, offset + 1);
  }

  private String literal(String cell) {
    if (hasQuote && cell.indexOf(quote) >= 0) {
      strays++;
    }
    return backslash ? withoutBackslash(cell) : cell;
  }

  /** The content of a quoted cell, given what stands between its quotes. */
  String inside(String cell) {
    return unquoted(cell);
  }

  private String unquoted(String cell) {
    if (backslash) {
      return withoutBackslash(cell);
    }
    return cell.indexOf(quote) < 0 ? cell : undoubled(cell);
  }

  private String undoubled(String cell) {
    StringBuilder out = new StringBuilder(cell.length());
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      out.append(c);
      if (c == quote && i + 1 < cell.length() && cell.charAt(i + 1) == quote) {
        i++;
      } else if (c == quote) {
        strays++;
      }
    }
    return out.toString();
  }

  /** Only what needs an escape loses it: a Windows path keeps its backslashes. */
  private String withoutBackslash(String cell) {
    if (cell.indexOf('\\') < 0) {
      return cell;
    }
    StringBuilder out = new StringBuilder(cell.length());
    for (int i = 0; i < cell.length(); i++) {
      if (cell.charAt(i) == '\\' && i + 1 < cell.length() && isEscaped(cell, i + 1)) {
        i++;
      }
      out.append(cell.charAt(i));
    }
    return out.toString();
  }

  private boolean isEscaped(String cell, int offset) {
    char c = cell.charAt(offset);
    return (hasQuote && c == quote) || c == '\\' || cell.startsWith(delimiter, offset);
  }
}

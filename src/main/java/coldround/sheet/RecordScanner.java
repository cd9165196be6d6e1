package coldround.sheet;

import coldround.sheet.Dialect.Escape;

/**
 * Finds where the next record of a text ends and whether its quotes are well formed. A record whose
 * quotes are not well formed ends with its first line, so that it can cost no other record.
 */
final class RecordScanner {

  /** What a record looks like. */
  enum Form {
    /** Holds no quote character. */
    PLAIN,
    /** Every quote opens, closes or is escaped as the dialect has it. */
    QUOTED,
    /** A quote stands where none may, or is never closed. */
    IRREGULAR,
    /** The line is longer than a record may be. */
    TOO_LONG
  }

  /** Longest record in characters; the budget of memory for one record. */
  static final int LONGEST = 1 << 20;

  private static final int SHORTEST_LIMIT = 1 << 14;

  private final TextSource text;
  private final String delimiter;
  private final char first;
  private final char quote;
  private final boolean backslash;
  private final boolean padded;
  private int limit = LONGEST;
  private int length;
  private int lineEnd;
  private int lines;
  private int reach;
  private Form form;

  RecordScanner(TextSource text, Dialect dialect) {
    this.text = text;
    this.delimiter = dialect.delimiter();
    this.first = delimiter.charAt(0);
    this.quote = dialect.hasQuote() ? dialect.quote() : '\n';
    this.backslash = dialect.escape() == Escape.BACKSLASH;
    this.padded = dialect.padded();
  }

  /** Scans the record at the start of the text; false at the end of the text. */
  boolean scan() {
    if (!text.has(0)) {
      return false;
    }
    int stop = text.breakOr(quote, 0, LONGEST);
    if (stop < 0) {
      form = Form.TOO_LONG;
    } else if (isLineEnd(stop)) {
      found(Form.PLAIN, stop, 1);
    } else {
      scanQuoted();
    }
    return true;
  }

  Form form() {
    return form;
  }

  /** Lines the record takes. */
  int lines() {
    return lines;
  }

  /** For an irregular record: lines looked at until the fault showed. */
  int reach() {
    return reach;
  }

  String record() {
    return text.text(0, length);
  }

  /** Moves the text behind the record. */
  void pass() {
    text.consume(length + lineEnd, lines);
  }

  /** Takes the first {@code count} lines as the record; false if the text ends before. */
  boolean takeLines(int count) {
    int end = 0;
    for (int i = 0; i < count; i++) {
      int start = i == 0 ? 0 : end + text.breakLength(end);
      if (i > 0 && !text.has(start)) {
        return false;
      }
      end = text.breakOr('\n', start, LONGEST);
      if (end < 0) {
        return false;
      }
    }
    found(form, end, count);
    return true;
  }

  private void found(Form seen, int end, int count) {
    form = seen;
    length = end;
    lineEnd = text.breakLength(end);
    lines = count;
  }

  private boolean isLineEnd(int offset) {
    return !text.has(offset) || text.at(offset) == '\n' || text.at(offset) == '\r';
  }

  private boolean isDelimiter(int offset) {
    if (!text.has(offset) || text.at(offset) != first) {
      return false;
    }
    for (int k = 1; k < delimiter.length(); k++) {
      if (!text.has(offset + k) || text.at(offset + k) != delimiter.charAt(k)) {
        return false;
      }
    }
    return true;
  }

  private void scanQuoted() {
    reach = 1;
    int i = 0;
    while (true) {
      i = cellEnd(skipBlanks(i));
      if (i < 0) {
        irregular();
        return;
      }
      if (isLineEnd(i)) {
        found(Form.QUOTED, i, reach);
        limit = LONGEST;
        return;
      }
      i += delimiter.length();
    }
  }

  /** An unclosed quote looks less far ahead each time, so that many of them stay cheap. */
  private void irregular() {
    form = Form.IRREGULAR;
    if (reach > 1) {
      limit = Math.max(SHORTEST_LIMIT, limit / 2);
    }
    if (!takeLines(1)) {
      form = Form.TOO_LONG;
    }
  }

  private int skipBlanks(int offset) {
    int i = offset;
    while (padded && text.has(i) && text.at(i) == ' ') {
      i++;
    }
    return i;
  }

  /** Offset of the delimiter or line end behind the cell, or -1 if its quotes are irregular. */
  private int cellEnd(int offset) {
    if (text.has(offset) && text.at(offset) == quote) {
      int end = closing(offset + 1);
      return end >= 0 && (isDelimiter(end) || isLineEnd(end)) ? end : -1;
    }
    return unquotedEnd(offset);
  }

  private int unquotedEnd(int offset) {
    for (int i = offset; i < LONGEST; i++) {
      if (isLineEnd(i) || isDelimiter(i)) {
        return i;
      }
      if (text.at(i) == quote) {
        return -1;
      }
      if (backslash && text.at(i) == '\\' && !isLineEnd(i + 1)) {
        i++;
      }
    }
    return -1;
  }

  /** Offset behind the quote that closes, or -1. */
  private int closing(int offset) {
    for (int i = offset; i < (reach > 1 ? limit : LONGEST) && text.has(i); i++) {
      char c = text.at(i);
      if (c == quote) {
        if (backslash || !text.has(i + 1) || text.at(i + 1) != quote) {
          return i + 1;
        }
        i++;
      } else if (backslash && c == '\\' && text.has(i + 1) && !isLineEnd(i + 1)) {
        i++;
      } else if (c == '\n' || (c == '\r' && !(text.has(i + 1) && text.at(i + 1) == '\n'))) {
        reach++;
      }
    }
    return -1;
  }
}

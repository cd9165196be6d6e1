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
  private final EscapedScan escaped;
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
    this.escaped = new EscapedScan(text, dialect);
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
    } else if (backslash) {
      scanEscaped();
    } else {
      scanQuoted(stop);
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

  /** Goes from quote to quote; {@code stop} is the first. */
  private void scanQuoted(int stop) {
    reach = 1;
    int most = mostLookedAt();
    int quoteAt = stop;
    while (opensCell(quoteAt)) {
      int end = closing(quoteAt + 1, most);
      if (end < 0 || !(isLineEnd(end) || isDelimiter(end))) {
        break;
      }
      quoteAt = text.breakOr(quote, end, LONGEST);
      if (quoteAt < 0) {
        break;
      }
      if (isLineEnd(quoteAt)) {
        regular(quoteAt);
        return;
      }
    }
    irregular();
  }

  private void scanEscaped() {
    int end = escaped.scan(mostLookedAt());
    reach = escaped.reach();
    if (end < 0) {
      irregular();
    } else {
      regular(end);
    }
  }

  private void regular(int end) {
    found(Form.QUOTED, end, reach);
    limit = LONGEST;
  }

  /** The first line is looked at whole, what is behind it up to the limit. */
  private int mostLookedAt() {
    int line = limit == LONGEST ? LONGEST : text.breakOr('\n', 0, LONGEST);
    return line < 0 ? LONGEST : Math.max(limit, line + 1);
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

  private boolean opensCell(int offset) {
    int start = offset;
    while (padded && start > 0 && text.at(start - 1) == ' ') {
      start--;
    }
    return start == 0 || (start >= delimiter.length() && isDelimiter(start - delimiter.length()));
  }

  /** Offset behind the quote that closes, or -1; counts the lines on the way. */
  private int closing(int offset, int most) {
    int i = offset;
    while (true) {
      int at = text.find(quote, i, most);
      if (at < 0) {
        reach++;
        return -1;
      }
      if (!text.has(at + 1) || text.at(at + 1) != quote) {
        reach += text.breaks(offset, at);
        return at + 1;
      }
      i = at + 2;
    }
  }
}

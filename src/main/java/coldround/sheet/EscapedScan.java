package coldround.sheet;

/**
 * Scans one record of a dialect where a backslash escapes quotes and delimiters: character by
 * character, since any of them may be escaped.
 */
final class EscapedScan {

  private final TextSource text;
  private final String delimiter;
  private final char quote;
  private final boolean padded;
  private int reach;

  EscapedScan(TextSource text, Dialect dialect) {
    this.text = text;
    this.delimiter = dialect.delimiter();
    this.quote = dialect.hasQuote() ? dialect.quote() : '\n';
    this.padded = dialect.padded();
  }

  /** Lines looked at in the last scan. */
  int reach() {
    return reach;
  }

  /** Offset of the line end behind the record, or -1 if its quotes are irregular. */
  int scan(int most) {
    reach = 1;
    int i = 0;
    while (true) {
      i = cellEnd(skipBlanks(i), most);
      if (i < 0 || isLineEnd(i)) {
        return i;
      }
      i += delimiter.length();
    }
  }

  private int skipBlanks(int offset) {
    int i = offset;
    while (padded && text.has(i) && text.at(i) == ' ') {
      i++;
    }
    return i;
  }

  private int cellEnd(int offset, int most) {
    if (text.has(offset) && text.at(offset) == quote) {
      int end = closing(offset + 1, most);
      return end >= 0 && (isDelimiter(end) || isLineEnd(end)) ? end : -1;
    }
    return unquotedEnd(offset);
  }

  private int unquotedEnd(int offset) {
    for (int i = offset; i < RecordScanner.LONGEST; i++) {
      if (isLineEnd(i) || isDelimiter(i)) {
        return i;
      }
      if (text.at(i) == quote) {
        return -1;
      }
      i += text.at(i) == '\\' && !isLineEnd(i + 1) ? 1 : 0;
    }
    return -1;
  }

  private int closing(int offset, int most) {
    for (int i = offset; i < most && text.has(i); i++) {
      char c = text.at(i);
      if (c == quote) {
        return i + 1;
      }
      if (c == '\\' && !isLineEnd(i + 1)) {
        i++;
      } else if (isLineEnd(i)) {
        reach++;
        i += text.breakLength(i) - 1;
      }
    }
    return -1;
  }

  private boolean isLineEnd(int offset) {
    return !text.has(offset) || text.at(offset) == '\n' || text.at(offset) == '\r';
  }

  private boolean isDelimiter(int offset) {
    for (int k = 0; k < delimiter.length(); k++) {
      if (!text.has(offset + k) || text.at(offset + k) != delimiter.charAt(k)) {
        return false;
      }
    }
    return true;
  }
}

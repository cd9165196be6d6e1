package coldround.sheet;

/**
 * Counts cells wrapped in a quote character, given the delimiter. An apostrophe is no quote unless
 * it does a quote's work: it wraps cells that hold the delimiter, or a whole column.
 */
final class QuoteEvidence {

  private static final int LINES = 1000;
  private static final int WHOLE_COLUMN = 5;

  private final String delimiter;
  private final char quote;
  private boolean closable;
  private int wrapped;
  private int halfWrapped;
  private int protecting;

  private QuoteEvidence(String delimiter, char quote) {
    this.delimiter = delimiter;
    this.quote = quote;
  }

  static QuoteEvidence of(String text, String delimiter, char quote) {
    QuoteEvidence evidence = new QuoteEvidence(delimiter, quote);
    text.lines().limit(LINES).forEach(evidence::line);
    return evidence;
  }

  int wrapped() {
    return wrapped;
  }

  /** Whether the character can be the quote of the text by what it does. */
  boolean isConvincing() {
    boolean mostlyWhole = wrapped >= 3 * halfWrapped;
    return mostlyWhole && (protecting >= 2 || wrapped >= WHOLE_COLUMN);
  }

  private void line(String line) {
    int at = 0;
    closable = true;
    while (at >= 0 && at < line.length()) {
      at = line.charAt(at) == quote ? behindWrapped(line, at) : behindPlain(line, at);
    }
  }

  private int behindPlain(String line, int at) {
    int end = line.indexOf(delimiter, at);
    return end < 0 ? -1 : end + delimiter.length();
  }

  private int behindWrapped(String line, int at) {
    for (int i = at + 1; closable && i < line.length(); i++) {
      if (line.charAt(i) == quote && isCellEnd(line, i + 1)) {
        wrapped++;
        protecting += line.substring(at, i).contains(delimiter) ? 1 : 0;
        return i + 1 + delimiter.length();
      }
    }
    halfWrapped++;
    closable = false;
    return behindPlain(line, at);
  }

  private boolean isCellEnd(String line, int offset) {
    return offset >= line.length() || line.startsWith(delimiter, offset);
  }
}

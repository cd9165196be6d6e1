package coldround.sheet;

import java.util.HashMap;
import java.util.Map;

/** One record as text, with what a search asks again and again about its parts. */
final class RecordText {

  /** Characters from which on the look of a part does not change any more. */
  private static final int LOOKED_AT = 200;

  private final String text;
  private final String delimiter;
  private final int[] quotes;
  private final int[] breaks;
  private final Map<Long, Shape> looks = new HashMap<>();

  RecordText(String text, Dialect dialect) {
    this.text = text;
    this.delimiter = dialect.delimiter();
    this.quotes = before(text, dialect.hasQuote() ? dialect.quote() : -1);
    this.breaks = before(text, '\n');
  }

  private static int[] before(String text, int character) {
    int[] counts = new int[text.length() + 1];
    for (int i = 0; i < text.length(); i++) {
      counts[i + 1] = counts[i] + (text.charAt(i) == character ? 1 : 0);
    }
    return counts;
  }

  int length() {
    return text.length();
  }

  char at(int offset) {
    return text.charAt(offset);
  }

  String part(int from, int to) {
    return text.substring(from, to);
  }

  boolean isDelimiter(int offset) {
    return text.startsWith(delimiter, offset);
  }

  boolean isCellEnd(int offset) {
    return offset >= text.length() || isDelimiter(offset);
  }

  /** Offset of the next delimiter, or the length of the text. */
  int nextDelimiter(int offset) {
    int end = text.indexOf(delimiter, offset);
    return end < 0 ? text.length() : end;
  }

  int quotes(int from, int to) {
    return quotes[to] - quotes[from];
  }

  int breaks(int from, int to) {
    return breaks[to] - breaks[from];
  }

  /** The look of a part, its misplaced quotes left out. */
  Shape look(int from, int to, char quote) {
    long key = (long) from << 32 | to;
    Shape look = looks.get(key);
    if (look == null) {
      String part = part(from, Math.min(to, from + LOOKED_AT));
      boolean strays = quotes(from, to) > 0;
      look = Shape.of(strays ? part.replace(String.valueOf(quote), "") : part, to - from);
      looks.put(key, look);
    }
    return look;
  }
}

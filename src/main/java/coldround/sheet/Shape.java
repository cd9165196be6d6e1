package coldround.sheet;

/**
 * The look of a cell without its content: digits become {@code 9}, letters {@code a} or {@code A},
 * the rest stays. Cells of one column tend to share a look, which tells where a cell begins and
 * ends when a delimiter is missing.
 *
 * @param kind coarse class
 * @param coarse the first few runs of one class
 * @param exact every character's class for short cells, else the coarse look
 * @param logLength natural logarithm of one more than the number of characters
 */
record Shape(Kind kind, String coarse, String exact, double logLength) {

  /** Coarse class of a cell. */
  enum Kind {
    EMPTY,
    NUMBER,
    CODE,
    WORD,
    TEXT
  }

  private static final int EXACT = 24;
  private static final int COARSE = 12;

  static final Shape EMPTY = of("");

  static Shape of(String cell) {
    return of(cell, cell.length());
  }

  /** The look of a cell of so many characters, given its start. */
  static Shape of(String cell, int length) {
    String coarse = coarse(cell);
    String exact = cell.length() > EXACT ? coarse : exact(cell);
    return new Shape(kind(cell), coarse, exact, Math.log1p(length));
  }

  /** Every character's class. */
  private static String exact(String cell) {
    StringBuilder out = new StringBuilder(cell.length());
    for (int i = 0; i < cell.length(); i++) {
      out.append(classOf(cell.charAt(i)));
    }
    return out.toString();
  }

  /** Runs of one class as one character, at most the first few. */
  private static String coarse(String cell) {
    StringBuilder out = new StringBuilder(COARSE + 2).append('~');
    char last = 0;
    for (int i = 0; i < cell.length() && out.length() <= COARSE; i++) {
      char c = classOf(cell.charAt(i));
      if (c != last || !Character.isLetterOrDigit(c)) {
        out.append(c);
      }
      last = c;
    }
    return out.toString();
  }

  static Kind kind(String cell) {
    int digits = 0;
    int letters = 0;
    int blanks = 0;
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      digits += Character.isDigit(c) ? 1 : 0;
      letters += Character.isLetter(c) ? 1 : 0;
      blanks += c == ' ' || c == '\n' || c == '\r' ? 1 : 0;
    }
    if (blanks == cell.length()) {
      return Kind.EMPTY;
    }
    if (letters == 0 && digits > 0) {
      return Kind.NUMBER;
    }
    if (blanks > 0) {
      return Kind.TEXT;
    }
    return digits > 0 ? Kind.CODE : Kind.WORD;
  }

  private static char classOf(char c) {
    if (Character.isDigit(c)) {
      return '9';
    }
    if (Character.isUpperCase(c)) {
      return 'A';
    }
    if (Character.isLetter(c)) {
      return 'a';
    }
    return c == '\n' || c == '\r' ? ' ' : c;
  }
}

package coldround.sheet;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * How a delimited text is written. Line ends need no entry: CR, LF and CRLF all end a line, also
 * mixed in one file.
 *
 * @param charset how the bytes are to be decoded
 * @param byteOrderMark whether the file starts with a byte order mark
 * @param delimiter one or more characters between two cells
 * @param quote the character around cells that hold a delimiter or line break; {@link #NO_QUOTE} if
 *     none is used
 * @param escape how a quote inside a quoted cell is written
 * @param padded whether blanks behind a delimiter belong to the delimiter
 */
public record Dialect(
    Charset charset,
    boolean byteOrderMark,
    String delimiter,
    char quote,
    Escape escape,
    boolean padded) {

  /** Stands for "no quote character". */
  public static final char NO_QUOTE = '\0';

  /** RFC 4180: comma, double quote, a quote inside a quoted cell doubled; UTF-8. */
  public static final Dialect STANDARD =
      new Dialect(StandardCharsets.UTF_8, false, ",", '"', Escape.DOUBLED, false);

  /** How a quote inside a quoted cell is written. */
  public enum Escape {
    /** The quote twice. */
    DOUBLED,
    /** A backslash before the quote, before another backslash, or before the delimiter. */
    BACKSLASH
  }

  public Dialect {
    if (delimiter.isEmpty() || delimiter.indexOf('\n') >= 0 || delimiter.indexOf('\r') >= 0) {
      throw new IllegalArgumentException("a delimiter has characters and no line end");
    }
  }

  /** The same dialect with another charset. */
  public Dialect in(Charset other, boolean mark) {
    return new Dialect(other, mark, delimiter, quote, escape, padded);
  }

  /** The same dialect with another delimiter. */
  public Dialect delimitedBy(String other) {
    return new Dialect(charset, byteOrderMark, other, quote, escape, padded);
  }

  /** The same dialect with another quote and escape. */
  public Dialect quotedBy(char other, Escape way) {
    return new Dialect(charset, byteOrderMark, delimiter, other, way, padded);
  }

  /** The same dialect where blanks behind a delimiter are part of it, or not. */
  public Dialect padded(boolean blanks) {
    return new Dialect(charset, byteOrderMark, delimiter, quote, escape, blanks);
  }

  boolean hasQuote() {
    return quote != NO_QUOTE;
  }

  /** Whether OpenCSV's RFC 4180 parser reads a well-formed record of this dialect. */
  boolean isStandardForm() {
    return delimiter.length() == 1 && hasQuote() && escape == Escape.DOUBLED && !padded;
  }
}

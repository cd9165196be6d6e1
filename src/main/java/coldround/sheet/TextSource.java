package coldround.sheet;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Arrays;

/**
 * A text read piece by piece with free look-ahead from a moving start. Keeps no more than what lies
 * between the start and the furthest character looked at.
 */
final class TextSource implements AutoCloseable {

  private static final int PIECE = 1 << 16;

  private final Reader reader;
  private char[] buffer = new char[2 * PIECE];
  private int from;
  private int to;
  private boolean ended;
  private long line = 1;

  TextSource(Reader reader) {
    this.reader = reader;
  }

  /** Number of the line at the start. */
  long line() {
    return line;
  }

  /** Whether the text goes on at {@code offset} characters behind the start. */
  boolean has(int offset) {
    while (from + offset >= to && !ended) {
      fill();
    }
    return from + offset < to;
  }

  /** The character at an offset for which {@link #has} was true. */
  char at(int offset) {
    return buffer[from + offset];
  }

  String text(int begin, int end) {
    return new String(buffer, from + begin, end - begin);
  }

  /**
   * Offset of the first line break or {@code quote} at or behind {@code offset}, the number of
   * characters left if there is none, or -1 if {@code limit} characters hold none.
   */
  int breakOr(char quote, int offset, int limit) {
    int i = offset;
    while (i < limit) {
      if (!has(i)) {
        return to - from;
      }
      int end = Math.min(to, from + limit);
      for (int p = from + i; p < end; p++) {
        char c = buffer[p];
        if (c == '\n' || c == '\r' || c == quote) {
          return p - from;
        }
      }
      i = end - from;
    }
    return -1;
  }

  /** Offset of the first {@code wanted} at or behind {@code offset} and before the limit, or -1. */
  int find(char wanted, int offset, int limit) {
    int i = offset;
    while (i < limit && has(i)) {
      int end = Math.min(to, from + limit);
      for (int p = from + i; p < end; p++) {
        if (buffer[p] == wanted) {
          return p - from;
        }
      }
      i = end - from;
    }
    return -1;
  }

  /** Line ends between two offsets. */
  int breaks(int begin, int end) {
    int count = 0;
    for (int p = from + begin; p < from + end; p++) {
      boolean lone = buffer[p] == '\r' && (p + 1 == to || buffer[p + 1] != '\n');
      count += buffer[p] == '\n' || lone ? 1 : 0;
    }
    return count;
  }

  /** Length of the line end at {@code offset}: 0 at the end of the text, 2 for CRLF, else 1. */
  int breakLength(int offset) {
    if (!has(offset)) {
      return 0;
    }
    return at(offset) == '\r' && has(offset + 1) && at(offset + 1) == '\n' ? 2 : 1;
  }

  /** Moves the start. */
  void consume(int characters, int lines) {
    from += characters;
    line += lines;
  }

  /** Moves the start behind the next line end, without keeping what is passed over. */
  void skipLine() {
    int at = breakOr('\n', 0, PIECE);
    while (at < 0) {
      consume(PIECE, 0);
      at = breakOr('\n', 0, PIECE);
    }
    consume(at + breakLength(at), 1);
  }

  private void fill() {
    makeRoom();
    try {
      int read = reader.read(buffer, to, buffer.length - to);
      if (read < 0) {
        ended = true;
      } else {
        to += read;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void makeRoom() {
    if (from > PIECE || from == to) {
      System.arraycopy(buffer, from, buffer, 0, to - from);
      to -= from;
      from = 0;
    }
    if (to == buffer.length) {
      buffer = Arrays.copyOf(buffer, buffer.length * 2);
    }
  }

  @Override
  public void close() {
    try {
      reader.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

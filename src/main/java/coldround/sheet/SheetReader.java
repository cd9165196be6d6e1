package coldround.sheet;

import java.io.Reader;
import java.util.Iterator;
import java.util.NoSuchElementException;

/** Reads the records of a delimited text one after the other, with the line each starts on. */
public final class SheetReader implements Iterator<Row>, AutoCloseable {

  private final TextSource text;
  private final RecordReader records;
  private Row next;
  private boolean ended;

  SheetReader(TextSource text, RecordReader records) {
    this.text = text;
    this.records = records;
  }

  /** Reads RFC 4180 text: comma, double quote, a quote inside a quoted cell doubled. */
  public static SheetReader standard(Reader text) {
    return of(text, Dialect.STANDARD);
  }

  /**
   * Reads text of a known dialect, every record as wide as it is. A misplaced quote costs no more
   * than its own row, which names it.
   */
  public static SheetReader of(Reader text, Dialect dialect) {
    TextSource source = new TextSource(text);
    return new SheetReader(source, new RecordReader(source, dialect, null));
  }

  @Override
  public boolean hasNext() {
    if (next == null && !ended) {
      next = records.next();
      ended = next == null;
    }
    return next != null;
  }

  @Override
  public Row next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    Row row = next;
    next = null;
    return row;
  }

  @Override
  public void close() {
    text.close();
  }
}

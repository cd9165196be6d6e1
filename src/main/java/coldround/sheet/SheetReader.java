package coldround.sheet;

import com.opencsv.CSVReader;
import com.opencsv.CSVReaderBuilder;
import com.opencsv.RFC4180ParserBuilder;
import com.opencsv.exceptions.CsvValidationException;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;

/** Reads the records of a delimited text one after the other, with the line each starts on. */
public final class SheetReader implements Iterator<Row>, AutoCloseable {

  private final CSVReader reader;
  private Row next;
  private boolean ended;

  private SheetReader(CSVReader reader) {
    this.reader = reader;
  }

  /** Reads RFC 4180 text: comma, double quote, a quote inside a quoted cell doubled. */
  public static SheetReader standard(Reader text) {
    return new SheetReader(
        new CSVReaderBuilder(text).withCSVParser(new RFC4180ParserBuilder().build()).build());
  }

  @Override
  public boolean hasNext() {
    if (next == null && !ended) {
      next = read();
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

  private Row read() {
    try {
      long line = reader.getLinesRead() + 1;
      String[] cells = reader.readNext();
      return cells == null ? null : new Row(line, List.of(cells));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (CsvValidationException e) {
      throw new IllegalStateException(e);
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

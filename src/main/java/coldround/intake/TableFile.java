package coldround.intake;

import coldround.sheet.Dialect;
import coldround.sheet.Layout;
import coldround.sheet.NotASheet;
import coldround.sheet.Row;
import coldround.sheet.Sheet;
import coldround.sheet.SheetReader;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CodingErrorAction;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A file of rows with its header found. The form of the file is detected; where its header then
 * says nothing that is known, the first line that does is taken for it.
 *
 * @param rows the rows behind the header, to be read once
 * @param bytes counts how much of the file has been read; of a workbook that is all of it at once
 */
public record TableFile(
    Dialect dialect, Heading heading, Iterator<Row> rows, CountedBytes bytes, AutoCloseable source)
    implements AutoCloseable {

  private static final int LOOK = 40;

  /** Reads a header as columns, or throws. */
  private interface Headings extends Function<Row, Heading> {}

  /**
   * @param sheetName of a workbook; empty for the first that is filled
   * @throws UnreadableFile when it is no table of text or its header does not fit
   */
  public static TableFile open(
      Path file, String sheetName, coldround.fleet.Kind kind, List<Column> columns, CellRules rules)
      throws IOException {
    Headings headings = row -> HeadingReader.read(kind, row.cells(), row.line(), columns, rules);
    try {
      return open(file, sheetName, headings);
    } catch (NotASheet refusal) {
      throw UnreadableFile.of(refusal);
    }
  }

  private static TableFile open(Path file, String sheetName, Headings headings) throws IOException {
    CountedBytes bytes = CountedBytes.of(file);
    Sheet sheet = Sheet.open(bytes, sheetName);
    Layout layout = sheet.layout();
    Row labels = new Row(Math.max(1, layout.headerLine()), layout.labels());
    try {
      if (layout.header().size() == 1 || sheet.isOfWorkbook()) {
        return new TableFile(sheet.dialect(), headings.apply(labels), sheet.rows(), bytes, sheet);
      }
    } catch (UnreadableFile e) {
      sheet.close();
      if (sheet.isOfWorkbook()) {
        throw e;
      }
      return searched(file, sheet.dialect(), headings).orElseThrow(() -> e);
    }
    sheet.close();
    Optional<TableFile> found = searched(file, sheet.dialect(), headings);
    return found.isPresent() ? found.get() : joined(file, headings);
  }

  /** Several header rows that only together name the columns. */
  private static TableFile joined(Path file, Headings headings) throws IOException {
    CountedBytes bytes = CountedBytes.of(file);
    Sheet sheet = Sheet.open(bytes);
    try {
      Row labels = new Row(Math.max(1, sheet.layout().headerLine()), sheet.layout().labels());
      return new TableFile(sheet.dialect(), headings.apply(labels), sheet.rows(), bytes, sheet);
    } catch (RuntimeException e) {
      sheet.close();
      throw e;
    }
  }

  private static Optional<TableFile> searched(Path file, Dialect detected, Headings headings)
      throws IOException {
    Dialect standard = Dialect.STANDARD.in(detected.charset(), detected.byteOrderMark());
    Optional<TableFile> found = inDialect(file, detected, headings);
    return found.isPresent() ? found : inDialect(file, standard, headings);
  }

  private static Optional<TableFile> inDialect(Path file, Dialect dialect, Headings headings)
      throws IOException {
    CountedBytes bytes = CountedBytes.of(file);
    SheetReader rows = SheetReader.of(text(bytes, dialect), dialect);
    for (int i = 0; i < LOOK && rows.hasNext(); i++) {
      Row row = rows.next();
      try {
        return Optional.of(new TableFile(dialect, headings.apply(row), rows, bytes, rows));
      } catch (UnreadableFile e) {
        // not the header; the next line may be
      }
    }
    rows.close();
    return Optional.empty();
  }

  private static Reader text(InputStream file, Dialect dialect) {
    return new BufferedReader(
        new InputStreamReader(
            file,
            dialect
                .charset()
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE)));
  }

  /** Bytes behind which the rows lie; 0 for a workbook, whose bytes say nothing of its rows. */
  public long rowBytes(Path file) throws IOException {
    return source instanceof Sheet sheet && sheet.isOfWorkbook() ? 0 : Files.size(file);
  }

  @Override
  public void close() {
    try {
      source.close();
    } catch (RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new UncheckedIOException(new IOException(e));
    }
  }
}

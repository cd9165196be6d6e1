package coldround.sheet;

import coldround.sheet.Fault.Code;
import coldround.sheet.RecordScanner.Form;
import com.opencsv.RFC4180Parser;
import com.opencsv.RFC4180ParserBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;

/**
 * Reads one record after the other: well-formed ones by OpenCSV's RFC 4180 parser, those of other
 * dialects by {@link CellSplitter}, and hands those that do not fit to {@link RecordRepair}.
 */
final class RecordReader {

  private static final int SHOWN = 1000;

  private final TextSource text;
  private final RecordScanner scanner;
  private final CellSplitter splitter;
  private final RFC4180Parser parser;
  private RecordRepair repair;
  private int width;
  private final char delimiter;
  private int last;

  /**
   * @param repair what to do with records that do not fit; null to take any width
   */
  RecordReader(TextSource text, Dialect dialect, RecordRepair repair) {
    this.text = text;
    this.scanner = new RecordScanner(text, dialect);
    this.splitter = new CellSplitter(dialect);
    this.parser = dialect.isStandardForm() ? parser(dialect) : null;
    this.delimiter = dialect.delimiter().charAt(0);
    this.repair = repair;
    this.width = repair == null ? -1 : repair.width();
  }

  private static RFC4180Parser parser(Dialect dialect) {
    return new RFC4180ParserBuilder()
        .withSeparator(dialect.delimiter().charAt(0))
        .withQuoteChar(dialect.quote())
        .build();
  }

  /** From here on takes every record as it is, of any width. */
  void repairNoMore() {
    repair = null;
    width = -1;
  }

  /** Passes over the records that start before a line. */
  void skipTo(long line) {
    while (text.line() < line && scanner.scan()) {
      pass();
    }
  }

  private void pass() {
    if (scanner.form() == Form.TOO_LONG) {
      text.skipLine();
    } else {
      scanner.pass();
    }
  }

  /** The next record, or null at the end of the text. */
  Row next() {
    if (!scanner.scan()) {
      return null;
    }
    long line = text.line();
    Row row = row(line);
    pass();
    return row;
  }

  private Row row(long line) {
    Form form = scanner.form();
    if (form == Form.TOO_LONG) {
      return tooLong(line);
    }
    if (form == Form.IRREGULAR) {
      return repair == null ? literal(line) : repair.irregular(line, scanner);
    }
    String record = scanner.record();
    List<String> cells = form == Form.PLAIN && parser != null ? plain(record) : cells(record);
    if (width >= 0 && cells.size() != width) {
      return repair.misfit(line, cells, scanner);
    }
    return isClean(record) ? new Row(line, cells) : Unclean.row(line, cells);
  }

  private List<String> cells(String record) {
    if (parser == null) {
      return splitter.split(record);
    }
    try {
      return List.of(parser.parseLine(record));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A record without any quote needs no parser. */
  private List<String> plain(String record) {
    String[] cells = new String[Math.max(1, last)];
    int count = 0;
    int start = 0;
    for (int end = record.indexOf(delimiter); end >= 0; end = record.indexOf(delimiter, start)) {
      if (count == cells.length - 1) {
        cells = Arrays.copyOf(cells, cells.length * 2 + 1);
      }
      cells[count++] = record.substring(start, end);
      start = end + 1;
    }
    cells[count++] = record.substring(start);
    last = count;
    return List.of(count == cells.length ? cells : Arrays.copyOf(cells, count));
  }

  private static boolean isClean(String record) {
    return record.indexOf('\0') < 0 && record.indexOf('\uFFFD') < 0;
  }

  private Row tooLong(long line) {
    String start = text.has(SHOWN) ? text.text(0, SHOWN) : "";
    String message =
        "the line has more than "
            + RecordScanner.LONGEST
            + " characters; split the row or shorten its cells";
    return new Row(line, List.of(start), List.of(Fault.open(Code.RECORD_TOO_LONG, message)));
  }

  private Row literal(long line) {
    List<String> cells = splitter.split(scanner.record());
    return new Row(line, cells, List.of(QuoteFault.of(cells, splitter.strays())));
  }
}

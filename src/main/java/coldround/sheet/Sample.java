package coldround.sheet;

import coldround.sheet.RecordScanner.Form;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;

/**
 * The first records of a text as one dialect reads them, each irregular one ending with its line.
 *
 * @param records the records in order, blank ones included
 */
record Sample(List<Entry> records) {

  /** One record of the sample. */
  record Entry(long line, String text, List<String> cells, Form form) {

    boolean isBlank() {
      return filled() == 0;
    }

    int filled() {
      return (int) cells.stream().filter(c -> !c.isBlank()).count();
    }

    int width() {
      return cells.size();
    }
  }

  /**
   * Reads at most {@code most} records.
   *
   * @param whole false if the text goes on behind its end, so that its last record may be cut short
   */
  static Sample read(String text, boolean whole, Dialect dialect, int most) {
    List<Entry> records = new ArrayList<>();
    TextSource source = new TextSource(new StringReader(text));
    RecordScanner scanner = new RecordScanner(source, dialect);
    CellSplitter splitter = new CellSplitter(dialect);
    while (records.size() < most && scanner.scan()) {
      if (scanner.form() == Form.TOO_LONG) {
        source.skipLine();
        continue;
      }
      String record = scanner.record();
      records.add(new Entry(source.line(), record, splitter.split(record), scanner.form()));
      scanner.pass();
    }
    boolean cut = !whole && records.size() > 1 && records.size() < most;
    return new Sample(cut ? records.subList(0, records.size() - 1) : records);
  }

  /** Without the records that start before a line. */
  Sample from(long line) {
    return new Sample(records.stream().filter(r -> r.line() >= line).toList());
  }

  List<Entry> filledRecords() {
    return records.stream().filter(r -> !r.isBlank()).toList();
  }
}

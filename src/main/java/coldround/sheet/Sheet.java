package coldround.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Iterator;

/**
 * A delimited file opened with its charset, dialect and layout detected from its first bytes. Rows
 * are read one at a time; the memory used does not depend on the size of the file.
 */
public final class Sheet implements AutoCloseable {

  private static final int RECORDS = 2000;

  private final Dialect dialect;
  private final Layout layout;
  private final TableRows rows;
  private final AutoCloseable source;

  private Sheet(Dialect dialect, Layout layout, TableRows rows, AutoCloseable source) {
    this.dialect = dialect;
    this.layout = layout;
    this.rows = rows;
    this.source = source;
  }

  /**
   * Opens a delimited file, or the first filled sheet of a workbook.
   *
   * @throws NotASheet if the bytes are no table
   */
  public static Sheet open(InputStream in) throws IOException {
    Head head = Head.of(in);
    if (ContentCheck.isZip(head)) {
      Workbook workbook = Workbook.open(head.stream(0));
      return workbook.closedWith(workbook::firstSheet);
    }
    ContentCheck.bytes(head);
    return text(head);
  }

  /**
   * Opens the sheet of that name of a workbook; without a name like {@link #open(InputStream)}.
   *
   * @throws NotASheet if there is no such sheet, or the file is no workbook
   */
  public static Sheet open(InputStream in, String sheetName) throws IOException {
    if (sheetName.isEmpty()) {
      return open(in);
    }
    Head head = Head.of(in);
    if (!ContentCheck.isZip(head)) {
      String why = "The file is no workbook; leave the name of the sheet out.";
      throw new NotASheet(NotASheet.Reason.NO_SUCH_SHEET, why);
    }
    Workbook workbook = Workbook.open(head.stream(0));
    return workbook.closedWith(() -> workbook.sheet(sheetName));
  }

  /** True for a sheet of a workbook, which has no dialect to try anew. */
  public boolean isOfWorkbook() {
    return !(source instanceof TextSource);
  }

  private static Sheet text(Head head) {
    CharsetDetector.Found found = CharsetDetector.detect(head);
    String text = CharsetDetector.decode(head.bytes(), found, head.isWhole());
    ContentCheck.text(text);
    boolean misread = MisreadControls.in(text);
    String sampled = misread ? MisreadControls.repaired(text) : text;
    Dialect base = Dialect.STANDARD.in(found.charset(), found.mark() > 0);
    Dialect dialect = new DialectDetector(sampled, head.isWhole()).detect(base);
    Reader decoded =
        new InputStreamReader(head.stream(found.mark()), CharsetDetector.lenient(found.charset()));
    return read(misread ? new MisreadControls(decoded) : decoded, sampled, head.isWhole(), dialect);
  }

  /** A sheet of a workbook. */
  static Sheet of(Layout layout, Iterator<Row> data, AutoCloseable source) {
    return new Sheet(Dialect.STANDARD, layout, new TableRows(data, layout, () -> {}), source);
  }

  Sheet closing(AutoCloseable owner) {
    return new Sheet(dialect, layout, rows, owner);
  }

  private static Sheet read(Reader reader, String head, boolean whole, Dialect dialect) {
    long hint = DialectDetector.hintedDelimiter(head) == null ? 1 : 2;
    Sample sample = Sample.read(head, whole, dialect, RECORDS).from(hint);
    Layout layout = new LayoutDetector(sample, dialect).detect();
    ColumnModel model = ModelLearner.learn(sample, layout, dialect);
    TextSource text = new TextSource(reader);
    RecordReader records =
        new RecordReader(text, dialect, new RecordRepair(model, layout, dialect));
    records.skipTo(Math.max(hint, layout.firstDataLine()));
    return new Sheet(
        dialect,
        layout,
        new TableRows(new SheetReader(text, records), layout, records::repairNoMore),
        text);
  }

  public Dialect dialect() {
    return dialect;
  }

  public Layout layout() {
    return layout;
  }

  /** The data rows, to be read once. */
  public Iterator<Row> rows() {
    return rows;
  }

  /** Blank rows left out so far. */
  public long blankRows() {
    return rows.blank();
  }

  /** Repeats of the header left out so far. */
  public long repeatedHeaders() {
    return rows.repeatedHeaders();
  }

  @Override
  public void close() {
    try {
      source.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}

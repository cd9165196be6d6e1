package coldround.sheet;

import coldround.sheet.NotASheet.Reason;
import coldround.sheet.RecordScanner.Form;
import coldround.sheet.Sample.Entry;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;

/** An {@code .xlsx} workbook whose sheets are read as streams of rows. */
public final class Workbook implements AutoCloseable {

  private static final int RECORDS = 500;

  private final Path copy;
  private final ReadableWorkbook workbook;

  private Workbook(Path copy, ReadableWorkbook workbook) {
    this.copy = copy;
    this.workbook = workbook;
  }

  /**
   * Opens a workbook by way of a temporary file, since its parts are not in reading order.
   *
   * @throws NotASheet if it is damaged or protected
   */
  public static Workbook open(InputStream in) throws IOException {
    Path copy = Scratch.file("workbook", ".xlsx");
    try {
      Files.copy(in, copy, StandardCopyOption.REPLACE_EXISTING);
      return new Workbook(copy, readable(copy));
    } catch (IOException | RuntimeException e) {
      Files.deleteIfExists(copy);
      throw e;
    }
  }

  /** A workbook may do without formats of its cells; the reader must then not look for them. */
  private static ReadableWorkbook readable(Path file) {
    try {
      return new ReadableWorkbook(file.toFile(), new ReadingOptions(true, true));
    } catch (IOException | RuntimeException e) {
      return withoutFormats(file);
    }
  }

  private static ReadableWorkbook withoutFormats(Path file) {
    try {
      return new ReadableWorkbook(file.toFile(), new ReadingOptions(false, true));
    } catch (IOException | RuntimeException e) {
      throw unreadable(e);
    }
  }

  private static NotASheet unreadable(Exception cause) {
    NotASheet refusal = new NotASheet(Reason.UNREADABLE_WORKBOOK);
    refusal.initCause(cause);
    return refusal;
  }

  /** Names of the sheets in their order. */
  public List<String> sheetNames() {
    return workbook.getSheets().map(org.dhatim.fastexcel.reader.Sheet::getName).toList();
  }

  /**
   * The sheet of a name.
   *
   * @throws NotASheet if there is none of that name or it is empty
   */
  public Sheet sheet(String name) {
    org.dhatim.fastexcel.reader.Sheet sheet =
        workbook
            .findSheet(name)
            .orElseThrow(
                () -> new NotASheet(Reason.NO_SUCH_SHEET, "Name one of " + sheetNames() + "."));
    return sheet(sheet);
  }

  /** The first sheet that holds anything. */
  public Sheet firstSheet() {
    for (String name : sheetNames()) {
      try {
        return sheet(name);
      } catch (NotASheet e) {
        if (e.reason() != Reason.EMPTY) {
          throw e;
        }
      }
    }
    throw new NotASheet(Reason.EMPTY);
  }

  /** A sheet that closes the workbook when it is closed itself. */
  Sheet closedWith(Supplier<Sheet> sheet) {
    try {
      return sheet.get().closing(this);
    } catch (RuntimeException e) {
      close();
      throw e;
    }
  }

  private Sheet sheet(org.dhatim.fastexcel.reader.Sheet sheet) {
    try {
      Stream<org.dhatim.fastexcel.reader.Row> rows = sheet.openStream();
      return sheet(rows);
    } catch (IOException | RuntimeException e) {
      throw e instanceof NotASheet refusal ? refusal : unreadable(e);
    }
  }

  private Sheet sheet(Stream<org.dhatim.fastexcel.reader.Row> rows) {
    WorkbookCells cells = new WorkbookCells(workbook.isDate1904());
    Iterator<Row> all = rows.map(r -> new Row(r.getRowNum(), cells.text(r))).iterator();
    List<Row> head = new ArrayList<>();
    while (head.size() < RECORDS && all.hasNext()) {
      head.add(all.next());
    }
    int width = head.stream().mapToInt(r -> r.cells().size()).max().orElse(0);
    if (width == 0) {
      rows.close();
      throw new NotASheet(Reason.EMPTY);
    }
    Layout layout = new LayoutDetector(sample(head, width), Dialect.STANDARD).detect();
    Iterator<Row> data = new WorkbookRows(head, all, layout, width);
    return Sheet.of(layout, data, rows);
  }

  private static Sample sample(List<Row> head, int width) {
    List<Entry> records = new ArrayList<>();
    for (Row row : head) {
      List<String> cells = HeaderRow.fitted(row.cells(), width);
      records.add(new Entry(row.line(), "", cells, Form.PLAIN));
    }
    return new Sample(records);
  }

  @Override
  public void close() {
    try {
      workbook.close();
      Files.deleteIfExists(copy);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package coldround.sheet;

import coldround.sheet.NotASheet.Reason;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;

/** The data rows of a sheet, the rows looked at first and then the rest, all of one width. */
final class WorkbookRows implements Iterator<Row> {

  private final Iterator<Row> head;
  private final Iterator<Row> rest;
  private final int width;

  WorkbookRows(List<Row> head, Iterator<Row> rest, Layout layout, int width) {
    this.head = head.stream().filter(r -> r.line() >= layout.firstDataLine()).iterator();
    this.rest = rest;
    this.width = width;
  }

  @Override
  public boolean hasNext() {
    try {
      return head.hasNext() || rest.hasNext();
    } catch (RuntimeException e) {
      NotASheet refusal = new NotASheet(Reason.UNREADABLE_WORKBOOK);
      refusal.initCause(e);
      throw refusal;
    }
  }

  @Override
  public Row next() {
    Row row = head.hasNext() ? head.next() : rest.next();
    int missing = width - row.cells().size();
    if (missing <= 0) {
      return row;
    }
    List<String> cells = new java.util.ArrayList<>(row.cells());
    cells.addAll(Collections.nCopies(missing, ""));
    return new Row(row.line(), cells);
  }
}

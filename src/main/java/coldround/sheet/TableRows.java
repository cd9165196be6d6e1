package coldround.sheet;

import coldround.sheet.Fault.Code;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;

/**
 * The data rows of a table: leaves out blank rows and repeats of the header, and marks every row of
 * a second table with other columns below the first.
 */
final class TableRows implements Iterator<Row> {

  /** Most title rows between two tables. */
  private static final int MOST_TITLES = 6;

  private final Iterator<Row> rows;
  private final Layout layout;
  private final Runnable onSecondTable;
  private final Deque<Row> held = new ArrayDeque<>();
  private boolean afterBlank;
  private boolean heldAfterBlank;
  private long blank;
  private long repeatedHeaders;
  private long secondTable;

  /**
   * @param onSecondTable called once when the table ends and another begins
   */
  TableRows(Iterator<Row> rows, Layout layout, Runnable onSecondTable) {
    this.rows = rows;
    this.onSecondTable = onSecondTable;
    this.layout = layout;
  }

  long blank() {
    return blank;
  }

  long repeatedHeaders() {
    return repeatedHeaders;
  }

  /** Line where a second table starts, 0 if none was met. */
  long secondTable() {
    return secondTable;
  }

  @Override
  public boolean hasNext() {
    while (held.isEmpty() || isTitle(held.peekLast())) {
      if (!rows.hasNext()) {
        return !held.isEmpty();
      }
      take(rows.next());
    }
    return true;
  }

  @Override
  public Row next() {
    if (!hasNext()) {
      throw new NoSuchElementException();
    }
    return held.removeFirst();
  }

  /** A title between two tables is known for one only when the next header has come. */
  private boolean isTitle(Row row) {
    return held.size() <= MOST_TITLES
        && heldAfterBlank
        && layout.width() > 1
        && filled(row.cells()) == 1
        && !layout.header().isEmpty();
  }

  private void take(Row row) {
    if (isBlank(row)) {
      blank++;
      afterBlank = true;
      return;
    }
    if (held.isEmpty()) {
      heldAfterBlank = afterBlank;
    }
    afterBlank = false;
    if (secondTable == 0 && HeaderRow.isAgain(layout, row.cells())) {
      headerAgain(row);
    } else {
      held.add(secondTable > 0 ? marked(row) : row);
    }
  }

  /** Blank but for an end-of-file mark of old systems. */
  private static boolean isBlank(Row row) {
    return row.isBlank() || (row.cells().get(0).equals("\u001a") && filled(row.cells()) == 1);
  }

  private static long filled(List<String> cells) {
    return cells.stream().filter(c -> !c.isBlank()).count();
  }

  /** The same columns again go on, without the titles above them; others are another table. */
  private void headerAgain(Row row) {
    held.clear();
    if (row.faults().isEmpty() && row.cells().size() == layout.width()) {
      repeatedHeaders++;
    } else {
      secondTable = row.line();
      onSecondTable.run();
      held.add(marked(row));
    }
  }

  private Row marked(Row row) {
    String message =
        "a second table with other columns starts at line "
            + secondTable
            + "; send it as a file of its own";
    List<Fault> faults = new ArrayList<>(List.of(Fault.open(Code.SECOND_TABLE, message)));
    faults.addAll(row.faults());
    return new Row(row.line(), row.cells(), faults);
  }
}

package coldround.sheet;

import java.util.List;

/**
 * One record of a delimited file or workbook.
 *
 * @param line number of the line of the file where the record starts, the first line being 1
 * @param cells the cells as they stand in the file, in order
 * @param faults what was wrong with the record; empty for nearly all rows
 */
public record Row(long line, List<String> cells, List<Fault> faults) {
  public Row {
    cells = List.copyOf(cells);
    faults = List.copyOf(faults);
  }

  /** A record read without any fault. */
  public Row(long line, List<String> cells) {
    this(line, cells, List.of());
  }

  /** Whether every cell is empty or blank: the row says nothing. */
  public boolean isBlank() {
    for (String cell : cells) {
      if (!cell.isBlank()) {
        return false;
      }
    }
    return true;
  }

  /** Whether the cells can be relied on: nothing wrong, or all of it mended with certainty. */
  public boolean isReliable() {
    // asked for each cell, and nearly all rows have none
    return faults.isEmpty() || faults.stream().allMatch(Fault::mended);
  }
}

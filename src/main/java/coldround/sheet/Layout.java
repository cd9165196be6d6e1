package coldround.sheet;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the table stands in the file.
 *
 * @param width number of columns
 * @param header the header rows, outermost first; empty if the file has none
 * @param headerLine line of the file where the header starts, 0 if there is none
 * @param firstDataLine line of the file where the first data row starts
 * @param titles filled rows above the header that belong to no column
 */
public record Layout(
    int width, List<List<String>> header, long headerLine, long firstDataLine, int titles) {
  public Layout {
    header = header.stream().map(List::copyOf).toList();
  }

  /**
   * One label a column, empty where the header is too short: the labels of all header rows joined
   * by a blank, repeats left out.
   */
  public List<String> labels() {
    return header.isEmpty() ? List.of() : joined(width, false);
  }

  /**
   * Whether every column has a header cell, be it empty. Where one is missing, which label belongs
   * to which column is open.
   */
  public boolean hasWholeHeader() {
    return header.isEmpty() || header.get(header.size() - 1).size() == width;
  }

  /** The labels as far as the file has them, those of all header rows joined by a blank. */
  public List<String> fullLabels() {
    return joined(header.stream().mapToInt(List::size).max().orElse(0), true);
  }

  private List<String> joined(int columns, boolean repeats) {
    List<String> labels = new ArrayList<>();
    for (int column = 0; column < columns; column++) {
      labels.add(label(column, repeats));
    }
    return labels;
  }

  private String label(int column, boolean repeats) {
    List<String> parts = new ArrayList<>();
    for (int row = 0; row < header.size(); row++) {
      String part = part(row, column);
      if (!part.isBlank() && (repeats || !parts.contains(part))) {
        parts.add(part);
      }
    }
    return header.size() == 1 ? cell(0, column) : String.join(" ", parts);
  }

  /** A label over several columns stands over the first; the others below it have labels too. */
  private String part(int row, int column) {
    String own = cell(row, column);
    if (!own.isBlank() || row == header.size() - 1 || !isLabelledBelow(row, column)) {
      return own.strip();
    }
    int left = column;
    while (left > 0 && cell(row, left).isBlank()) {
      left--;
    }
    return cell(row, left).strip();
  }

  private boolean isLabelledBelow(int row, int column) {
    for (int below = row + 1; below < header.size(); below++) {
      if (!cell(below, column).isBlank()) {
        return true;
      }
    }
    return false;
  }

  private String cell(int row, int column) {
    List<String> cells = header.get(row);
    return column < cells.size() ? cells.get(column) : "";
  }
}

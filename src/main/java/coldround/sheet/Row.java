package coldround.sheet;

import java.util.List;

/**
 * One record of a delimited file.
 *
 * @param line number of the line of the file where the record starts, the first line being 1
 * @param cells the cells as they stand in the file, in order
 */
public record Row(long line, List<String> cells) {
  public Row {
    cells = List.copyOf(cells);
  }
}

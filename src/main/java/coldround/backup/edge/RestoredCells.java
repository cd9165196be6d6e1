package coldround.backup.edge;

import coldround.backup.BadBackup;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;

/**
 * The cells of one table of a backup as its new store can keep them. What a store cannot keep is
 * replaced by U+FFFD, which Unicode has for that, and each cell where it was is told: a NUL in the
 * audit or in the feed, which nobody may correct, would else keep a fleet in its old store for
 * ever.
 */
final class RestoredCells {

  private static final char INSTEAD = '\uFFFD';
  private static final int TOLD_OF_A_TABLE = 20;

  private final String table;
  private final List<Column> columns;
  private final boolean anyText;
  private final ObjectMapper json;
  private final Consumer<String> told;
  private long replaced;

  /**
   * @param columns of the cells of each row, in their order
   * @param anyText whether the store keeps NUL and halves of characters that take two
   * @param told gets a sentence for each cell that had to be changed
   */
  RestoredCells(
      String table,
      List<Column> columns,
      boolean anyText,
      ObjectMapper json,
      Consumer<String> told) {
    this.table = table;
    this.columns = columns;
    this.anyText = anyText;
    this.json = json;
    this.told = told;
  }

  /**
   * @param line a JSON array
   * @param number of the row, from 1
   * @throws BadBackup when a cell is none of its column
   */
  Object[] row(String line, long number) {
    JsonNode row = array(line, number);
    Object[] cells = new Object[columns.size()];
    for (int i = 0; i < cells.length; i++) {
      if (!row.path(i).isNull()) {
        cells[i] = cell(row, i, number);
      }
    }
    return cells;
  }

  /** Behind the last row: how many cells were changed that have not been told one by one. */
  void end() {
    if (replaced > TOLD_OF_A_TABLE) {
      told.accept(
          "table %s: as much in %d more cells".formatted(table, replaced - TOLD_OF_A_TABLE));
    }
  }

  private JsonNode array(String line, long number) {
    try {
      JsonNode row = json.readTree(line);
      if (row.isArray() && row.size() == columns.size()) {
        return row;
      }
    } catch (IOException e) {
      throw bad(number, "is no JSON", e);
    }
    throw bad(number, "is no JSON array of " + columns.size() + " cells", null);
  }

  private Object cell(JsonNode row, int place, long number) {
    Column column = columns.get(place);
    Object cell;
    try {
      cell = column.type().read(row.get(place));
    } catch (IOException | RuntimeException e) {
      throw bad(number, "cannot be read in column " + column.name(), e);
    }
    if (cell == null) {
      throw bad(number, "cannot be read in column " + column.name(), null);
    }
    return !anyText && cell instanceof String text ? kept(text, row, column, number) : cell;
  }

  private BadBackup bad(long number, String why, Exception cause) {
    return new BadBackup(
        "Row %d of table %s of the backup %s. Use another backup.".formatted(number, table, why),
        cause);
  }

  private String kept(String text, JsonNode row, Column column, long number) {
    StringBuilder kept = new StringBuilder(text.length());
    int first = -1;
    int next = 0;
    while (next < text.length()) {
      int character = text.codePointAt(next);
      boolean half = Character.getType(character) == Character.SURROGATE;
      if (character == 0 || half) {
        first = first < 0 ? next : first;
        kept.append(INSTEAD);
      } else {
        kept.appendCodePoint(character);
      }
      next += Character.charCount(character);
    }
    if (first < 0) {
      return text;
    }
    if (++replaced <= TOLD_OF_A_TABLE) {
      told.accept(
          "table %s, row %d (%s %s), column %s: %s at character %d cannot be kept by this database and is U+FFFD now; send what it should say once more where that matters"
              .formatted(
                  table,
                  number,
                  columns.get(0).name(),
                  row.get(0).asText(),
                  column.name(),
                  text.charAt(first) == 0 ? "NUL" : "half a character",
                  first + 1));
    }
    return kept.toString();
  }
}

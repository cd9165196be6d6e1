package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One fault at each row and column of a table, after the way the Pollock benchmark (VLDB 2023)
 * makes its files: what a fault may cost is its own row, and never without a word.
 */
class FaultVariantsTest {

  private static final int ROWS = 60;
  private final List<List<String>> table = SampleTable.rows(ROWS);

  /** A fault put into the written cells of one row. */
  private interface Spoiler {
    String line(List<String> written, int column);
  }

  @ParameterizedTest
  @CsvSource({
    "quote-before, 0.98",
    "quote-behind, 0.98",
    "quote-inside, 0.98",
    "delimiter-missing, 0.95",
    "delimiter-twice, 0.98",
    "row-with-semicolons, 0.98",
    "row-with-blanks, 0.98"
  })
  void aFaultCostsAtMostItsOwnRowAndIsNamed(String fault, double leastExact) throws IOException {
    int exact = 0;
    int all = 0;
    List<String> silent = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      for (int column = 0; column < SampleTable.HEADER.size(); column++) {
        String spoilt = spoilt(fault, SampleCsv.cells(table.get(row)), column);
        if (spoilt == null) {
          continue;
        }
        all++;
        Row read = readAround(row, spoilt);
        boolean same = read.cells().equals(expected(fault, table.get(row), column));
        exact += same ? 1 : 0;
        if (!same && read.isReliable()) {
          silent.add(spoilt + " -> " + read);
        }
      }
    }
    assertTrue(exact >= leastExact * all, exact + " of " + all);
    assertTrue(silent.isEmpty(), silent.stream().limit(3).toList().toString());
  }

  /** Reads the table with one line replaced, checks all other rows, gives back that one. */
  private Row readAround(int row, String spoilt) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add(String.join(",", SampleTable.HEADER));
    for (int i = 0; i < ROWS; i++) {
      lines.add(i == row ? spoilt : String.join(",", SampleCsv.cells(table.get(i))));
    }
    byte[] bytes = (String.join("\r\n", lines) + "\r\n").getBytes(StandardCharsets.UTF_8);
    Row found = null;
    try (Sheet sheet = Sheet.open(new ByteArrayInputStream(bytes))) {
      assertEquals(SampleTable.HEADER, sheet.layout().labels());
      for (int i = 0; i < ROWS; i++) {
        Row read = sheet.rows().next();
        assertEquals(i + 2, read.line());
        if (i == row) {
          found = read;
        } else {
          assertEquals(table.get(i), read.cells(), spoilt);
          assertTrue(read.faults().isEmpty(), spoilt);
        }
      }
      assertTrue(!sheet.rows().hasNext());
    }
    return found;
  }

  private static String spoilt(String fault, List<String> written, int column) {
    List<String> cells = new ArrayList<>(written);
    String cell = cells.get(column);
    switch (fault) {
      case "quote-before" -> cells.set(column, "\"" + cell);
      case "quote-behind" -> cells.set(column, cell + "\"");
      case "quote-inside" -> {
        if (cell.length() < 4) {
          return null;
        }
        cells.set(column, cell.substring(0, 3) + "\"" + cell.substring(3));
      }
      case "delimiter-missing" -> {
        if (column == 0) {
          return null;
        }
        cells.set(column - 1, cells.get(column - 1) + cells.remove(column));
      }
      case "delimiter-twice" -> cells.set(column, "," + cell);
      case "row-with-semicolons" -> {
        return column > 0 ? null : String.join(";", cells);
      }
      default -> {
        return column > 0 ? null : String.join(" ", cells);
      }
    }
    return String.join(",", cells);
  }

  private static List<String> expected(String fault, List<String> row, int column) {
    List<String> cells = new ArrayList<>(row);
    String cell = cells.get(column);
    switch (fault) {
      case "quote-before" -> cells.set(column, "\"" + cell);
      case "quote-behind" -> cells.set(column, cell + "\"");
      case "quote-inside" -> {
        boolean quoted = SampleCsv.isQuoted(cell);
        int at = quoted ? 2 : 3;
        cells.set(column, cell.substring(0, at) + "\"" + cell.substring(at));
      }
      default -> {
        return cells;
      }
    }
    return cells;
  }
}

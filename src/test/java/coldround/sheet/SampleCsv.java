package coldround.sheet;

import java.util.List;

/** Writes cells as RFC 4180 has it, by code apart from the one under test. */
final class SampleCsv {

  private SampleCsv() {}

  static List<String> cells(List<String> row) {
    return row.stream().map(c -> cell(c, ',')).toList();
  }

  static boolean isQuoted(String cell) {
    return !cell(cell, ',').equals(cell);
  }

  static String cell(String cell, char delimiter) {
    boolean special = cell.indexOf(delimiter) >= 0 || cell.matches("(?s).*[\"\r\n].*");
    return special ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
  }
}

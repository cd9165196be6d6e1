package coldround.demo;

import coldround.sheet.Row;
import coldround.sheet.SheetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A list of the standard form read back plainly, without the import that it is to be fed to.
 *
 * @param rows cells by header
 */
record Listing(List<Map<String, String>> rows, Map<String, Map<String, String>> byKey) {

  static Listing read(Path file) {
    List<Map<String, String>> rows = new ArrayList<>();
    try (SheetReader reader = SheetReader.standard(Files.newBufferedReader(file))) {
      List<String> header = reader.next().cells();
      while (reader.hasNext()) {
        rows.add(cells(header, reader.next()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Listing(rows, new HashMap<>());
  }

  private static Map<String, String> cells(List<String> header, Row row) {
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      cells.put(header.get(i), row.cells().get(i));
    }
    return cells;
  }

  static String key(Map<String, String> row, String... columns) {
    return Arrays.stream(columns).map(row::get).collect(Collectors.joining("|"));
  }

  Set<String> keys(String... columns) {
    return rows.stream().map(row -> key(row, columns)).collect(Collectors.toSet());
  }

  Set<String> values(String column) {
    return keys(column);
  }

  /** The row of this list that has the same key as the given row of another. */
  Map<String, String> row(Map<String, String> other, String... columns) {
    if (byKey.isEmpty()) {
      rows.forEach(row -> byKey.put(key(row, columns), row));
    }
    return byKey.get(key(other, columns));
  }
}

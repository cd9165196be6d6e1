package coldround.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Opens sheets for tests. */
final class Sheets {

  private Sheets() {}

  static Sheet open(String text) {
    return open(text.getBytes(StandardCharsets.UTF_8));
  }

  static Sheet open(byte[] bytes) {
    try {
      return Sheet.open(new ByteArrayInputStream(bytes));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<Row> rows(Sheet sheet) {
    List<Row> rows = new ArrayList<>();
    sheet.rows().forEachRemaining(rows::add);
    return rows;
  }

  static List<List<String>> cells(Sheet sheet) {
    return rows(sheet).stream().map(Row::cells).toList();
  }
}

package coldround.demo;

import com.opencsv.CSVWriterBuilder;
import com.opencsv.ICSVWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes a table as RFC 4180 text: comma, CRLF, quotes only where needed. */
final class Sheet {

  private Sheet() {}

  static void write(Path file, List<String> header, List<List<String>> rows) {
    StringWriter text = new StringWriter();
    try (ICSVWriter csv = new CSVWriterBuilder(text).withLineEnd("\r\n").build()) {
      csv.writeNext(header.toArray(String[]::new), false);
      rows.forEach(row -> csv.writeNext(row.toArray(String[]::new), false));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    write(file, text.toString());
  }

  static void write(Path file, String text) {
    try {
      Files.createDirectories(file.getParent());
      Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

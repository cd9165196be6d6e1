package coldround.benchmark;

import coldround.sheet.Fault.Code;
import coldround.sheet.NotASheet;
import coldround.sheet.Row;
import coldround.sheet.Sheet;
import coldround.sheet.SheetWriter;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;

/**
 * {@code csv IN OUT}: reads every file of a folder with everything detected and writes what was
 * understood as RFC 4180, header first where there is one.
 */
final class CsvConversion implements Benchmarks.Program {

  private int files;
  private int refused;
  private long rows;
  private long faulty;

  @Override
  public void run(String... arguments) throws IOException {
    if (arguments.length != 2) {
      throw new IllegalArgumentException("csv IN OUT: two folders");
    }
    Path out = Files.createDirectories(Path.of(arguments[1]));
    long start = System.nanoTime();
    try (var paths = Files.list(Path.of(arguments[0]))) {
      for (Path file : paths.filter(Files::isRegularFile).sorted().toList()) {
        convert(file, out.resolve(file.getFileName() + "_converted.csv"));
      }
    }
    System.out.printf(
        "{\"files\":%d,\"refused\":%d,\"rows\":%d,\"rowsWithFaults\":%d,\"seconds\":%.3f}%n",
        files, refused, rows, faulty, (System.nanoTime() - start) / 1e9);
  }

  private void convert(Path file, Path target) throws IOException {
    files++;
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file));
        Writer text = Files.newBufferedWriter(target)) {
      copy(in, SheetWriter.plain(text));
    } catch (NotASheet e) {
      refused++;
      System.out.println(file.getFileName() + ": " + e.getMessage());
    }
  }

  private void copy(InputStream in, SheetWriter writer) throws IOException {
    Sheet sheet = Sheet.open(in);
    List<String> labels = sheet.layout().fullLabels();
    if (!labels.isEmpty()) {
      writer.write(labels);
    }
    for (Iterator<Row> data = sheet.rows(); data.hasNext(); ) {
      Row row = data.next();
      rows++;
      faulty += row.faults().isEmpty() ? 0 : 1;
      if (row.faults().stream().noneMatch(f -> f.code() == Code.SECOND_TABLE)) {
        writer.write(row.cells());
      }
    }
  }
}

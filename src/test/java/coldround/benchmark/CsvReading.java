package coldround.benchmark;

import coldround.sheet.Row;
import coldround.sheet.Sheet;
import com.opencsv.CSVReader;
import com.opencsv.CSVReaderBuilder;
import com.opencsv.RFC4180ParserBuilder;
import com.opencsv.exceptions.CsvValidationException;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;

/**
 * {@code csv-read ROWS}: rows a second of reading a wide file of visits with everything detected,
 * against OpenCSV's RFC 4180 parser alone on the same file in the same run.
 */
final class CsvReading implements Benchmarks.Program {

  private static final int ROUNDS = 3;

  /** Reads the file and gives back how many rows and characters of cells it saw. */
  private interface Reading {
    long[] read(Path file) throws IOException;
  }

  @Override
  public void run(String... arguments) throws IOException {
    long rows = arguments.length == 0 ? 200_000 : Long.parseLong(arguments[0]);
    Path file = Files.createTempFile("visits", ".csv");
    try {
      write(file, rows);
      double floor = 0;
      double ours = 0;
      for (int round = 1; round <= ROUNDS; round++) {
        floor = Math.max(floor, rate("OpenCSV alone", file, rows, CsvReading::openCsv));
        ours = Math.max(ours, rate("everything detected", file, rows, CsvReading::sheet));
      }
      System.out.printf(
          "{\"rows\":%d,\"bytes\":%d,\"openCsvRowsPerSecond\":%.0f,\"rowsPerSecond\":%.0f,\"ratio\":%.3f}%n",
          rows, Files.size(file), floor, ours, floor / ours);
    } finally {
      Files.delete(file);
    }
  }

  private static double rate(String name, Path file, long rows, Reading reading)
      throws IOException {
    long start = System.nanoTime();
    long[] seen = reading.read(file);
    double seconds = (System.nanoTime() - start) / 1e9;
    if (seen[0] != rows) {
      throw new IllegalStateException(name + " read " + seen[0] + " rows of " + rows);
    }
    System.out.printf("%-20s %10.0f rows/s  %s%n", name, rows / seconds, Arrays.toString(seen));
    return rows / seconds;
  }

  private static long[] openCsv(Path file) throws IOException {
    try (CSVReader reader =
        new CSVReaderBuilder(Files.newBufferedReader(file))
            .withCSVParser(new RFC4180ParserBuilder().build())
            .build()) {
      long[] seen = {-1, 0};
      for (String[] row = reader.readNext(); row != null; row = reader.readNext()) {
        seen[0]++;
        for (String cell : row) {
          seen[1] += cell.length();
        }
      }
      return seen;
    } catch (CsvValidationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static long[] sheet(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file);
        Sheet sheet = Sheet.open(in)) {
      long[] seen = {0, 0};
      sheet.layout().labels().forEach(l -> seen[1] += l.length());
      for (Iterator<Row> rows = sheet.rows(); rows.hasNext(); ) {
        seen[0]++;
        for (String cell : rows.next().cells()) {
          seen[1] += cell.length();
        }
      }
      return seen;
    }
  }

  private static void write(Path file, long rows) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      out.write(
          "customer,site,unit,visit,date,technician,purpose,ambient [degF],head_pressure [psig],"
              + "suction_pressure [psig],liquid_line [degF],suction_line [degF],box [degF],"
              + "evaporator_in [degF],evaporator_out [degF],voltage_l1_l2 [V],compressor [A],"
              + "condenser_fan [A],condenser_coil,note\r\n");
      for (long i = 0; i < rows; i++) {
        out.write(line(i));
      }
    }
  }

  private static String line(long i) {
    String note = i % 5 == 0 ? "\"coil dusty, left side \"\"worst\"\"\"" : "";
    return String.format(
        "C%02d,S%03d,U-%05d,%d,20%02d-%02d-%02d,T%d,planned,%d,%d.%d,%d,%d,%d,%d,%d,%d,%d,%d.%d,0.%d,moderate,%s\r\n",
        i % 40,
        i % 700,
        i % 9000,
        i,
        10 + i % 15,
        1 + i % 12,
        1 + i % 28,
        i % 9,
        60 + i % 40,
        180 + i % 90,
        i % 10,
        40 + i % 30,
        80 + i % 20,
        50 + i % 15,
        34 + i % 6,
        36 + i % 5,
        28 + i % 4,
        225 + i % 12,
        8 + i % 9,
        i % 10,
        5 + i % 4,
        note);
  }
}

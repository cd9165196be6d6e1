package coldround.benchmark;

import com.opencsv.CSVReader;
import com.opencsv.CSVReaderBuilder;
import com.opencsv.RFC4180ParserBuilder;
import com.opencsv.exceptions.CsvValidationException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What an import could not do without: OpenCSV parses, plain JDBC inserts the same cells. */
final class ImportFloor {

  private static final int BATCH = 500;

  private ImportFloor() {}

  /** Seconds to parse alone. */
  static double parse(Path file) throws IOException, CsvValidationException {
    long start = System.nanoTime();
    try (CSVReader reader = reader(file)) {
      while (reader.readNext() != null) {
        // the work is done by the reader
      }
    }
    return (System.nanoTime() - start) / 1e9;
  }

  /**
   * Seconds to parse and to insert every cell, one row a visit, in one transaction.
   *
   * @param url of an empty database
   */
  static double insert(Path file, String url)
      throws IOException, CsvValidationException, SQLException {
    try (Connection connection = DriverManager.getConnection(url)) {
      createTable(connection);
      connection.setAutoCommit(false);
      long start = System.nanoTime();
      try (CSVReader reader = reader(file)) {
        reader.readNext();
        insertAll(reader, connection);
      }
      connection.commit();
      return (System.nanoTime() - start) / 1e9;
    }
  }

  private static CSVReader reader(Path file) throws IOException {
    return new CSVReaderBuilder(Files.newBufferedReader(file))
        .withCSVParser(new RFC4180ParserBuilder().build())
        .build();
  }

  private static void createTable(Connection connection) throws SQLException {
    String columns =
        IntStream.range(0, VisitFile.COLUMNS.size())
            .mapToObj(i -> "c" + i + " varchar(8000)")
            .collect(Collectors.joining(", "));
    try (Statement statement = connection.createStatement()) {
      statement.execute("create table floor (" + columns + ", primary key (c2, c3))");
    }
  }

  private static void insertAll(CSVReader reader, Connection connection)
      throws IOException, CsvValidationException, SQLException {
    String marks = String.join(", ", Collections.nCopies(VisitFile.COLUMNS.size(), "?"));
    try (PreparedStatement insert =
        connection.prepareStatement("insert into floor values (" + marks + ")")) {
      int waiting = 0;
      for (String[] row = reader.readNext(); row != null; row = reader.readNext()) {
        for (int i = 0; i < row.length; i++) {
          insert.setString(i + 1, row[i]);
        }
        insert.addBatch();
        if (++waiting % BATCH == 0) {
          insert.executeBatch();
        }
      }
      insert.executeBatch();
    }
  }
}

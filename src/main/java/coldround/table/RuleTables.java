package coldround.table;

import coldround.sheet.Row;
import coldround.sheet.SheetReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;

/**
 * Reads the rule tables of one folder. A file in the operator's folder takes the place of the
 * packaged one of the same name. Problems of all tables are collected and told together.
 */
public final class RuleTables {

  private final String packaged;
  private final Path override;
  private final List<TableProblem> problems = new ArrayList<>();
  private final MessageDigest digest = sha256();

  /**
   * @param packaged folder on the class path, "scoring" or "import"
   * @param override folder whose files come first; null for none
   */
  public RuleTables(String packaged, Path override) {
    this.packaged = packaged;
    this.override = override;
  }

  /**
   * Every good row of a table, made by the given function; a row it refuses becomes a problem.
   *
   * @param file name of the table, such as "weights.csv"
   * @param keyColumn column whose values name the rows, each once; rows without one are refused
   * @param make called for each row; what it throws as IllegalArgumentException is the reason
   */
  public <T> List<T> read(String file, String keyColumn, Function<TableRow, T> make) {
    return read(file, List.of(keyColumn), make);
  }

  /**
   * The same for a table whose rows are named by several columns together.
   *
   * @param keyColumns no two rows have the same values in all of them, and none of them is empty
   */
  public <T> List<T> read(String file, List<String> keyColumns, Function<TableRow, T> make) {
    List<T> made = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    try (SheetReader rows = open(file)) {
      List<String> header = rows.hasNext() ? header(rows.next()) : List.of();
      for (String keyColumn : keyColumns) {
        if (!header.contains(keyColumn)) {
          problem(file, 1, keyColumn, "the column is missing");
          return List.of();
        }
      }
      while (rows.hasNext()) {
        Row row = rows.next();
        if (!blank(row)) {
          readRow(file, keyColumns, header, row, keys, make, made);
        }
      }
    } catch (UncheckedIOException | IllegalStateException e) {
      problem(file, 0, "", "cannot be read: " + e.getMessage());
    }
    return List.copyOf(made);
  }

  private static List<String> header(Row row) {
    return row.cells().stream().map(String::strip).toList();
  }

  private static boolean blank(Row row) {
    return row.cells().stream().allMatch(String::isBlank);
  }

  private <T> void readRow(
      String file,
      List<String> keyColumns,
      List<String> header,
      Row row,
      Set<String> keys,
      Function<TableRow, T> make,
      List<T> made) {
    if (row.cells().size() != header.size()) {
      String counts =
          row.cells().size()
              + " cells under "
              + header.size()
              + " columns; a cell that holds the delimiter needs quotes around it";
      problem(file, row.line(), "", counts);
      return;
    }
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      cells.put(header.get(i), row.cells().get(i).strip());
    }
    TableRow tableRow = new TableRow(file, keyColumns, cells);
    try {
      if (!keys.add(tableRow.key())) {
        String columns = String.join(", ", keyColumns);
        throw new TableRow.IllegalCell(columns, "'" + tableRow.key() + "' stands twice");
      }
      made.add(Objects.requireNonNull(make.apply(tableRow)));
    } catch (TableRow.IllegalCell e) {
      problem(file, row.line(), e.column, e.getMessage());
    } catch (IllegalArgumentException e) {
      problem(file, row.line(), "", e.getMessage());
    }
  }

  /** Notes a problem that only shows when tables are looked at together. */
  public void problem(String file, long line, String column, String message) {
    problems.add(new TableProblem(path(file), line, column, message));
  }

  private String path(String file) {
    return overridden(file) ? override.resolve(file).toString() : packaged + "/" + file;
  }

  private boolean overridden(String file) {
    return override != null && Files.isRegularFile(override.resolve(file));
  }

  private SheetReader open(String file) {
    try {
      InputStream bytes =
          overridden(file)
              ? Files.newInputStream(override.resolve(file))
              : Thread.currentThread()
                  .getContextClassLoader()
                  .getResourceAsStream(packaged + "/" + file);
      if (bytes == null) {
        throw new IOException("no such file");
      }
      try (bytes) {
        byte[] content = bytes.readAllBytes();
        digest.update(content);
        return TableText.read(content);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Tells the tables read so far from any others: a hash of their bytes in the order of reading.
   */
  public String fingerprint() {
    try {
      return HexFormat.of().formatHex(((MessageDigest) digest.clone()).digest());
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What was found wrong so far. */
  public List<TableProblem> problems() {
    return List.copyOf(problems);
  }

  /**
   * To be called when all tables are read.
   *
   * @throws BadTables when anything was wrong, with every problem
   */
  public void check() {
    if (!problems.isEmpty()) {
      throw new BadTables(problems);
    }
  }
}

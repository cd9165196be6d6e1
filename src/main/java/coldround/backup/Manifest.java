package coldround.backup;

import java.time.Instant;
import java.util.Map;

/**
 * What a backup holds, told at its beginning.
 *
 * @param format which kind of file this is
 * @param schema version of the schema that the rows are of
 * @param made when
 * @param rows of each table, in an order in which no row comes before one that it refers to
 * @param next number that each sequence, or numbered column as table.column, gives next
 */
public record Manifest(
    String format, int schema, Instant made, Map<String, Long> rows, Map<String, Long> next) {

  /** Kind of file that this version writes and reads. */
  public static final String FORMAT = "coldround-backup-1";

  /** Of all tables. */
  public long allRows() {
    return rows.values().stream().mapToLong(Long::longValue).sum();
  }
}

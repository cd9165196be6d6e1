package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.intake.Receipt;
import coldround.intake.RowProblem;
import coldround.intake.Tally;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

@Entity
@Table(name = "import_receipt")
class ReceiptRow {
  @Id String id;

  String kind;
  Instant received;
  boolean preview;
  boolean partial;
  boolean applied;
  long created;
  long changed;
  long unchanged;
  long rejected;
  String charset;
  String delimiter;
  String profile;
  long problemCount;
  String problemsByCode;
  String details;

  /**
   * @param details what has no column of its own, as JSON
   */
  static ReceiptRow of(Receipt receipt, String details) {
    ReceiptRow row = new ReceiptRow();
    row.id = receipt.id();
    row.kind = receipt.kind().code();
    row.received = receipt.received();
    row.preview = receipt.preview();
    row.partial = receipt.partial();
    row.applied = receipt.applied();
    row.write(receipt.rows());
    row.charset = receipt.detected().charset();
    row.delimiter = receipt.detected().delimiter();
    row.profile = receipt.detected().profile();
    row.problemCount = receipt.problemCount();
    row.problemsByCode = text(receipt.problemsByCode());
    row.details = details;
    return row;
  }

  private void write(Tally.Rows rows) {
    created = rows.created();
    changed = rows.changed();
    unchanged = rows.unchanged();
    rejected = rows.rejected();
  }

  Receipt read(List<RowProblem> problems, ReceiptDetails more) {
    return new Receipt(
        id,
        Kind.find(kind).orElseThrow(),
        received,
        preview,
        partial,
        applied,
        Tally.Rows.of(created, changed, unchanged, rejected),
        new Receipt.Detected(charset, delimiter, profile),
        problems,
        problemCount,
        counts(problemsByCode),
        more.problemGroups(),
        more.firstRows(),
        more.vanished());
  }

  /** As "missing=2;not-a-date=1". */
  private static String text(Map<String, Long> counts) {
    return new TreeMap<>(counts)
        .entrySet().stream()
            .map(entry -> entry.getKey() + "=" + entry.getValue())
            .collect(Collectors.joining(";"));
  }

  private static Map<String, Long> counts(String text) {
    Map<String, Long> counts = new TreeMap<>();
    for (String one : text.isEmpty() ? new String[0] : text.split(";")) {
      int equals = one.indexOf('=');
      counts.put(one.substring(0, equals), Long.valueOf(one.substring(equals + 1)));
    }
    return counts;
  }
}

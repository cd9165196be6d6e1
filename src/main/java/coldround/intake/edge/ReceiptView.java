package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.intake.ProblemGroup;
import coldround.intake.Receipt;
import coldround.intake.RowProblem;
import coldround.intake.Tally;
import coldround.intake.Vanished;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A receipt as it is answered. */
record ReceiptView(
    String id,
    String kind,
    String state,
    Instant received,
    boolean preview,
    boolean partial,
    boolean applied,
    Tally.Rows rows,
    Receipt.Detected detected,
    List<ProblemView> problems,
    long problemCount,
    Map<String, Long> problemsByCode,
    List<ProblemGroup> problemGroups,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Map<String, String>> firstRows,
    @JsonInclude(JsonInclude.Include.NON_NULL) Vanished vanished,
    @JsonInclude(JsonInclude.Include.NON_NULL) MappingView mapping) {

  private static final String FINISHED = "finished";

  /**
   * One problem.
   *
   * @param rejects whether its row was rejected for it
   */
  record ProblemView(
      long row, String column, String value, String code, boolean rejects, String message) {
    static ProblemView of(RowProblem problem) {
      return new ProblemView(
          problem.row(),
          problem.column(),
          problem.value(),
          problem.code().text(),
          problem.rejects(),
          problem.message());
    }
  }

  static ReceiptView of(Receipt receipt) {
    return of(receipt, null);
  }

  /**
   * @param mapping what the headers were taken for; null where the profile was named
   */
  static ReceiptView of(Receipt receipt, MappingView mapping) {
    return new ReceiptView(
        receipt.id(),
        receipt.kind().code(),
        FINISHED,
        receipt.received(),
        receipt.preview(),
        receipt.partial(),
        receipt.applied(),
        receipt.rows(),
        receipt.detected(),
        receipt.problems().stream().map(ProblemView::of).toList(),
        receipt.problemCount(),
        new TreeMap<>(receipt.problemsByCode()),
        receipt.problemGroups(),
        receipt.firstRows(),
        receipt.kind() == Kind.UNITS ? receipt.vanished() : null,
        mapping);
  }
}

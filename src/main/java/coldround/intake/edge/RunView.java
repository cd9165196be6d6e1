package coldround.intake.edge;

import coldround.intake.Progress;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;

/**
 * An import that has no receipt: one under way, or one that came to nothing.
 *
 * @param state waiting, reading, assessing, refused or interrupted
 * @param progress while it is under way
 * @param problem why nothing was applied, as RFC 9457 has it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RunView(
    String id,
    String kind,
    String state,
    Instant received,
    boolean preview,
    boolean partial,
    boolean applied,
    ProgressView progress,
    Map<String, Object> problem) {

  /**
   * How far it has come.
   *
   * @param rowsWritten of new rows, which are held back until all are read; left out before that
   * @param share of what the state has to do, or of those rows, 0 to 1; left out where it cannot be
   *     known
   * @param secondsLeft until the end of the state at the pace so far; left out likewise
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ProgressView(
      long rowsDone,
      BigDecimal rowsPerSecond,
      Long rowsWritten,
      BigDecimal share,
      Long secondsLeft) {

    static ProgressView of(Progress progress) {
      return new ProgressView(
          progress.rowsDone(),
          rounded(progress.rowsPerSecond()),
          progress.rowsWritten(),
          rounded(progress.share()),
          progress.secondsLeft());
    }

    private static BigDecimal rounded(Double value) {
      if (value == null) {
        return null;
      }
      BigDecimal three = new BigDecimal(value).round(new MathContext(3)).stripTrailingZeros();
      return three.scale() < 0 ? three.setScale(0) : three;
    }
  }

  static RunView of(FileImport.Begun begun, FileImport.Order order) {
    Progress progress = begun.watch().now();
    return new RunView(
        begun.id(),
        order.kind().code(),
        state(progress.state()),
        begun.received(),
        order.preview(),
        order.partial(),
        false,
        ProgressView.of(progress),
        null);
  }

  /** Writing is a part of reading to whoever follows an import. */
  private static String state(Progress.State state) {
    Progress.State told = state == Progress.State.WRITING ? Progress.State.READING : state;
    return told.name().toLowerCase(Locale.ROOT);
  }

  static RunView of(RunRow row, Map<String, Object> problem) {
    return new RunView(
        row.id, row.kind, row.state, row.received, row.preview, row.partial, false, null, problem);
  }
}

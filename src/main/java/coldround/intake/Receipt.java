package coldround.intake;

import coldround.fleet.Kind;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What became of one file.
 *
 * @param id opaque
 * @param preview true when nothing was to be applied
 * @param partial false when all rows or none were to be applied
 * @param applied true when the rows that were not rejected are in the store; when false, the counts
 *     of created and changed rows say what would have been
 * @param problems the first of them, at most {@link Tally#MOST_PROBLEMS}
 * @param problemCount how many there were
 * @param problemsByCode the same by code
 * @param problemGroups the same by kind and column
 * @param firstRows the first rows that could be read, each column as it was understood
 * @param vanished units that a list of units no longer has
 */
public record Receipt(
    String id,
    Kind kind,
    Instant received,
    boolean preview,
    boolean partial,
    boolean applied,
    Tally.Rows rows,
    Detected detected,
    List<RowProblem> problems,
    long problemCount,
    Map<String, Long> problemsByCode,
    List<ProblemGroup> problemGroups,
    List<Map<String, String>> firstRows,
    Vanished vanished) {

  /** How the file was read. */
  public record Detected(String charset, String delimiter, String profile) {}

  public Receipt {
    problems = List.copyOf(problems);
    problemsByCode = Map.copyOf(problemsByCode);
    problemGroups = List.copyOf(problemGroups);
    firstRows = List.copyOf(firstRows);
  }
}

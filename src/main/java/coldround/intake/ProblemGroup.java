package coldround.intake;

/**
 * Problems of one kind in one column, told by the first of them.
 *
 * @param column header as it stands in the file; empty for what concerns whole rows
 */
public record ProblemGroup(
    String code,
    String column,
    boolean rejects,
    long count,
    long firstRow,
    String firstValue,
    String message) {

  private static final int LONGEST = 1000;

  static ProblemGroup first(RowProblem problem) {
    String message = problem.message();
    return new ProblemGroup(
        problem.code().text(),
        problem.column(),
        problem.rejects(),
        1,
        problem.row(),
        problem.value(),
        message.length() > LONGEST ? message.substring(0, LONGEST) + "…" : message);
  }

  ProblemGroup oneMore() {
    return new ProblemGroup(code, column, rejects, count + 1, firstRow, firstValue, message);
  }
}

package coldround.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The file of rejected rows: the original columns first, then what is wrong. Mended, it can be sent
 * again as it is.
 */
final class RejectedRows {

  private static final String ROW = "problem_row";
  private static final String COLUMN = "problem_column";
  private static final String PROBLEM = "problem";
  private static final Set<String> OWN = Set.of(ROW, COLUMN, PROBLEM);

  private RejectedRows() {}

  /** True for a column that this file adds, and that an import therefore passes over. */
  static boolean isOwn(String label) {
    return OWN.contains(label);
  }

  static List<String> header(List<String> labels) {
    List<String> cells = new ArrayList<>(labels);
    cells.addAll(List.of(ROW, COLUMN, PROBLEM));
    return cells;
  }

  /**
   * @param cells as they stood in the file
   * @param problems the problems of that row that reject it, at least one
   */
  static List<String> row(List<String> cells, List<RowProblem> problems) {
    List<String> line = new ArrayList<>(cells);
    line.add(Long.toString(problems.get(0).row()));
    line.add(told(problems, RowProblem::column));
    line.add(told(problems, RowProblem::message));
    return line;
  }

  private static String told(
      List<RowProblem> problems, java.util.function.Function<RowProblem, String> part) {
    return problems.stream().map(part).distinct().collect(Collectors.joining("; "));
  }
}

package coldround.table;

import java.util.List;
import java.util.stream.Collectors;

/** The rule tables cannot be used as they are; carries every problem found, not just the first. */
public final class BadTables extends RuntimeException {

  private final transient List<TableProblem> problems;

  public BadTables(List<TableProblem> problems) {
    super(
        problems.stream()
            .map(TableProblem::toString)
            .collect(Collectors.joining("\n  ", "rule tables need mending:\n  ", "")));
    this.problems = List.copyOf(problems);
  }

  public List<TableProblem> problems() {
    return problems;
  }
}

package coldround.intake;

import coldround.fleet.Cells;
import coldround.fleet.Entry;
import coldround.fleet.FleetWriting.Outcome;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Counts what becomes of the rows of one file, and keeps the first problems. */
public final class Tally {

  /**
   * Rows of a file by what became of them.
   *
   * @param read all of them but blank ones; the sum of the others
   */
  public record Rows(long read, long created, long changed, long unchanged, long rejected) {
    public static Rows of(long created, long changed, long unchanged, long rejected) {
      long read = created + changed + unchanged + rejected;
      return new Rows(read, created, changed, unchanged, rejected);
    }
  }

  /** Problems that a receipt tells one by one; the others are counted. */
  public static final int MOST_PROBLEMS = 200;

  private static final int FIRST_ROWS = 5;
  private static final int MOST_GROUPS = 200;
  private static final Comparator<ProblemGroup> WORST_FIRST =
      Comparator.comparing(ProblemGroup::rejects)
          .thenComparing(ProblemGroup::count)
          .reversed()
          .thenComparing(ProblemGroup::firstRow)
          .thenComparing(ProblemGroup::code)
          .thenComparing(ProblemGroup::column);

  private long created;
  private long changed;
  private long unchanged;
  private long rejected;
  private long problemCount;
  private RowProblem firstRejection;
  private final List<RowProblem> problems = new ArrayList<>();
  private final List<Map<String, String>> firstRows = new ArrayList<>();
  private final Map<List<String>, ProblemGroup> groups = new HashMap<>();
  private final Map<String, Long> byCode = new TreeMap<>();

  void taken(Outcome outcome) {
    switch (outcome) {
      case CREATED -> created++;
      case CHANGED -> changed++;
      case UNCHANGED -> unchanged++;
      default -> throw new IllegalArgumentException(outcome + " takes no row");
    }
  }

  /** Keeps the first rows as they were understood. */
  void understood(Entry entry) {
    if (firstRows.size() < FIRST_ROWS) {
      Map<String, String> row = new LinkedHashMap<>();
      entry.said().forEach((column, value) -> row.put(column, RowProblem.shown(Cells.told(value))));
      firstRows.add(row);
    }
  }

  /** The first rows that could be read, by column. */
  public List<Map<String, String>> firstRows() {
    return List.copyOf(firstRows);
  }

  void rejected() {
    rejected++;
  }

  void problem(RowProblem problem) {
    problemCount++;
    byCode.merge(problem.code().text(), 1L, Long::sum);
    group(problem);
    if (firstRejection == null && problem.rejects()) {
      firstRejection = problem;
    }
    if (problems.size() < MOST_PROBLEMS) {
      problems.add(problem);
    }
  }

  private void group(RowProblem problem) {
    List<String> key = List.of(problem.code().text(), problem.column());
    ProblemGroup group = groups.get(key);
    if (group != null) {
      groups.put(key, group.oneMore());
    } else if (groups.size() < MOST_GROUPS) {
      groups.put(key, ProblemGroup.first(problem));
    }
  }

  /** By kind and column, those that reject first, then the most frequent. */
  public List<ProblemGroup> groups() {
    return groups.values().stream().sorted(WORST_FIRST).toList();
  }

  public Rows rows() {
    return Rows.of(created, changed, unchanged, rejected);
  }

  /** The first {@link #MOST_PROBLEMS}, in the order of the file. */
  public List<RowProblem> problems() {
    return List.copyOf(problems);
  }

  /** Null when no row was rejected. */
  RowProblem firstRejection() {
    return firstRejection;
  }

  public long problemCount() {
    return problemCount;
  }

  /** How many problems there were of each code. */
  public Map<String, Long> problemsByCode() {
    return Map.copyOf(byCode);
  }
}

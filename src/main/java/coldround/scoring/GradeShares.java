package coldround.scoring;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** What a graded coil loses: scoring/coil-grades.csv. */
public final class GradeShares {

  private static final String FILE = "coil-grades.csv";
  static final String CLEAN = "clean";

  /** One grade with the share of the factor it takes. */
  record GradeShare(String grade, double share, Source source) {}

  private final Map<String, GradeShare> byGrade = new HashMap<>();

  private GradeShares() {}

  public static GradeShares load(RuleTables tables) {
    GradeShares shares = new GradeShares();
    tables
        .read(
            FILE,
            "grade",
            row -> new GradeShare(row.required("grade"), row.number("share", 0, 1), row.source()))
        .forEach(share -> shares.byGrade.put(share.grade, share));
    if (!shares.byGrade.containsKey(CLEAN)) {
      tables.problem(FILE, 0, "grade", "the row 'clean' is missing");
    }
    return shares;
  }

  /** The grade whose share is nearest; the better of two that are as near. */
  GradeShare nearest(double share) {
    return byGrade.values().stream()
        .min(
            Comparator.comparingDouble((GradeShare grade) -> Math.abs(grade.share - share))
                .thenComparingDouble(GradeShare::share))
        .orElseThrow();
  }

  /** Empty for a word that is no grade. */
  Optional<GradeShare> of(String grade) {
    return Optional.ofNullable(byGrade.get(grade));
  }
}

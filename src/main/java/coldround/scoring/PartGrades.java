package coldround.scoring;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which grades of a part ask for a look: scoring/part-grades.csv. */
public final class PartGrades {

  private record PartGrade(String grade, boolean look, Source source) {}

  private final Map<String, PartGrade> byGrade = new HashMap<>();

  private PartGrades() {}

  public static PartGrades load(RuleTables tables) {
    PartGrades grades = new PartGrades();
    tables
        .read(
            "part-grades.csv",
            "grade",
            row ->
                new PartGrade(
                    row.required("grade"),
                    row.oneOf("look", Set.of("yes", "no")).equals("yes"),
                    row.source()))
        .forEach(grade -> grades.byGrade.put(grade.grade, grade));
    return grades;
  }

  /** The row that asks for a look at a part so graded; empty when none does. */
  Optional<Source> asksForLook(String grade) {
    return Optional.ofNullable(byGrade.get(grade)).filter(PartGrade::look).map(PartGrade::source);
  }
}

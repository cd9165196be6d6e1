package coldround.field;

import coldround.field.Verdict.Grade;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** How urgent each finding is while one stands at the unit: scoring/verdicts.csv. */
public final class VerdictTable {

  /**
   * A row of the table.
   *
   * @param quantity what must have been read or graded on the visit; fan and voltage stand for each
   *     of their columns
   */
  record Urgency(String code, String quantity, Grade grade) {}

  private static final Set<String> GRADES = Set.of("look", "act");

  private final Map<String, Urgency> byCode = new HashMap<>();

  private VerdictTable() {}

  /** Reads the table; problems are left with the tables. */
  public static VerdictTable load(RuleTables tables) {
    VerdictTable table = new VerdictTable();
    tables
        .read("verdicts.csv", "code", VerdictTable::urgency)
        .forEach(row -> table.byCode.put(row.code, row));
    return table;
  }

  private static Urgency urgency(TableRow row) {
    row.source();
    String grade = row.oneOf("verdict", GRADES).toUpperCase(Locale.ROOT);
    return new Urgency(row.required("code"), row.required("quantity"), Grade.valueOf(grade));
  }

  Optional<Urgency> of(String code) {
    return Optional.ofNullable(byCode.get(code));
  }
}

package coldround.scoring;

import coldround.reason.Reason;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** What to look at next after a split was read on the roof: scoring/roof-checks.csv. */
public final class RoofChecks {

  private static final String FILE = "roof-checks.csv";
  private static final Set<String> VERDICTS =
      Arrays.stream(RoofVerdict.values()).map(RoofVerdict::code).collect(Collectors.toSet());

  private record Check(String verdict, Reason told) {}

  private final List<Check> checks;

  private RoofChecks(List<Check> checks) {
    this.checks = checks;
  }

  public static RoofChecks load(RuleTables tables) {
    List<Check> checks = tables.read(FILE, "check", RoofChecks::check);
    for (String verdict : VERDICTS) {
      if (checks.stream().noneMatch(check -> check.verdict.equals(verdict))) {
        tables.problem(FILE, 0, "verdict", "no row says what to check when '" + verdict + "'");
      }
    }
    return new RoofChecks(checks);
  }

  private static Check check(TableRow row) {
    String verdict = row.oneOf("verdict", VERDICTS);
    String text = row.required("text");
    if (text.contains("{") || text.contains("}")) {
      throw new IllegalArgumentException("the text must not hold braces: " + text);
    }
    return new Check(verdict, new Reason(row.required("check"), text, Map.of(), row.source()));
  }

  /** In the order of the table. */
  public List<Reason> after(RoofVerdict verdict) {
    return checks.stream()
        .filter(check -> check.verdict.equals(verdict.code()))
        .map(Check::told)
        .toList();
  }
}

package coldround.intake;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How sure a guess must be: the rows of import/guessing.csv.
 *
 * @param leastConfidence from which on a column is taken without asking
 * @param worthAsking below which a header is ignored
 * @param leastLead over the next best column
 * @param textShare what likeness counts where cells tell nothing
 * @param sampleRows rows looked at
 */
record GuessLimits(
    double leastConfidence,
    double worthAsking,
    double leastLead,
    double textShare,
    int sampleRows) {

  private static final String FILE = "guessing.csv";

  private record Limit(String name, double value) {
    static Limit of(TableRow row) {
      row.source();
      return new Limit(row.required("limit"), row.number("value", 0, 100_000));
    }
  }

  static GuessLimits read(RuleTables tables) {
    Map<String, Double> limits = new LinkedHashMap<>();
    tables.read(FILE, "limit", Limit::of).forEach(one -> limits.put(one.name(), one.value()));
    for (String name :
        List.of("least-confidence", "worth-asking", "least-lead", "text-share", "sample-rows")) {
      if (!limits.containsKey(name)) {
        tables.problem(FILE, 0, "limit", "the row " + name + " is missing");
        limits.put(name, 1.0);
      }
    }
    return new GuessLimits(
        limits.get("least-confidence"),
        limits.get("worth-asking"),
        limits.get("least-lead"),
        limits.get("text-share"),
        limits.get("sample-rows").intValue());
  }
}

package coldround.upkeep;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/** How kinds of unit use electricity: scoring/energy-use.csv. */
public final class EnergyUse {

  private static final String FILE = "energy-use.csv";
  private static final String ANY = "*";

  /**
   * One kind.
   *
   * @param cycle medium or low temperature, as in scoring/cycle-power.csv
   * @param runHours hours a day that the compressor runs, over the year
   * @param kilowatts compressor power where nothing better is known
   */
  public record Use(String kind, String cycle, double runHours, double kilowatts, Source source) {}

  private final Map<String, Use> byKind = new HashMap<>();

  private EnergyUse() {}

  public static EnergyUse load(RuleTables tables) {
    EnergyUse uses = new EnergyUse();
    tables
        .read(
            FILE,
            "kind",
            row ->
                new Use(
                    row.required("kind"),
                    row.oneOf("cycle", Set.of("medium", "low")),
                    row.number("run_hours", 0.1, 24),
                    row.number("kilowatts", 0.01, 10000),
                    row.source()))
        .forEach(use -> uses.byKind.put(use.kind, use));
    if (!uses.byKind.containsKey(ANY)) {
      tables.problem(FILE, 0, "kind", "the row '*' for kinds not known is missing");
    }
    return uses;
  }

  public Use of(String kind) {
    Use use = byKind.get(kind);
    return use != null ? use : byKind.get(ANY);
  }
}

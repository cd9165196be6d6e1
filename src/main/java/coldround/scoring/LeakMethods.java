package coldround.scoring;

import coldround.fleet.Site;
import coldround.refrigerant.LeakMethod;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/** Which method of computing a leak rate a facility keeps to: scoring/leak-methods.csv. */
public final class LeakMethods {

  private static final String FILE = "leak-methods.csv";
  private static final String ALL = "*";

  private final Map<String, LeakMethod> byFacility = new HashMap<>();

  private LeakMethods() {}

  public static LeakMethods load(RuleTables tables) {
    LeakMethods methods = new LeakMethods();
    tables
        .read(FILE, "facility", row -> Map.entry(row.required("facility"), method(row)))
        .forEach(entry -> methods.byFacility.put(entry.getKey(), entry.getValue()));
    if (!methods.byFacility.containsKey(ALL)) {
      tables.problem(FILE, 0, "facility", "the row '*' for all others is missing");
    }
    return methods;
  }

  private static LeakMethod method(TableRow row) {
    row.source();
    Set<String> codes = Set.of(LeakMethod.ANNUALIZING.code(), LeakMethod.ROLLING_AVERAGE.code());
    return LeakMethod.find(row.oneOf("method", codes)).orElseThrow();
  }

  /** The method of a site, the same for all its units. */
  LeakMethod of(Site site) {
    LeakMethod own =
        byFacility.size() == 1 ? null : byFacility.get(site.customer() + "/" + site.code());
    return own != null ? own : byFacility.get(ALL);
  }
}

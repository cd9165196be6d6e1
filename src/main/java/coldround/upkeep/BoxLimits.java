package coldround.upkeep;

import coldround.quantity.Dimension;
import coldround.quantity.Quantity;
import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The warmest that the box of a kind of unit may be: scoring/box-limits.csv. */
final class BoxLimits {

  private static final String FILE = "box-limits.csv";

  /**
   * @param food true for a limit of food law, false for one of practice
   */
  record BoxLimit(String kind, Quantity most, boolean food, Source source) {}

  private final Map<String, BoxLimit> byKind = new HashMap<>();

  private BoxLimits() {}

  static BoxLimits load(RuleTables tables, Set<String> kinds) {
    BoxLimits limits = new BoxLimits();
    tables
        .read(FILE, "kind", row -> limit(row, kinds))
        .forEach(limit -> limits.byKind.put(limit.kind, limit));
    return limits;
  }

  private static BoxLimit limit(TableRow row, Set<String> kinds) {
    Quantity most = row.quantity("most", "measure");
    if (most.measure().dimension() != Dimension.TEMPERATURE) {
      throw new IllegalArgumentException("most must be a temperature, not in " + most.measure());
    }
    String kind = row.oneOf("kind", kinds);
    boolean food = row.oneOf("food", Set.of("yes", "no")).equals("yes");
    return new BoxLimit(kind, most, food, row.source());
  }

  Optional<BoxLimit> find(String kind) {
    return Optional.ofNullable(byKind.get(kind));
  }
}

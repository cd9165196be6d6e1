package coldround.scoring;

import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** The kinds of unit of scoring/kinds.csv. */
public final class Kinds {

  static final String FILE = "kinds.csv";

  private final Map<String, KindRule> byKind = new LinkedHashMap<>();
  private KindRule fallback;

  private Kinds() {}

  public static Kinds load(RuleTables tables) {
    Kinds kinds = new Kinds();
    List<KindRule> fallbacks = new ArrayList<>();
    tables
        .read(FILE, "kind", row -> rule(row, fallbacks))
        .forEach(rule -> kinds.byKind.put(rule.kind(), rule));
    if (fallbacks.size() != 1) {
      tables.problem(
          FILE, 0, "fallback", "one kind, not " + fallbacks.size() + ", must stand for unknown");
    }
    kinds.fallback = fallbacks.isEmpty() ? null : fallbacks.get(0);
    return kinds;
  }

  private static KindRule rule(TableRow row, List<KindRule> fallbacks) {
    KindRule rule =
        new KindRule(
            row.required("kind"),
            row.required("name"),
            row.required("life_class"),
            row.required("fault_class"),
            row.oneOf("temperature", Set.of("medium", "low", "comfort")),
            row.oneOf("food", Set.of("yes", "no")).equals("yes"),
            row.required("condenser_place"),
            difference(row, "design_split").orElseThrow(),
            difference(row, "evaporator_difference_least"),
            difference(row, "evaporator_difference_most"),
            difference(row, "superheat_most"),
            row.source());
    if (row.text("fallback").equals("yes")) {
      fallbacks.add(rule);
    }
    return rule;
  }

  private static OptionalDouble difference(TableRow row, String column) {
    Measure measure = Cells.measure(row, "measure", Dimension.TEMPERATURE_DIFFERENCE);
    OptionalDouble value =
        column.equals("design_split")
            ? OptionalDouble.of(row.number(column, 1, 100))
            : row.optionalNumber(column);
    return value.isEmpty() ? value : OptionalDouble.of(measure.toBase(value.getAsDouble()));
  }

  /** The rule of a kind; that of the fallback for a kind the table does not have. */
  KindRule rule(String kind) {
    return byKind.getOrDefault(kind, fallback);
  }

  /** The kind that stands for an unknown one. */
  KindRule usual() {
    return fallback;
  }

  boolean has(String kind) {
    return byKind.containsKey(kind);
  }

  /** All of them, in the order of the table. */
  public Collection<KindRule> all() {
    return Collections.unmodifiableCollection(byKind.values());
  }
}

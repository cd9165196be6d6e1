package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What the law takes a kind of unit for: scoring/unit-categories.csv. */
public final class UnitCategories {

  private static final String FILE = "unit-categories.csv";
  private static final String REFRIGERATION = "refrigeration";
  static final Set<String> LEAK_CATEGORIES =
      Set.of(
          "commercial-refrigeration",
          "industrial-process-refrigeration",
          "comfort-cooling",
          "light-commercial-air-conditioning",
          "refrigerated-transport");

  /**
   * @param kind as in the equipment list, such as walk-in-cooler
   * @param group refrigeration or air-conditioning
   * @param leakCategory appliance category of the leak rules
   */
  public record Category(String kind, String group, String leakCategory, Source source) {}

  private final Map<String, Category> byKind = new HashMap<>();

  private UnitCategories() {}

  public static UnitCategories load(RuleTables tables) {
    UnitCategories categories = new UnitCategories();
    tables
        .read(FILE, "kind", UnitCategories::category)
        .forEach(category -> categories.byKind.put(category.kind, category));
    return categories;
  }

  private static Category category(TableRow row) {
    return new Category(
        row.required("kind"),
        row.oneOf("group", Set.of(REFRIGERATION, "air-conditioning")),
        row.oneOf("leak_category", LEAK_CATEGORIES),
        row.source());
  }

  public Optional<Category> find(String kind) {
    return Optional.ofNullable(byKind.get(kind));
  }

  /** True when one of the kinds or groups named covers the kind; an unknown kind refrigerates. */
  boolean covered(String kind, Iterable<String> kindsOrGroups) {
    Category category = byKind.get(kind);
    String group = category == null ? REFRIGERATION : category.group;
    for (String named : kindsOrGroups) {
      if (named.equals(kind) || named.equals(group)) {
        return true;
      }
    }
    return false;
  }
}

package coldround.refrigerant;

import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Reads scoring/refrigerants.csv. */
final class RefrigerantTable {

  static final String FILE = "refrigerants.csv";
  static final Set<String> FAMILIES =
      Set.of("CFC", "HCFC", "HFC", "HFO-HFC blend", "HFO", "HC", "inorganic");

  private static final Set<String> SAFETY_GROUPS =
      Set.of("A1", "A2L", "A2", "A3", "B1", "B2L", "B2", "B3");
  private static final Set<String> CLASSES = Set.of("pure", "zeotrope", "azeotrope");
  // column of the citation by its name in Refrigerant.sources
  private static final Map<String, String> CITATIONS =
      Map.of(
          "composition", "composition_source",
          "safety", "safety_source",
          "odp", "odp_source",
          "gwp-ar4", "gwp_ar4_source",
          "gwp-ar5", "gwp_ar5_source",
          "gwp-ar6", "gwp_ar6_source",
          "property", "property_source");
  private static final double GREATEST_GWP = 30000;

  private RefrigerantTable() {}

  static List<Refrigerant> read(RuleTables tables) {
    return tables.read(FILE, "designation", RefrigerantTable::refrigerant);
  }

  private static Refrigerant refrigerant(TableRow row) {
    return new Refrigerant(
        row.required("designation"),
        row.oneOf("family", FAMILIES),
        row.oneOf("zeotrope_class", CLASSES),
        composition(row),
        row.oneOf("safety_group", SAFETY_GROUPS),
        row.number("odp", 0, 2),
        row.number("gwp_ar4_100", 0, GREATEST_GWP),
        row.number("gwp_ar4_epa_100", 0, GREATEST_GWP),
        row.number("gwp_ar5_100", 0, GREATEST_GWP),
        row.number("gwp_ar6_100", 0, GREATEST_GWP),
        row.number("molar_mass_g_mol", 1, 500),
        row.number("nbp_bubble_c"),
        row.number("nbp_dew_c"),
        row.optionalNumber("critical_temp_c"),
        "none",
        citations(row),
        row.required("verified"),
        row.source());
  }

  private static Map<String, Double> composition(TableRow row) {
    Map<String, Double> parts = new LinkedHashMap<>();
    for (String part : row.codes("composition_mass_pct")) {
      int colon = part.lastIndexOf(':');
      if (colon < 1) {
        throw new IllegalArgumentException("'" + part + "' needs the form R-32:50");
      }
      parts.put(part.substring(0, colon), percent(part.substring(colon + 1), part));
    }
    return parts;
  }

  private static double percent(String number, String part) {
    try {
      return Double.parseDouble(number);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("'" + part + "' has no number behind the colon");
    }
  }

  private static Map<String, String> citations(TableRow row) {
    Map<String, String> citations = new TreeMap<>();
    CITATIONS.forEach((name, column) -> citations.put(name, row.required(column)));
    return citations;
  }
}

package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import coldround.table.TableRow;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads scoring/phase-out.csv. */
final class PhaseOutTable {

  static final String FILE = "phase-out.csv";

  private static final Set<String> DECIDES = Set.of("yes", "no", "assumed");
  // what the reader of a reason is told about the trust in its row
  private static final Map<String, String> TRUST =
      Map.of(
          "read", "",
          "partly", " (partly from memory: check before relying on it)",
          "memory", " (from memory: check before relying on it)",
          "assumed", " (assumed: check before relying on it)");
  private static final Map<String, PhaseOutRule.Effect> EFFECTS =
      Arrays.stream(PhaseOutRule.Effect.values())
          .collect(Collectors.toMap(PhaseOutRule.Effect::code, effect -> effect));

  private PhaseOutTable() {}

  static List<PhaseOutRule> read(RuleTables tables) {
    return tables.read(FILE, "rule", PhaseOutTable::rule);
  }

  private static PhaseOutRule rule(TableRow row) {
    row.optionalNumber("share_percent").ifPresent(share -> row.number("share_percent", 0, 100));
    return new PhaseOutRule(
        row.required("rule"),
        row.required("schedule"),
        EFFECTS.get(row.oneOf("effect", EFFECTS.keySet())),
        families(row),
        row.codes("contains"),
        row.codes("gases"),
        row.optionalNumber("gwp_from"),
        row.optionalNumber("gwp_above"),
        row.codes("kinds"),
        row.optionalDate("from").orElse(null),
        row.optionalDate("until").orElse(null),
        row.optionalNumber("share_percent"),
        row.oneOf("decides", DECIDES),
        row.oneOf("trust", TRUST.keySet()),
        row.text("scope"),
        row.required("status"),
        row.required("legal_reference"),
        row.text("note"),
        source(row));
  }

  static List<String> families(TableRow row) {
    List<String> families = row.codes("families");
    for (String family : families) {
      if (!RefrigerantTable.FAMILIES.contains(family)) {
        throw new IllegalArgumentException(
            "'" + family + "' is not one of " + RefrigerantTable.FAMILIES);
      }
    }
    return families;
  }

  private static Source source(TableRow row) {
    Source plain = row.source();
    String citation =
        row.required("legal_reference") + "; " + plain.citation() + TRUST.get(row.text("trust"));
    return new Source(plain.table(), plain.row(), citation);
  }
}

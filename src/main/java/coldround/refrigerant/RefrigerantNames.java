package coldround.refrigerant;

import coldround.table.RuleTables;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Finds the designation meant by what a nameplate or spreadsheet says: any case, with or without
 * dash and spaces, ASHRAE's composition-designating prefixes (HFC-134a), and the names of
 * scoring/refrigerant-names.csv.
 */
final class RefrigerantNames {

  private static final String FILE = "refrigerant-names.csv";
  // ASHRAE 34 section 4: R, or the composition-designating prefix
  private static final Pattern PREFIX =
      Pattern.compile("^(?:REFRIGERANT|HCFO|HCFC|HFC|HFO|CFC|PFC|HC|R)(?=[0-9])");
  private static final Pattern NOISE = Pattern.compile("[^A-Z0-9]");

  private final Map<String, String> designationByKey = new HashMap<>();
  private final Set<String> designations = new HashSet<>();

  static RefrigerantNames load(RuleTables tables, List<Refrigerant> refrigerants) {
    RefrigerantNames names = new RefrigerantNames();
    refrigerants.forEach(r -> names.add(tables, RefrigerantTable.FILE, r.designation(), r));
    refrigerants.forEach(r -> names.designations.add(r.designation()));
    Map<String, Refrigerant> known = new HashMap<>();
    refrigerants.forEach(r -> known.put(r.designation(), r));
    tables
        .read(FILE, "name", row -> List.of(row.source().row(), row.required("designation")))
        .forEach(pair -> names.add(tables, FILE, pair.get(0), known.get(pair.get(1))));
    return names;
  }

  private void add(RuleTables tables, String file, String name, Refrigerant meant) {
    if (meant == null) {
      tables.problem(file, 0, "designation", name + " means a refrigerant that is not in the list");
      return;
    }
    String before = designationByKey.putIfAbsent(key(name), meant.designation());
    if (before != null && !before.equals(meant.designation())) {
      tables.problem(file, 0, "name", name + " would mean both " + before + " and " + meant);
    }
  }

  Optional<String> designation(String written) {
    if (written == null) {
      return Optional.empty();
    }
    // nearly all are written as the standard writes them
    return designations.contains(written)
        ? Optional.of(written)
        : Optional.ofNullable(designationByKey.get(key(written)));
  }

  /** Designation by key: the capitals and digits of a name, without the prefix of its family. */
  Map<String, String> byKey() {
    return new TreeMap<>(designationByKey);
  }

  private static String key(String written) {
    String plain = NOISE.matcher(written.toUpperCase(Locale.ROOT)).replaceAll("");
    return PREFIX.matcher(plain).replaceFirst("");
  }
}

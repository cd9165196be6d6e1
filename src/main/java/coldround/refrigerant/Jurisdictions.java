package coldround.refrigerant;

import coldround.reason.Source;
import coldround.table.RuleTables;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Which schedules of law hold where: scoring/jurisdictions.csv. */
final class Jurisdictions {

  static final String FILE = "jurisdictions.csv";
  private static final String ANY_COUNTRY = "*";
  private static final String NOT_GIVEN = "-";
  private static final Set<String> ISO_COUNTRIES = Set.of(Locale.getISOCountries());

  /**
   * @param known false when the jurisdiction was not given or is no ISO 3166 code
   */
  record Law(List<String> schedules, boolean known, Source source) {}

  private record Row(String jurisdiction, List<String> schedules, Source source) {}

  private final Map<String, Row> rows = new HashMap<>();

  static Jurisdictions load(RuleTables tables) {
    Jurisdictions jurisdictions = new Jurisdictions();
    tables
        .read(
            FILE,
            "jurisdiction",
            row -> new Row(row.required("jurisdiction"), row.codes("schedules"), row.source()))
        .forEach(row -> jurisdictions.rows.put(row.jurisdiction, row));
    for (String needed : List.of(ANY_COUNTRY, NOT_GIVEN)) {
      if (!jurisdictions.rows.containsKey(needed)) {
        tables.problem(FILE, 0, "jurisdiction", "the row '" + needed + "' is missing");
      }
    }
    return jurisdictions;
  }

  /** Tells of schedules that no rule belongs to. */
  void check(RuleTables tables, Set<String> schedules) {
    for (Row row : rows.values()) {
      if (row.schedules.isEmpty() || !schedules.containsAll(row.schedules)) {
        String message = row.jurisdiction + " names a schedule without rules: " + row.schedules;
        tables.problem(FILE, 0, "schedules", message);
      }
    }
  }

  /**
   * @param written ISO 3166 country with optional subdivision; may be empty or nonsense
   */
  Law law(String written) {
    String code = written == null ? "" : written.strip().toUpperCase(Locale.ROOT);
    String country = code.contains("-") ? code.substring(0, code.indexOf('-')) : code;
    if (!ISO_COUNTRIES.contains(country)) {
      return law(rows.get(NOT_GIVEN), false);
    }
    Row any = rows.get(ANY_COUNTRY);
    return law(rows.getOrDefault(code, rows.getOrDefault(country, any)), true);
  }

  private static Law law(Row row, boolean known) {
    return new Law(row.schedules, known, row.source);
  }
}

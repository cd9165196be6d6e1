package coldround.intake;

import coldround.table.RuleTables;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The lists of codes that cells may hold, such as failure modes. */
public final class Codes {

  private record Code(String list, String code, String meaning) {}

  private final Map<String, Map<String, String>> lists = new LinkedHashMap<>();

  private Codes(List<Code> codes) {
    for (Code code : codes) {
      lists
          .computeIfAbsent(code.list(), list -> new LinkedHashMap<>())
          .put(code.code(), code.meaning());
    }
  }

  /** Reads import/codes.csv; what is wrong with it becomes problems of the tables. */
  public static Codes read(RuleTables tables) {
    return new Codes(
        tables.read(
            "codes.csv",
            List.of("list", "code"),
            row ->
                new Code(
                    row.required("list"),
                    wellFormed(row.required("code")),
                    row.required("meaning"))));
  }

  private static String wellFormed(String code) {
    if (!code.equals(normal(code)) || code.contains(";")) {
      throw new IllegalArgumentException("write the code '" + code + "' as " + normal(code));
    }
    return code;
  }

  /** Lower case, with hyphens for blanks and underscores. */
  private static String normal(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[\\s_;-]+", "-");
  }

  /** Codes of a list with their meaning, in the order of the table; empty for an unknown list. */
  public Map<String, String> list(String list) {
    return lists.getOrDefault(list, Map.of());
  }

  /** The code that a text means, whatever its case and its blanks. */
  public Optional<String> find(String list, String text) {
    Map<String, String> codes = list(list);
    if (codes.containsKey(text)) {
      return Optional.of(text);
    }
    String normal = normal(text);
    return codes.containsKey(normal) ? Optional.of(normal) : Optional.empty();
  }

  /** What to say of a text that is no code of the list. */
  String unknown(String list, String text) {
    List<String> codes = new ArrayList<>(list(list).keySet());
    String nearest =
        Nearest.to(normal(text), codes).map(code -> " Did you mean " + code + "?").orElse("");
    return "'%s' is none of the codes of %s.%s Known are: %s."
        .formatted(RowProblem.shown(text), list, nearest, String.join(", ", codes));
  }
}

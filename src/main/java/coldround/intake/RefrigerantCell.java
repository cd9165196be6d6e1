package coldround.intake;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * A refrigerant by its ASHRAE 34 designation, however it is spelled: r404a is R-404A. One that is
 * not known is kept as it was given, with a warning.
 */
final class RefrigerantCell implements CellReader {

  private final TextCell any;
  private final CellRules rules;
  private final Map<String, String> known = new HashMap<>();

  RefrigerantCell(TextCell any, CellRules rules) {
    this.any = any;
    this.rules = rules;
    rules.refrigerants().forEach(designation -> known.put(plain(designation), designation));
  }

  /** Without what writers leave out or put in: case, blanks, hyphens, the R in front. */
  private static String plain(String text) {
    String bare = text.toUpperCase(Locale.ROOT).replaceAll("[\\s-]", "");
    return bare.startsWith("R") ? bare.substring(1) : bare;
  }

  @Override
  public Object read(String text, Refusals refusals) {
    String meant = rules.profile().meant(Profile.REFRIGERANT, text);
    String designation = known.get(plain(meant));
    if (designation != null) {
      return designation;
    }
    Object kept = any.read(meant, refusals);
    if (kept != null) {
      refusals.add(ProblemCode.UNKNOWN_REFRIGERANT, warning(meant));
    }
    return kept;
  }

  private String warning(String text) {
    String nearest =
        Nearest.to(plain(text), known.keySet())
            .map(name -> " Did you mean " + known.get(name) + "?")
            .orElse("");
    return ("'%s' is no refrigerant of the tables.%s It is kept as it is, but nothing can be"
            + " computed from it.")
        .formatted(RowProblem.shown(text), nearest);
  }
}

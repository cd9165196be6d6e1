package coldround.intake;

import java.util.Optional;

/**
 * A refrigerant in any spelling that the rule tables know: r404a is R-404A. One that they do not
 * know is kept as it was given, with a warning.
 */
record RefrigerantCell(TextCell any, CellRules rules) implements CellReader {

  @Override
  public Object read(String text, Refusals refusals) {
    String meant = rules.profile().meant(Profile.REFRIGERANT, text);
    Optional<String> designation = rules.refrigerants().designation(meant);
    if (designation.isPresent()) {
      return designation.get();
    }
    Object kept = any.read(meant, refusals);
    if (kept != null) {
      refusals.add(ProblemCode.UNKNOWN_REFRIGERANT, warning(meant));
    }
    return kept;
  }

  private String warning(String text) {
    String nearest =
        Nearest.to(text, rules.refrigerants().designations())
            .map(" Did you mean %s?"::formatted)
            .orElse("");
    return ("'%s' is no refrigerant of the tables.%s It is kept as it is, but nothing can be"
            + " computed from it.")
        .formatted(RowProblem.shown(text), nearest);
  }
}

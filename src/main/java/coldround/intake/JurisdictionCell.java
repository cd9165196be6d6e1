package coldround.intake;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** An ISO 3166-1 country, optionally with an ISO 3166-2 subdivision: US or US-CA. */
record JurisdictionCell() implements CellReader {

  private static final Set<String> COUNTRIES = Set.of(Locale.getISOCountries());
  private static final Pattern FORM = Pattern.compile("[A-Z]{2}(-[A-Z0-9]{1,3})?");

  @Override
  public Object read(String text, Refusals refusals) {
    String upper = text.toUpperCase(Locale.ROOT);
    if (FORM.matcher(upper).matches() && COUNTRIES.contains(upper.substring(0, 2))) {
      return upper;
    }
    refusals.add(
        ProblemCode.UNKNOWN_COUNTRY,
        ("'%s' is no ISO 3166 country with an optional subdivision. Write two letters such as US or"
                + " DE, or a subdivision such as US-CA.")
            .formatted(RowProblem.shown(text)));
    return null;
  }
}

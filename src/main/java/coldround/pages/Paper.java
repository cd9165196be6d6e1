package coldround.pages;

import java.util.Locale;
import java.util.Set;

/** What a reader's printer holds. */
public enum Paper {
  LETTER("Letter"),
  A4("A4");

  /**
   * Territories whose usual paper is US Letter (Unicode CLDR, supplemental data, paperSize; from
   * memory). All others use ISO 216 A4.
   */
  private static final Set<String> OF_LETTER =
      Set.of("BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE");

  /** As a document that is made for print says it to begin with. */
  private static final String SIZE = "@page { size: %s;";

  private final String size;

  Paper(String size) {
    this.size = size;
  }

  /**
   * @param language as the reader's browser tells it; English of no country is that of the United
   *     States, as its units of measure are
   */
  public static Paper of(Locale language) {
    String country = language.getCountry();
    boolean unsaid = country.isEmpty() && language.getLanguage().equals("en");
    return unsaid || OF_LETTER.contains(country) ? LETTER : A4;
  }

  /** As CSS calls it. */
  public String size() {
    return size;
  }

  /** A document that is made for Letter, for this paper. */
  public String document(String html) {
    return html.replace(SIZE.formatted(LETTER.size), SIZE.formatted(size));
  }
}

package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PaperTest {

  @ParameterizedTest
  @CsvSource({
    "en-US, Letter",
    "fr-CA, Letter",
    "es-MX, Letter",
    "en, Letter",
    "en-GB, A4",
    "en-AU, A4",
    "de-DE, A4",
    "de, A4",
    "es, A4",
    "fr-FR, A4",
    "ja-JP, A4"
  })
  void eachCountryHasItsPaper(String language, String size) {
    Paper paper = Paper.of(Locale.forLanguageTag(language));
    assertEquals(size, paper.size());
    assertEquals(
        "<style>@page { size: " + size + "; margin: 1mm }</style>",
        paper.document("<style>@page { size: Letter; margin: 1mm }</style>"));
  }
}

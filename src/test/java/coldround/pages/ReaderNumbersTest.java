package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signs of languages: Unicode CLDR. */
class ReaderNumbersTest {

  private static final ReaderNumbers GERMAN = ReaderNumbers.of(Locale.GERMANY);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<p>9.6 °F above the clean split of 33.0 °F</p> | <p>9,6 °F above the clean split of 33,0"
            + " °F</p>",
        "<p class=\"score\"><b>41.7</b> of 100</p> | <p class=\"score\"><b>41,7</b> of 100</p>",
        "<b>&minus;12.3</b> | <b>&minus;12,3</b>",
        "<p>36.2 to 47.0 possible</p> | <p>36,2 to 47,0 possible</p>",
        "<p>-3.5 °C</p> | <p>-3,5 °C</p>",
        "<p>1,234.50 USD</p> | <p>1.234,50 USD</p>",
        "<b>100,000 units</b> | <b>100.000 units</b>",
        "<td>0 to 1.5</td> | <td>0 to 1,5</td>",
        "<li>5.8 a year expected in 2027, 2.5 in 2036.</li> | <li>5,8 a year expected in 2027, 2,5"
            + " in 2036.</li>",
        "<text>17.7 of 25 lost</text> | <text>17,7 of 25 lost</text>",
        "<svg aria-label=\"Points lost: 22.5 to age\"><text x=\"1.5\">12.5</text></svg>"
            + " | <svg aria-label=\"Points lost: 22,5 to age\"><text x=\"1.5\">12,5</text></svg>",
        "<svg><title>13 May 2024: 44.7, visit W24-020</title><title>12 May 2025: 60.1</title></svg>"
            + " | <svg><title>13 May 2024: 44,7, visit W24-020</title><title>12 May 2025:"
            + " 60,1</title></svg>",
        "<path d=\"M1.5 2.5\"/><dd>0.9 A</dd> | <path d=\"M1.5 2.5\"/><dd>0,9 A</dd>"
      })
  void numbersOfOursAreWrittenAsTheReaderWritesThem(String page, String german) {
    assertEquals(german, GERMAN.page(page));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<p>2026-11-29, 10:30, R-404A, 127.0.0.1, v1.2, 4711</p>",
        "<p>the law asks for it: 40 CFR 84.106(c)</p>",
        "<p class=\"source\">limits.csv, row excess-limit: 10.0 °F</p>",
        "<p class=\"small note\">added <b>1.5 lb</b>, and 2.5 lb</p>",
        "<p>R-404A, Thornfield WC 1.5</p>",
        "<textarea>added 1.5 lb</textarea>",
        "<code>1.5 lb</code>",
        "<a class=\"tag\" href=\"/units/u1\">WC 1.5 left</a>",
        "<input value=\"1.5\" aria-describedby=\"x-1.5\">",
        "<option value=\"1.5\">1.5 lb</option>"
      })
  void whatOthersWroteStaysAsItIs(String page) {
    assertEquals(page, GERMAN.page(page));
  }

  @Test
  void whatComesBehindTheWordsOfOthersIsOursAgain() {
    assertEquals(
        "<div class=\"note\"><div>1.5 lb</div></div><p>1,5 lb</p>",
        GERMAN.page("<div class=\"note\"><div>1.5 lb</div></div><p>1.5 lb</p>"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<dd>20131 USD</dd> | <dd>20,131 USD</dd> | <dd>20.131 USD</dd>",
        "<dd>+20131 USD</dd> | <dd>+20,131 USD</dd> | <dd>+20.131 USD</dd>",
        "<dd>-1234567.50 EUR</dd> | <dd>-1,234,567.50 EUR</dd> | <dd>-1.234.567,50 EUR</dd>",
        "<dd>999 USD</dd> | <dd>999 USD</dd> | <dd>999 USD</dd>",
        "<dd>1,234 USD</dd> | <dd>1,234 USD</dd> | <dd>1.234 USD</dd>",
        "<svg aria-label=\"May: 4800 USD\"></svg> | <svg aria-label=\"May: 4,800 USD\"></svg> |"
            + " <svg aria-label=\"May: 4.800 USD\"></svg>",
        // no money: a year, a number of a visit, the words of others
        "<p>in 2026 ABC, visit 47110</p> | <p>in 2026 ABC, visit 47110</p> | <p>in 2026 ABC, visit"
            + " 47110</p>",
        "<p class=\"note\">20131 USD</p> | <p class=\"note\">20131 USD</p> | <p"
            + " class=\"note\">20131 USD</p>"
      })
  void amountsOfMoneyHaveTheirThousandsToldApart(String page, String english, String german) {
    assertEquals(english, ReaderNumbers.of(Locale.ENGLISH).page(page));
    assertEquals(german, GERMAN.page(page));
  }

  @Test
  void aLanguageWithTheSameSignsCostsNothing() {
    String page = "<b>41.7</b>";
    assertSame(page, ReaderNumbers.of(Locale.US).page(page));
    assertSame(page, ReaderNumbers.of(Locale.ENGLISH).page(page));
  }

  @Test
  void otherLanguagesGroupByOtherSigns() {
    assertEquals(
        "<p>100\u202f000 units</p>", ReaderNumbers.of(Locale.FRANCE).page("<p>100,000 units</p>"));
  }

  @ParameterizedTest
  @CsvSource({"'', en", "*, en", "de, de", "fr, fr"})
  void whoTakesAnyLanguageReadsEnglish(String first, String read) {
    assertEquals(
        Locale.forLanguageTag(read), ReaderNumbers.language(List.of(new Locale(first), Locale.US)));
    assertEquals(Locale.ENGLISH, ReaderNumbers.language(List.of()));
  }
}

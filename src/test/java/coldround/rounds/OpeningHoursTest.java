package coldround.rounds;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the hours mean is by the specification of opening_hours in the wiki of OpenStreetMap, from
 * memory: a later rule replaces an earlier one for the days it names, a comma adds.
 */
class OpeningHoursTest {

  private static final ZoneId VIRGINIA = ZoneId.of("America/New_York");

  // 2026-11-23 is a Monday
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Mo-Fr 07:00-15:30 | 2026-11-23 | 07:00-15:30",
        "Mo-Fr 07:00-15:30 | 2026-11-28 | ''",
        "Mo-Fr 08:00-16:30; Sa 09:00-12:00 | 2026-11-28 | 09:00-12:00",
        "Mo,We,Th 05:00-16:00; Tu,Fr 11:00-16:00 | 2026-11-25 | 05:00-16:00",
        "Mo,We,Th 05:00-16:00; Tu,Fr 11:00-16:00 | 2026-11-24 | 11:00-16:00",
        "Mo-Fr 08:00-12:00,13:00-17:00 | 2026-11-24 | 08:00-12:00 13:00-17:00",
        "Mo-Su 08:00-12:00; We off | 2026-11-25 | ''",
        "Mo-Su 08:00-12:00; We closed | 2026-11-25 | ''",
        "Mo-Fr 08:00-12:00; Mo 14:00-18:00 | 2026-11-23 | 14:00-18:00",
        "Mo-Fr 08:00-12:00, Mo 14:00-18:00 | 2026-11-23 | 08:00-12:00 14:00-18:00",
        "24/7 | 2026-11-29 | 00:00-00:00",
        "Fr-Mo 10:00-11:00 | 2026-11-29 | 10:00-11:00",
        "Fr-Mo 10:00-11:00 | 2026-11-24 | ''",
        "08:00-12:00 | 2026-11-29 | 08:00-12:00",
        "Mo 22:00-06:00 | 2026-11-23 | 22:00-00:00",
        "Mo 22:00-06:00 | 2026-11-24 | 00:00-06:00",
        "Mo 22:00-26:00 | 2026-11-24 | 00:00-02:00",
        "Mo-Fr 08:00-12:00,11:00-15:00 | 2026-11-24 | 08:00-15:00",
        "Mo-Fr 08:00-12:00; PH off | 2026-11-24 | 08:00-12:00",
        "mo-fr 8:00-12:00 \"ring twice\" | 2026-11-24 | 08:00-12:00",
        "Mo-Fr 08:00-24:00 | 2026-11-24 | 08:00-00:00",
        "Mo-Fr | 2026-11-24 | 00:00-00:00"
      })
  void aDayIsOpenAsTheTextSays(String text, LocalDate day, String open) {
    DateTimeFormatter clock = DateTimeFormatter.ofPattern("HH:mm").withZone(VIRGINIA);
    String found =
        OpeningHours.parse(text).on(day, VIRGINIA).stream()
            .map(span -> clock.format(span.from()) + "-" + clock.format(span.to()))
            .collect(Collectors.joining(" "));
    assertEquals(open, found);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mo-Fr 07:00",
        "Mo-Fr 07:00-",
        "Mo- 07:00-12:00",
        "Jan-Mar 08:00-12:00",
        "sunrise-sunset",
        "Mo-Fr 08:00+",
        "week 1-10 Mo 08:00-12:00",
        "Mo-Fr 08:61-12:00",
        "Mo-Fr 49:00-50:00",
        "Mo-Fr 08:00-12:00 || \"by phone\"",
        "nonsense",
        " "
      })
  void whatAWeekDoesNotKnowIsRefusedInWords(String text) {
    String said =
        assertThrows(IllegalArgumentException.class, () -> OpeningHours.parse(text)).getMessage();
    assertTrue(said.contains("hours"), said);
  }

  // in the US clocks go back on the first Sunday of November, forward on the second of March
  @ParameterizedTest
  @CsvSource({"2026-11-01, 25", "2026-03-08, 23", "2026-07-05, 24"})
  void aNightOfChangingClocksIsLongerOrShorter(LocalDate sunday, int hours) {
    Span day = OpeningHours.always().on(sunday, VIRGINIA).get(0);
    assertEquals(hours * 60, day.minutes());
  }

  @Test
  void hoursThatOnlySayOffNeverOpen() {
    assertTrue(OpeningHours.parse("Mo-Su off").neverOpen());
    assertTrue(OpeningHours.parse("24/7; Mo-Su off").neverOpen());
    assertTrue(!OpeningHours.parse("Sa off; Su 10:00-11:00").neverOpen());
  }
}

package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Entry;
import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.intake.RowReading.Understood;
import coldround.quantity.Measure;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProfileTest {

  private static Profile profile(DateOrder dates, char decimal) {
    return new Profile(
        "own",
        "",
        dates,
        decimal,
        Map.of("psi", Measure.PSIG),
        Map.of(
            Kind.VISITS,
            List.of(
                new Profile.Alias("visit", List.of("Job No"), List.of(), null),
                new Profile.Alias(
                    "head_pressure",
                    List.of(),
                    List.of(Pattern.compile("high side.*", Pattern.CASE_INSENSITIVE)),
                    Measure.BARG))),
        Map.of("coil_grade", Map.of("dirty", "heavy")));
  }

  private static Understood read(Profile profile, String date, String head, String coil) {
    return Lists.row(
        Kind.VISITS,
        profile,
        List.of("customer", "site", "unit", "job no", "date", "High Side Gauge", "condenser_coil"),
        List.of("C", "S", "U", "1", date, head, coil));
  }

  @Test
  void otherHeadersUnitsAndWordsAreUnderstood() {
    Entry entry = read(profile(DateOrder.DAY_MONTH_YEAR, ','), "31.5.26", "8,1", "Dirty").entry();
    assertEquals("1", entry.key("visit"));
    assertEquals("2026-05-31", entry.date("date", null).toString());
    assertEquals("8.10 barg", ((Reading) entry.said().get("head_pressure")).value().toString());
    assertEquals(new Entry.Grade("heavy"), entry.said().get("condenser_coil"));
  }

  @Test
  void aUnitBehindTheNumberWins() {
    Entry entry = read(profile(DateOrder.DAY_MONTH_YEAR, '.'), "1/5/2026", "117 psi", "").entry();
    assertEquals("117 psig", ((Reading) entry.said().get("head_pressure")).value().toString());
  }

  // two digits: of the last hundred years, seen from 2026
  @ParameterizedTest
  @CsvSource({
    "day-month-year, 31/05/2026, 2026-05-31",
    "month-day-year, 05/31/2026, 2026-05-31",
    "day-month-year, 05/06/2026, 2026-06-05",
    "month-day-year, 05/06/2026, 2026-05-06",
    "day-month-year, 1-2-26, 2026-02-01",
    "day-month-year, 1-2-27, 1927-02-01",
    "month-day-year, 2026-05-31, 2026-05-31"
  })
  void theOrderOfDatesIsThatOfTheProfile(String order, String date, String day) {
    Profile own = profile(DateOrder.find(order).orElseThrow(), '.');
    assertEquals(day, read(own, date, "", "").entry().date("date", null).toString());
  }

  @ParameterizedTest
  @CsvSource({
    "day-month-year, 05/31/2026",
    "month-day-year, 31/05/2026",
    "day-month-year, 1/2/126"
  })
  void aDateOfAnotherOrderIsNotGuessed(String order, String date) {
    Profile own = profile(DateOrder.find(order).orElseThrow(), '.');
    Understood row = read(own, date, "", "");
    assertNull(row.entry());
    assertEquals("not-a-date", row.problems().get(0).code().text());
  }

  @ParameterizedTest
  @CsvSource({"',', 8.1", "',', '1.170,5'", ".,  '8,1'"})
  void theOtherDecimalSignIsRefusedNotGuessed(char sign, String number) {
    Understood row = read(profile(DateOrder.YEAR_MONTH_DAY, sign), "2026-05-31", number, "");
    assertEquals("not-a-number", row.problems().get(0).code().text());
  }

  @Test
  void whatAProfileSaysOfThingsThatAreNotThereIsTold() {
    Profile wrong =
        new Profile(
            "wrong",
            "",
            DateOrder.YEAR_MONTH_DAY,
            '.',
            Map.of(),
            Map.of(
                Kind.VISITS,
                List.of(
                    new Profile.Alias("pressure", List.of("P"), List.of(), null),
                    new Profile.Alias("head_pressure", List.of("H"), List.of(), Measure.AMPERE))),
            Map.of("coil_grade", Map.of("dirty", "filthy")));
    List<String> faults = wrong.faults(Lists.TABLES.columns(), Lists.TABLES.codes());
    assertTrue(faults.contains("visits has no column 'pressure'"), faults.toString());
    assertTrue(faults.contains("A does not measure head_pressure"), faults.toString());
    assertTrue(faults.contains("codes.csv has no 'filthy' in list coil_grade"), faults.toString());
  }
}

package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.fleet.Kind;
import coldround.intake.RowReading.Understood;
import coldround.sheet.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dates where the profile does not say in which order they are written. */
class DateColumnTest {

  private static List<Understood> read(String cells) {
    List<String> dates = Stream.of(cells.split(" ")).map(cell -> cell.replace('_', ' ')).toList();
    CellRules rules =
        Lists.rules()
            .with(
                column -> {
                  DateEvidence evidence = DateEvidence.NONE;
                  for (String date : dates) {
                    evidence = evidence.and(date);
                  }
                  return evidence;
                });
    Heading heading =
        Lists.heading(Kind.VISITS, Profile.STANDARD, "customer", "site", "unit", "visit", "date");
    RowReading reading = new RowReading(Kind.VISITS, heading, rules);
    List<Understood> rows = new ArrayList<>();
    for (int i = 0; i < dates.size(); i++) {
      rows.add(reading.read(new Row(2 + i, List.of("C", "S", "U", "" + i, dates.get(i)))));
    }
    return rows;
  }

  private static String told(Understood row) {
    return row.entry() == null
        ? row.problems().get(0).code().text()
        : row.entry().date("date", null).toString();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "05/06/2026                       | ambiguous-date",
        "05/06/2026 31/05/2026            | 2026-06-05 2026-05-31",
        "05/06/2026 05/31/2026            | 2026-05-06 2026-05-31",
        "05/06/2026 05/31/2026 31/05/2026 | ambiguous-date 2026-05-31 2026-05-31",
        "06/06/2026                       | 2026-06-06",
        "5.6.26 13.6.26                   | 2026-06-05 2026-06-13",
        "5/6/26 6/13/26                   | 2026-05-06 2026-06-13",
        "5/6/98 6/13/98                   | 1998-05-06 1998-06-13",
        "26-05-31                         | ambiguous-date",
        "31-05-26 05-06-26                | ambiguous-date ambiguous-date",
        "31-05-98                         | 1998-05-31",
        "31/04/2026                       | not-a-date",
        "31/04/2026 03/04/2026            | not-a-date 2026-04-03",
        "20260531                         | 2026-05-31",
        "2026-05-31_14:30 05/06/2026      | 2026-05-31 ambiguous-date",
        "46147                            | 2026-05-05",
        "46147.75                         | 2026-05-05",
        "9999                             | not-a-date",
      })
  void theWholeColumnDecides(String cells, String days) {
    assertEquals(
        days, read(cells).stream().map(DateColumnTest::told).collect(Collectors.joining(" ")));
  }

  // 46147 is 5 May 2026 in the system of 1900: 46023 is 1 January 2026 (ECMA-376; from memory)
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "05/06/2026 06/05/2026 31/05/2026 | date-order-found",
        "5/6/26 6/5/26 31/5/26            | date-order-found two-digit-years",
        "46147 46148                      | serial-date",
        "2026-05-31 05/31/2026            | ''",
      })
  void whatWasFoundIsToldOnceForTheColumn(String cells, String codes) {
    String told =
        read(cells).stream()
            .flatMap(row -> row.problems().stream())
            .map(problem -> problem.code().text())
            .collect(Collectors.joining(" "));
    assertEquals(codes, told);
  }

  @Test
  void theReasonNamesWhatTheColumnLacks() {
    String none = read("05/06/2026").get(0).problems().get(0).message();
    assertEquals(true, none.contains("no date of the column proves the order"), none);
    String both = read("05/06/2026 05/31/2026 31/05/2026").get(0).problems().get(0).message();
    assertEquals(true, both.contains("'31/05/2026' and '05/31/2026'"), both);
  }

  @Test
  void whoIsToMendADayIsToldAnOrder() {
    String none = read("2026-13-01").get(0).problems().get(0).message();
    assertEquals(true, none.contains("Write it year-month-day, such as 2026-05-31,"), none);
  }
}

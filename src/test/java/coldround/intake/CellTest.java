package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Entry;
import coldround.fleet.Kind;
import coldround.fleet.Reading;
import coldround.intake.RowReading.Understood;
import coldround.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a cell of each type says, and what it must not say, on both sides of each limit. */
class CellTest {

  /** One row of the kind whose key is filled, with one more column. */
  private static Understood read(String kind, String label, String cell) {
    Kind of = Kind.find(kind).orElseThrow();
    List<String> labels = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    for (Column column : Lists.TABLES.columns(of)) {
      if (column.mustBeFilled() && !column.name().equals(label)) {
        labels.add(column.header());
        cells.add(column.example());
      }
    }
    labels.add(label);
    cells.add(cell);
    return Lists.row(of, Profile.STANDARD, labels, cells);
  }

  private static Object said(String kind, String label, String cell) {
    Understood row = read(kind, label, cell);
    assertNotNull(row.entry(), () -> row.problems().toString());
    return row.entry().said().get(label.replaceFirst(" \\[.*", ""));
  }

  private static String told(Object said) {
    if (said instanceof Reading reading) {
      return reading.value() == null ? "n/t " + reading.notTaken() : told(reading.value());
    }
    return said instanceof Quantity q ? q.value() + " " + q.measure() : String.valueOf(said);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "customers | name              | Harbor Grocers      | Harbor Grocers",
        "customers | name              | =\"00123\"          | 00123",
        "sites     | latitude          | 90                  | 90.0",
        "sites     | latitude          | -90                 | -90.0",
        "sites     | longitude         | -180                | -180.0",
        "sites     | longitude         | 180                 | 180.0",
        "sites     | elevation [m]     | -500                | -500.0 m",
        "sites     | elevation [ft]    | 5280                | 5280.0 ft",
        "sites     | time_zone         | America/Los_Angeles | America/Los_Angeles",
        "sites     | jurisdiction      | us-or               | US-OR",
        "sites     | jurisdiction      | DE                  | DE",
        "sites     | surroundings      | Greasy              | greasy",
        "sites     | visiting_hours    | Mo-Fr 22:00-26:00; Sa off | Mo-Fr 22:00-26:00; Sa off",
        "sites     | visiting_hours    | 24/7                | 24/7",
        "units     | kind              | Walk-in Cooler      | walk-in-cooler",
        "units     | installed         | 2009-04-30          | 2009-04-30",
        "units     | installed         | 2009-4-30 00:00:00  | 2009-04-30",
        "units     | installed         | 1900-01-01          | 1900-01-01",
        "units     | installed         | 30.04.2009          | 2009-04-30",
        "units     | installed         | 39933               | 2009-04-30",
        "units     | serial            | '''00123'           | 00123",
        "units     | retired           | 2030-12-31          | 2030-12-31",
        "units     | retired           | 31.12.30            | 2030-12-31",
        "units     | installed         | 31.12.30            | 1930-12-31",
        "units     | refrigerant       | r404a               | R-404A",
        "units     | high_cutout [psig]| 2.7E+2              | 270.0 psig",
        "units     | charge [oz]       | 24                  | 24.0 oz",
        "units     | replacement_cost [EUR] | 12500          | 12500.0 EUR",
        "visits    | date              | 2026-07-02          | 2026-07-02",
        "visits    | head_pressure [psig] | 117              | 117.0 psig",
        "visits    | head_pressure [psig] | +117.5           | 117.5 psig",
        "visits    | head_pressure [psig] | 8.1 barg         | 8.1 barg",
        "visits    | head_pressure [psig] | -14.696          | -14.696 psig",
        "visits    | suction_pressure [psia] | 0             | 0.0 psia",
        "visits    | suction_pressure [kPa]  | 0             | 0.0 kPa",
        "visits    | suction_pressure [psig] | n/t: port blocked by shelving"
            + " | n/t port blocked by shelving",
        "visits    | suction_pressure [psig] | N/T no access | n/t no access",
        "visits    | ambient [degC]       | \u22125          | -5.0 degC",
        "visits    | compressor [A]       | 0                | 0.0 A",
        "visits    | condenser_coil       | Heavy            | Grade[grade=heavy]",
        "visits    | work | Condenser coil cleaned; inspected ;inspected"
            + " | [condenser-coil-cleaned, inspected]",
        "technicians | competences       | refrigerant; electrical | [refrigerant, electrical]",
        "technicians | days_off          | 2026-11-27          | [2026-11-27]",
        "technicians | days_off | 2026-11-27; 2026-12-24/2027-01-02;2026-11-27;"
            + " | [2026-11-27, 2026-12-24/2027-01-02]",
        "technicians | days_off          | 2026-12-24 / 2026-12-24 | [2026-12-24]",
        "technicians | days_off          | 11/27/2026;39933    | [2026-11-27, 2009-04-30]",
        "travel-times | distance [mi]    | 9                   | 9.0 mi",
      })
  void aGoodCellIsTaken(String kind, String label, String cell, String value) {
    assertEquals(value, told(said(kind, label, cell)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sites     | latitude          | 90.0001             | out-of-range",
        "sites     | latitude          | -90.0001            | out-of-range",
        "sites     | longitude         | 180.0001            | out-of-range",
        "sites     | latitude          | 45 N                | not-a-number",
        "sites     | latitude          | 45,5                | not-a-number",
        "sites     | elevation [m]     | -501                | out-of-range",
        "sites     | elevation [ft]    | 29528               | out-of-range",
        "sites     | time_zone         | Pacific             | unknown-zone",
        "sites     | time_zone         | +05:00              | unknown-zone",
        "sites     | jurisdiction      | Oregon              | unknown-country",
        "sites     | jurisdiction      | ZZ                  | unknown-country",
        "sites     | surroundings      | oily                | unknown-code",
        "sites     | visiting_hours    | weekdays            | not-hours",
        "sites     | visiting_hours    | Mo-Fr 07:60-12:00   | not-hours",
        "sites     | visiting_hours    | Mo-Fr 48:01-50:00   | not-hours",
        "sites     | visiting_hours    | ;                   | not-hours",
        "units     | kind              | walk in coolr       | unknown-code",
        "units     | installed         | 1899-12-31          | out-of-range",
        "units     | installed         | 2009-02-29          | not-a-date",
        "units     | installed         | 2009-13-01          | not-a-date",
        "units     | installed         | 04/05/2009          | ambiguous-date",
        "units     | installed         | spring 2009         | not-a-date",
        "units     | unit              | -                   | not-erasable",
        "units     | unit              | ''                  | missing",
        "units     | kind              | -                   | not-erasable",
        "units     | kind              | ' '                 | missing",
        "units     | replacement_cost [USD] | 9 kg           | unknown-measure",
        "visits    | date              | 2026-07-03          | out-of-range",
        "visits    | date              | 31/02/2015          | not-a-date",
        "visits    | head_pressure [psig] | -14.7            | out-of-range",
        "visits    | head_pressure [psig] | 3001             | out-of-range",
        "visits    | suction_pressure [psia] | -0.01         | out-of-range",
        "visits    | suction_pressure [kPag] | -101.4        | out-of-range",
        "visits    | head_pressure [psig] | high             | not-a-number",
        "visits    | head_pressure [psig] | 117 psig?        | not-a-number",
        "visits    | head_pressure [psig] | 117 degF         | unknown-measure",
        "visits    | head_pressure [psig] | 1,170            | not-a-number",
        "visits    | head_pressure [psig] | NaN              | not-a-number",
        "visits    | head_pressure [psig] | 0x1p3            | not-a-number",
        "visits    | head_pressure [psig] | 1e999            | not-a-number",
        "visits    | head_pressure [psig] | n/t              | reason-missing",
        "visits    | head_pressure [psig] | n/t:             | reason-missing",
        "visits    | compressor [A]       | -0.1             | out-of-range",
        "visits    | condenser_coil       | worn             | unknown-code",
        "visits    | work                 | cleaned          | unknown-code",
        "visits    | work                 | ;                | unknown-code",
        "units     | charge [lb]          | n/t: no label    | not-a-number",
        "technicians | days_off           | 2027-01-02/2026-12-24 | not-a-date",
        "technicians | days_off           | 2026-11-27;2026-12-24/2027-02-29 | not-a-date",
        "technicians | days_off           | 2026-12-24/01-02 | not-a-date",
        "technicians | days_off           | christmas        | not-a-date",
        "technicians | days_off           | 05/06/2026       | ambiguous-date",
        "technicians | days_off           | 2126-11-27       | out-of-range",
        "technicians | days_off           | ;                | not-a-date",
        "faults    | repaired             | 2026-06-29       | out-of-range",
        "travel-times | minutes           | -1               | out-of-range",
      })
  void aBadCellRejectsItsRow(String kind, String label, String cell, String code) {
    Understood row = read(kind, label, cell);
    assertNull(row.entry());
    RowProblem problem = row.problems().get(0);
    assertEquals(code, problem.code().text(), problem.message());
    assertEquals(2, problem.row());
    assertEquals(label, problem.column());
    assertEquals(cell, problem.value());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "visits | date                 | 31/02/2015  | 2026-05-31",
        "visits | date                 | 2026-02-29  | there is no day 29 in 2026-02",
        "visits | date                 | 05/06/2026  | can be two days",
        "visits | head_pressure [psig] | high        | n/t: reason",
        "visits | head_pressure [psig] | 1,170       | thousands without any sign",
        "visits | head_pressure [kPag] | -120        | from -101.33 to 20684 kPag",
        "visits | compressor [A]       | -3          | from 0 to 5000 A",
        "visits | condenser_coil       | hevy        | Did you mean heavy?",
        "sites  | time_zone            | America/New_Yrok | Did you mean America/New_York?",
        "units  | kind                 | walk in coolr    | Did you mean walk-in-cooler?",
        "sites  | visiting_hours       | Mo-Fr 07:60      | '07:60'",
        "technicians | days_off        | 2027-01-02/2026-12-24 | ends before it begins",
        "technicians | days_off        | 2026-12-24/01-02 | 2026-11-27;2026-12-24/2027-01-02",
      })
  void theMessageSaysHowToMend(String kind, String label, String cell, String part) {
    String message = read(kind, label, cell).problems().get(0).message();
    assertTrue(message.contains(part), message);
  }

  @Test
  void anEmptyCellSaysNothingAndAHyphenErases() {
    assertTrue(!read("visits", "note", "").entry().said().containsKey("note"));
    assertEquals(Entry.ERASED, said("visits", "note", "-"));
    assertEquals(Entry.ERASED, said("visits", "head_pressure [psig]", " - "));
  }

  @Test
  void textIsKeptUpToItsLength() {
    assertEquals("x".repeat(400), said("customers", "name", "x".repeat(400)));
    RowProblem problem = read("customers", "name", "x".repeat(401)).problems().get(0);
    assertEquals("too-long", problem.code().text());
    assertEquals(81, problem.value().length());
    assertEquals("not-text", read("customers", "name", "a\u0007b").problems().get(0).code().text());
  }

  @Test
  void anUnknownRefrigerantIsKeptWithAWarning() {
    Understood row = read("units", "refrigerant", "R-404");
    assertEquals("R-404", row.entry().said().get("refrigerant"));
    assertEquals("unknown-refrigerant", row.problems().get(0).code().text());
    assertTrue(row.problems().get(0).message().contains("Did you mean R-404A?"));
  }

  @Test
  void allThatIsWrongWithARowIsToldAtOnce() {
    Understood row =
        Lists.row(
            Kind.VISITS,
            Profile.STANDARD,
            List.of("customer", "site", "unit", "visit", "date", "compressor [A]", "door"),
            List.of("C", "S", "U", "", "soon", "-1", "ajar"));
    assertEquals(
        List.of("missing", "not-a-date", "out-of-range", "unknown-code"),
        row.problems().stream().map(problem -> problem.code().text()).toList());
  }
}

package coldround.fleet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Atmosphere;
import coldround.quantity.Quantity;
import coldround.refrigerant.Refrigerants;
import coldround.table.RuleTables;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which readings are not believed, on both sides of each limit, and which slip is told. */
class PlausibilityTest {

  private static final Plausibility PLAUSIBILITY = plausibility();

  private static Plausibility plausibility() {
    RuleTables tables = new RuleTables("scoring", null);
    Plausibility loaded = Plausibility.load(tables, Refrigerants.load(tables));
    tables.check();
    return loaded;
  }

  private static Unit unit(String refrigerant) {
    return new Unit(
        "u1",
        "C",
        "S",
        "U",
        "walk-in-cooler",
        "",
        "",
        "",
        "",
        null,
        refrigerant,
        "roof",
        null,
        Map.of(
            "compressor_rated", Quantity.of(10, "A"),
            "condenser_fan_rated", Quantity.of(0.8, "A"),
            "supply", Quantity.of(208, "V"),
            "charge", Quantity.of(10, "lb")));
  }

  /** Readings as "ambient 70 degF; head_pressure 117 psig", all believed so far. */
  private static Visit visit(String readings) {
    List<Reading> taken = new ArrayList<>();
    for (String one : readings.split(";")) {
      String[] parts = one.strip().split(" ");
      taken.add(Reading.taken(parts[0], Quantity.of(Double.parseDouble(parts[1]), parts[2])));
    }
    return new Visit(
        "1", LocalDate.of(2026, 5, 1), "", "", taken, Map.of(), List.of(), List.of(), "");
  }

  private static Visit checked(String refrigerant, String readings) {
    return PLAUSIBILITY.checked(visit(readings), unit(refrigerant), Atmosphere.SEA_LEVEL_KPA);
  }

  private static String suspects(Visit visit) {
    return visit.readings().stream()
        .filter(reading -> !reading.usable())
        .map(Reading::quantity)
        .collect(Collectors.joining(" "));
  }

  // R-12 condenses at 100 degF under about 117 psig: ASHRAE Handbook - Fundamentals, from memory
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "R-12   | ambient 70 degF; head_pressure 117 psig                |",
        "R-12   | ambient 70 degF; head_pressure 1170 psig               | head_pressure",
        "R-12   | ambient 70 degF; head_pressure 807 psig                | head_pressure",
        "R-12   | ambient 70 degF; head_pressure 117 kPag                | head_pressure",
        "R-12   | head_pressure 1170 psig                                | head_pressure",
        "R-12   | head_pressure 117 psig                                 |",
        "R-12   | ambient 70 degC; head_pressure 117 psig                | ambient",
        "R-404A | ambient 139 degF                                       |",
        "R-404A | ambient 141 degF                                       | ambient",
        "R-404A | box -61 degF                                           | box",
        "R-404A | compressor 79 A                                        |",
        "R-404A | compressor 200 A                                       | compressor",
        "R-404A | condenser_fan 8.0 A                                    | condenser_fan",
        "R-404A | condenser_fan 0 A                                      |",
        "R-404A | voltage_l1_l2 20.8 V                                   | voltage_l1_l2",
        "R-404A | voltage_l1_l2 120 V                                    |",
        "R-404A | voltage_l1_l2 0 V                                      |",
        "R-404A | refrigerant_added 29 lb                                |",
        "R-404A | refrigerant_added 31 lb                                | refrigerant_added",
        "R-404A | head_pressure 250 psig; suction_pressure 250 psig      |",
        "R-404A | head_pressure 34 psig; suction_pressure 39 psig        |",
        "R-404A | head_pressure 34 psig; suction_pressure 40 psig        | suction_pressure",
        "R-404A | head_pressure 228 psig; suction_pressure 0 psig        |",
        "R-404A | ambient 78 degF; head_pressure 228 psig; suction_pressure 340 psig"
            + " | suction_pressure",
        "R-744  | ambient 95 degF; head_pressure 1400 psig               |",
        "what   | ambient 70 degF; head_pressure 1170 psig               |",
      })
  void whatCannotBeIsNotBelieved(String refrigerant, String readings, String suspects) {
    assertEquals(suspects == null ? "" : suspects, suspects(checked(refrigerant, readings)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "R-12   | ambient 70 degF; head_pressure 1170 psig | 117 psig (decimal point)",
        "R-12   | ambient 70 degF; head_pressure 807 psig  | 807 kPag (unit of measure)",
        "R-12   | ambient 70 degF; head_pressure 8.1 psig  | 8.10 barg (unit of measure)",
        "R-12   | ambient 70 degF; head_pressure 117 kPag  | 117 psig (unit of measure)",
        "R-12   | ambient 70 degC; head_pressure 117 psig  | 70.0 °F (unit of measure)",
        "R-404A | compressor 200 A                         | 20.00 A (decimal point)",
        "R-404A | voltage_l1_l2 2080 V                     | 208 V (decimal point)",
        "R-404A | refrigerant_added 48 lb                  | 48 oz (unit of measure)",
      })
  void theLikelySlipIsNamed(String refrigerant, String readings, String slip) {
    String told =
        checked(refrigerant, readings).readings().stream()
            .map(Reading::suspect)
            .collect(Collectors.joining());
    assertTrue(told.contains(slip), told);
  }

  @Test
  void aConfirmedValueIsBelieved() {
    Visit odd = visit("compressor 200 A");
    Visit confirmed = odd.with(List.of(odd.readings().get(0).asConfirmed()));
    assertSame(confirmed, PLAUSIBILITY.checked(confirmed, unit("R-12"), Atmosphere.SEA_LEVEL_KPA));
  }

  @Test
  void aDoubtGoesWhenItsReasonIsGone() {
    Visit doubted = checked("R-12", "ambient 70 degF; head_pressure 807 psig");
    assertEquals("head_pressure", suspects(doubted));
    Visit again = PLAUSIBILITY.checked(doubted, unit("R-744"), Atmosphere.SEA_LEVEL_KPA);
    assertEquals("", suspects(again));
  }
}

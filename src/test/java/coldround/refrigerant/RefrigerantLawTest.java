package coldround.refrigerant;

import static coldround.refrigerant.Tables.refrigerant;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import coldround.reason.Reason;
import coldround.table.BadTables;
import coldround.table.RuleTables;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefrigerantLawTest {

  private static final RefrigerantLaw LAW = law();
  private static final LocalDate TODAY = LocalDate.of(2026, 7, 1);

  private static RefrigerantLaw law() {
    RuleTables tables = new RuleTables("scoring", null);
    RefrigerantLaw read = RefrigerantLaw.load(tables);
    tables.check();
    return read;
  }

  private static Supply on(String gas, String place, String kind, LocalDate date) {
    return LAW.supply(refrigerant(gas), place, date, date, true, kind);
  }

  private static Supply over(String gas, String place, String kind, int years) {
    return LAW.supply(refrigerant(gas), place, TODAY, TODAY.plusYears(years), true, kind);
  }

  private static Optional<Reason> reason(Supply supply, String code) {
    return supply.reasons().stream().filter(reason -> reason.code().equals(code)).findFirst();
  }

  private static String told(Supply supply) {
    return String.join("\n", supply.reasons().stream().map(r -> r.text(MeasureSystem.US)).toList());
  }

  // production and import shares of baseline, the reclaimed credit of supply-credit.csv on top:
  // CFC Montreal Protocol art. 2A; HCFC-22 40 CFR 82.16(d) and 42 USC 7671d(b)(2); HFC 40 CFR
  // 84.7(a), here of a gas whose GWP feels the whole cut; Kigali art. 2J and art. 5(8 qua)
  @ParameterizedTest
  @CsvSource({
    "R-12, US, 1995-12-31, 1.00",
    "R-12, US, 1996-01-01, 0.10",
    "R-502, US, 2026-07-01, 0.10",
    "R-22, US, 2019-12-31, 1.00",
    "R-22, US, 2020-01-01, 0.25",
    "R-409A, US, 2026-07-01, 0.25",
    "R-123, US, 2029-12-31, 0.40",
    "R-123, US, 2030-01-01, 0.15",
    "R-404A, US, 2021-12-31, 1.00",
    "R-404A, US, 2022-01-01, 0.95",
    "R-404A, US, 2023-12-31, 0.95",
    "R-404A, US, 2024-01-01, 0.65",
    "R-404A, US, 2028-12-31, 0.65",
    "R-404A, US, 2029-01-01, 0.35",
    "R-404A, US, 2034-01-01, 0.30",
    "R-404A, US, 2036-01-01, 0.25",
    "R-404A, US-CA, 2024-12-31, 0.65",
    "R-404A, US-CA, 2025-01-01, 0.05",
    "R-410A, US-CA, 2025-01-01, 0.65",
    "R-404A, DE, 2024-12-31, 0.36",
    "R-404A, DE, 2025-01-01, 0.05",
    "R-404A, DE, 2029-12-31, 0.05",
    "R-404A, DE, 2030-01-01, 0.00",
    "R-410A, DE, 2026-07-01, 0.293",
    "R-22, DE, 2009-12-31, 1.00",
    "R-22, DE, 2010-01-01, 0.25",
    "R-22, DE, 2015-01-01, 0.00",
    "R-12, DE, 2001-01-01, 0.00",
    "R-404A, GB, 2026-07-01, 0.65",
    "R-404A, BR, 2028-12-31, 1.00",
    "R-404A, BR, 2029-01-01, 0.95",
    "R-404A, IN, 2026-07-01, 1.00",
    "R-22, BR, 2025-01-01, 0.575",
    "R-22, BR, 2040-01-01, 0.15",
    "R-22, CA, 2030-01-01, 0.15"
  })
  void supplyStepsOnTheDatesOfTheLaw(String gas, String place, LocalDate date, double share) {
    assertEquals(share, on(gas, place, "walk-in-cooler", date).share(), 1e-9);
  }

  // 40 CFR 84.7 counts exchange values: of R-32 (675) a cut of 40 % takes 675/2000 of that
  @ParameterizedTest
  @CsvSource({"R-32, 0.915", "R-134a, 0.764", "R-454C, 1.0", "R-410A, 0.65", "R-404A, 0.65"})
  void aGasOfLowGwpFeelsLessOfAQuota(String gas, double share) {
    assertEquals(share, on(gas, "US", "", TODAY).share(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"R-290", "R-744", "R-717", "R-1234yf", "R-600a"})
  void naturalsAndOlefinsHaveNoPhaseOut(String gas) {
    for (String place : List.of("US", "DE", "IN", "", "GB")) {
      Supply supply = over(gas, place, "reach-in-cooler", 15);
      assertEquals(1, supply.share());
      assertEquals("no-phase-out", supply.reasons().get(0).code());
    }
  }

  @Test
  void theMeanIsWeightedByDays() {
    LocalDate from = LocalDate.of(2028, 1, 1);
    LocalDate to = LocalDate.of(2030, 1, 1);
    Supply supply = LAW.supply(refrigerant("R-404A"), "US", from, to, true);
    // 366 days at 60 + 5 %, 365 days at 30 + 5 %
    assertEquals((366 * 0.65 + 365 * 0.35) / 731, supply.share(), 1e-12);
    assertTrue(told(supply).contains("Between 2028-01-01 and 2030-01-01"), told(supply));
  }

  @Test
  void r22InTheUnitedStatesMayBeServicedWithoutEnd() {
    Supply supply = over("R-22", "US", "walk-in-freezer", 8);
    String told = told(supply);
    assertTrue(told.contains("From 2020-01-01 no new R-22 may be made or imported"), told);
    assertTrue(told.contains("40 CFR 82.16(d)"), told);
    assertTrue(reason(supply, "service-allowed").isPresent(), told);
    assertTrue(told.contains("its successor needs another gas; ask the equipment maker"), told);
    assertFalse(told.contains("2030-01-01 no new"), told);
  }

  @Test
  void r404aInTheUnionLosesServiceWithNewGasThenWithReclaimed() {
    Supply supply = over("R-404A", "FR", "walk-in-freezer", 8);
    assertTrue(reason(supply, "service-ban").isPresent());
    assertTrue(reason(supply, "reclaimed-service-ban").isPresent());
    assertTrue(reason(supply, "service-allowed").isEmpty());
    String told = told(supply);
    assertTrue(told.contains("From 2025-01-01 service with new R-404A is banned"), told);
    assertTrue(told.contains("From 2030-01-01 service with reclaimed R-404A is banned"), told);
  }

  @Test
  void servicingBansOfRefrigerationAreNotThoseOfAirConditioning() {
    LocalDate date = LocalDate.of(2025, 6, 1);
    assertEquals(0.293, on("R-404A", "DE", "chiller", date).share(), 1e-9);
    assertEquals(0.05, on("R-404A", "DE", "chiller", LocalDate.of(2026, 1, 1)).share(), 1e-9);
  }

  @Test
  void aBanIsToldOnceAndTheShareCanBeWorkedOutAgain() {
    Supply supply = over("R-404A", "US-CA", "walk-in-cooler", 8);
    assertEquals(1, supply.reasons().stream().filter(r -> r.code().equals("sale-ban")).count());
    String low = told(over("R-448A", "US", "walk-in-cooler", 1));
    assertTrue(low.contains("R-448A (GWP 1387) feels 69.4 % of its cut"), low);
    assertTrue(low.contains("60.0 % of the baseline"), low);
    assertTrue(low.contains("reclaimed gas and stock count for 5.0 %"), low);
    assertEquals(1 - 0.4 * 1387 / 2000 + 0.05, over("R-448A", "US", "", 1).share(), 1e-12);
  }

  @Test
  void anExistingUnitIsNeverCalledIllegal() {
    for (Refrigerant gas : Tables.REFRIGERANTS.all()) {
      for (String place : List.of("US", "US-CA", "DE", "GB", "BR", "")) {
        Supply supply = LAW.supply(gas, place, TODAY, TODAY.plusYears(20), true, "display-case");
        assertFalse(told(supply).toLowerCase(Locale.ROOT).contains("illegal"));
        assertFalse(supply.reasons().isEmpty());
      }
    }
  }

  @Test
  void supersededLimitsDoNotDecideAndAssumedOnesSaySo() {
    Supply supply = over("R-404A", "US", "walk-in-cooler", 8);
    assertTrue(reason(supply, "new-equipment-limit").isEmpty());
    Reason assumed = reason(supply, "new-equipment-limit-assumed").orElseThrow();
    assertEquals("US-TT26-RCU", assumed.source().row());
    assertTrue(assumed.source().citation().contains("assumed: check"), assumed.source().toString());
    // the figure of 2023 that the 2026 rule replaced would have caught R-454A; nothing does now
    Supply low = over("R-448A", "US", "walk-in-cooler", 8);
    assertTrue(reason(low, "new-equipment-limit-assumed").isEmpty(), told(low));
  }

  // 40 CFR 84.54(a): 150 for new stand-alone units from 2025-01-01, read
  @Test
  void aReadLimitForNewEquipmentNamesItsDate() {
    Supply supply = over("R-448A", "US", "reach-in-cooler", 8);
    Reason limit = reason(supply, "new-equipment-limit").orElseThrow();
    assertEquals(LocalDate.of(2025, 1, 1), limit.inputs().get("date"));
    assertEquals(150, limit.inputs().get("gwpLimit"));
    assertFalse(limit.source().citation().contains("check before"));
    Supply bought = LAW.supply(refrigerant("R-448A"), "US", TODAY, TODAY, false, "reach-in-cooler");
    assertTrue(told(bought).contains("a new unit needs another gas"), told(bought));
  }

  @Test
  void rowsFromMemorySaySo() {
    Reason ban = reason(over("R-410A", "DE", "walk-in-cooler", 8), "service-ban").orElseThrow();
    assertEquals("EU-FG-SERV750", ban.source().row());
    assertTrue(ban.source().citation().contains("from memory: check"));
  }

  @ParameterizedTest
  @CsvSource({"''", "XX", "USA", "somewhere"})
  void anUnknownPlaceIsScoredButNotKnown(String place) {
    Supply supply = on("R-404A", place, "", TODAY);
    assertFalse(supply.known());
    assertEquals(0.65, supply.share(), 1e-9);
    assertTrue(reason(supply, "jurisdiction-unknown").isPresent());
  }

  @Test
  void noPlaceAtAllIsUnknownToo() {
    assertFalse(on("R-404A", null, "", TODAY).known());
    assertTrue(on("R-404A", "us-tx ", "", TODAY).known());
  }

  @Test
  void laterSpansNeverHaveMoreOfAGasThatIsPhasedOut() {
    for (int year = 2022; year < 2060; year++) {
      double now = LAW.supply(refrigerant("R-410A"), "DE", day(year), day(year + 5), true).share();
      double later =
          LAW.supply(refrigerant("R-410A"), "DE", day(year + 1), day(year + 6), true).share();
      // the credit for reclaimed gas rises once, in 2030
      assertTrue(later <= now + 0.05 / 5 + 1e-9, "from " + year);
    }
  }

  private static LocalDate day(int year) {
    return LocalDate.of(year, 1, 1);
  }

  @Test
  void badRowsAreToldWithFileLineAndReason(@TempDir Path folder) throws Exception {
    String packaged = Files.readString(Path.of("scoring/phase-out.csv"));
    String header = packaged.substring(0, packaged.indexOf('\n') + 1);
    int columns = header.split(",").length;
    Files.writeString(
        folder.resolve("phase-out.csv"),
        header
            + row(columns, "A,US,quota-step,HFC,,,,,,2024-01-01,,,yes,read,,,,,s,l,,src")
            + row(columns, "B,US,quota-step,XYZ,,,,,,2024-01-01,,5,yes,read,,,,,s,l,,src")
            + row(columns, "C,US,servicing-reclaimed,HFC,,,,,,,,,yes,read,,,,,s,l,,src")
            + row(columns, "D,US,quota-step,HFC,,,,,,2024-01-01,2023-01-01,5,yes,read,,,,,s,l,,x"));
    RuleTables tables = new RuleTables("scoring", folder);
    RefrigerantLaw.load(tables);
    String told = assertThrows(BadTables.class, tables::check).getMessage();
    assertTrue(told.contains("line 2: share_percent belongs"), told);
    assertTrue(told.contains("line 3: 'XYZ' is not one of"), told);
    assertTrue(told.contains("line 4: effect servicing-reclaimed needs the date"), told);
    assertTrue(told.contains("line 5: ends on 2023-01-01"), told);
    assertTrue(told.contains("DE names a schedule without rules: [EU]"), told);
  }

  private static String row(int columns, String cells) {
    int missing = columns - (cells.length() - cells.replace(",", "").length()) - 1;
    return cells + ",".repeat(missing) + "\n";
  }
}

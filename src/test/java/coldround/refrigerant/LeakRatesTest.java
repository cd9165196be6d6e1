package coldround.refrigerant;

import static coldround.refrigerant.Tables.refrigerant;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.reason.Reason;
import coldround.table.BadTables;
import coldround.table.RuleTables;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Examples of 40 CFR 82.152 and 84.102 unless said otherwise. */
class LeakRatesTest {

  private static final RuleTables TABLES = new RuleTables("scoring", null);
  private static final LeakRates RATES = LeakRates.load(TABLES);
  private static final LeakDuties DUTIES = LeakDuties.load(TABLES);
  private static final LocalDate DAY = LocalDate.of(2026, 10, 20);

  static BigDecimal pounds(String pounds) {
    return ExactMass.kg(new BigDecimal(pounds), Measure.POUND);
  }

  private static GasAddition added(LocalDate date, String pounds) {
    return new GasAddition(date, pounds(pounds), true);
  }

  private static List<GasAddition> additions(String text) {
    return Arrays.stream(text.split(" "))
        .map(cell -> cell.split("="))
        .map(cell -> added(LocalDate.parse(cell[0]), cell[1]))
        .toList();
  }

  private static ChargedCircuit circuit(String gas, String pounds, String category) {
    return ChargedCircuit.of(refrigerant(gas), pounds(pounds), category, "US");
  }

  // (added / charge) x (365 / days since the last addition, at most 365) x 100
  @ParameterizedTest
  @CsvSource({
    "120, 10, 90, 33.80",
    "60, 9, 500, 15.00",
    "60, 6, 91, 40.11",
    "60, 6, 400, 10.00",
    "120, 10, 141, 21.57",
    "60, 6, 365, 10.00",
    "60, 6, 366, 10.00",
    "60, 6, 364, 10.03"
  })
  void annualizingCapsTheDaysAtAYear(String charge, String pounds, int days, String percent) {
    List<GasAddition> additions = List.of(added(DAY.minusDays(days), "3"), added(DAY, pounds));
    LeakRate rate = RATES.annualizing(additions, pounds(charge), DAY).orElseThrow();
    assertEquals(new BigDecimal(percent), rate.rounded(2));
    assertEquals(Double.parseDouble(percent), rate.percentPerYear(), 0.005);
  }

  // the worked boundary: the same additions are over 20 % by one method and not by the other
  @Test
  void theTwoMethodsCanDisagree() {
    List<GasAddition> additions = additions("2026-02-10=6 2026-06-01=8 2026-10-20=10");
    BigDecimal charge = pounds("120");
    LeakRate annualized = RATES.annualizing(additions, charge, DAY).orElseThrow();
    LeakRate rolled = RATES.rollingAverage(additions, charge, DAY, null);
    assertEquals(new BigDecimal("21.57"), annualized.rounded(2));
    assertEquals(new BigDecimal("20.00"), rolled.rounded(2));
    ChargedCircuit circuit = circuit("R-404A", "120", "commercial-refrigeration");
    assertTrue(DUTIES.judge(annualized, circuit).over());
    assertFalse(DUTIES.judge(rolled, circuit).over());
  }

  @Test
  void overMeansStrictlyOverOnExactDecimals() {
    ChargedCircuit circuit = circuit("R-22", "120", "commercial-refrigeration");
    LeakVerdict equal = DUTIES.judge(rolled("24", "120"), circuit);
    assertFalse(equal.over());
    assertTrue(equal.repairDue().isEmpty());
    LeakVerdict over = DUTIES.judge(rolled("24.0000001", "120"), circuit);
    assertTrue(over.over());
    String told = over.reasons().get(0).text(MeasureSystem.US);
    assertTrue(told.contains("20.00000008 % a year"), told);
  }

  // 0.1 + 0.2 lb in doubles is over 0.3 lb; here it is not: 3 x 0.1 of 1.5 lb is 20 %
  @Test
  void whatASpreadsheetSaysIsTakenAsItStands() {
    Quantity tenth = new Quantity(0.1, Measure.POUND);
    List<GasAddition> three =
        List.of(
            GasAddition.of(DAY, tenth),
            GasAddition.of(DAY.minusDays(1), tenth),
            GasAddition.of(DAY.minusDays(2), tenth));
    LeakRate rate = RATES.rollingAverage(three, pounds("1.5"), DAY, null);
    assertFalse(rate.over(new BigDecimal("20")));
    assertTrue(rate.over(new BigDecimal("19.999999999999999")));
  }

  private static LeakRate rolled(String pounds, String charge) {
    return RATES.rollingAverage(List.of(added(DAY, pounds)), pounds(charge), DAY, null);
  }

  // 60 lb unit, repair verified on 2026-05-01, 8 lb added after it: 13.33 %
  @Test
  void theRollingAverageStartsAgainAfterAVerifiedRepair() {
    List<GasAddition> additions = additions("2026-03-01=9 2026-05-01=5 2026-08-01=8");
    LocalDate verified = LocalDate.of(2026, 5, 1);
    LeakRate rate = RATES.rollingAverage(additions, pounds("60"), DAY, verified);
    assertEquals(new BigDecimal("13.33"), rate.rounded(2));
    LeakRate without = RATES.rollingAverage(additions, pounds("60"), DAY, null);
    assertEquals(new BigDecimal("36.67"), without.rounded(2));
    LeakRate longAgo = RATES.rollingAverage(additions, pounds("60"), DAY, LocalDate.of(2020, 1, 1));
    assertEquals(new BigDecimal("36.67"), longAgo.rounded(2));
    LeakRate later = RATES.rollingAverage(additions, pounds("60"), DAY, DAY.plusDays(1));
    assertEquals(new BigDecimal("36.67"), later.rounded(2));
  }

  @Test
  void theRollingYearHas365Days() {
    BigDecimal charge = pounds("100");
    List<GasAddition> additions = List.of(added(DAY.minusDays(364), "5"), added(DAY, "5"));
    assertEquals(10, RATES.rollingAverage(additions, charge, DAY, null).percentPerYear(), 1e-12);
    LeakRate next = RATES.rollingAverage(additions, charge, DAY.plusDays(1), null);
    assertEquals(5, next.percentPerYear(), 1e-12);
  }

  @Test
  void withoutAnEarlierAdditionAYearIsTakenAndSaidSo() {
    LeakRate rate = RATES.annualizing(additions("2026-10-20=6"), pounds("60"), DAY).orElseThrow();
    assertEquals(new BigDecimal("10.00"), rate.rounded(2));
    assertEquals("first-addition", rate.reasons().get(1).code());
    assertTrue(rate.reasons().get(1).source().citation().contains("assumed"));
  }

  @Test
  void additionsOfOneDayAreOne() {
    List<GasAddition> twice = additions("2026-07-21=1 2026-10-20=2 2026-10-20=4");
    LeakRate rate = RATES.annualizing(twice, pounds("60"), DAY).orElseThrow();
    assertEquals(new BigDecimal("40.11"), rate.rounded(2));
  }

  @Test
  void additionsADayApartAreShownAndPointedOut() {
    List<GasAddition> close = additions("2026-10-19=3 2026-10-20=3");
    LeakRate rate = RATES.annualizing(close, pounds("60"), DAY).orElseThrow();
    assertEquals(new BigDecimal("1825.00"), rate.rounded(2));
    assertEquals("additions-close-together", rate.reasons().get(1).code());
  }

  @Test
  void aFirstFillDoesNotCountButItsDateDoes() {
    GasAddition fill = new GasAddition(LocalDate.of(2026, 7, 21), pounds("60"), false);
    List<GasAddition> additions = List.of(fill, added(DAY, "6"));
    assertEquals(
        new BigDecimal("40.11"),
        RATES.annualizing(additions, pounds("60"), DAY).orElseThrow().rounded(2));
    assertEquals(10, RATES.rollingAverage(additions, pounds("60"), DAY, null).percentPerYear());
  }

  @Test
  void whatWasAddedLaterIsNotYetKnown() {
    List<GasAddition> additions = additions("2026-10-20=6");
    assertTrue(RATES.annualizing(additions, pounds("60"), DAY.minusDays(1)).isEmpty());
    LeakRate none = RATES.rollingAverage(additions, pounds("60"), DAY.minusDays(1), null);
    assertEquals(0, none.percentPerYear());
    Optional<LeakRate> rate =
        RATES.rate(LeakMethod.ANNUALIZING, List.of(), pounds("60"), DAY, null);
    assertTrue(rate.isEmpty());
  }

  // thresholds of 40 CFR 82.157(c)(2) from 50 lb and 84.106(c)(2) from 15 lb and 2026-01-01
  @ParameterizedTest
  @CsvSource({
    "R-22, 50, commercial-refrigeration, 2026-10-20, 20",
    "R-22, 49.99, commercial-refrigeration, 2026-10-20, ",
    "R-22, 50, industrial-process-refrigeration, 2026-10-20, 30",
    "R-22, 50, comfort-cooling, 2026-10-20, 10",
    "R-22, 50, light-commercial-air-conditioning, 2026-10-20, 10",
    "R-502, 80, commercial-refrigeration, 2020-01-01, 20",
    "R-404A, 15, commercial-refrigeration, 2026-10-20, 20",
    "R-404A, 14.999, commercial-refrigeration, 2026-10-20, ",
    "R-404A, 60, commercial-refrigeration, 2025-12-31, ",
    "R-404A, 60, commercial-refrigeration, 2026-01-01, 20",
    "R-410A, 60, light-commercial-air-conditioning, 2026-10-20, ",
    "R-410A, 60, comfort-cooling, 2026-10-20, 10",
    "R-454C, 60, commercial-refrigeration, 2026-10-20, 20",
    "R-1234yf, 60, commercial-refrigeration, 2026-10-20, ",
    "R-744, 600, commercial-refrigeration, 2026-10-20, "
  })
  void theThresholdIsThatOfGasChargeAndAppliance(
      String gas, String charge, String category, LocalDate date, BigDecimal threshold) {
    LeakRate rate = RATES.rollingAverage(List.of(added(date, "1000")), pounds(charge), date, null);
    LeakVerdict verdict = DUTIES.judge(rate, circuit(gas, charge, category));
    assertEquals(threshold == null, verdict.thresholdPercent().isEmpty());
    verdict.thresholdPercent().ifPresent(t -> assertEquals(0, t.compareTo(threshold)));
    assertEquals(threshold != null, verdict.over());
  }

  // 40 CFR 82.157(d), 84.106(d): an addition on 2026-03-02 puts it over, repair by 2026-04-01
  @Test
  void theRepairIsDueThirtyDaysLater() {
    LocalDate date = LocalDate.of(2026, 3, 2);
    LeakRate rate = RATES.rollingAverage(List.of(added(date, "30")), pounds("80"), date, null);
    LeakVerdict verdict = DUTIES.judge(rate, circuit("R-404A", "80", "commercial-refrigeration"));
    assertEquals(Optional.of(LocalDate.of(2026, 4, 1)), verdict.repairDue());
    Reason reason = verdict.reasons().get(0);
    assertEquals("leak-rate-over", reason.code());
    String told = reason.text(MeasureSystem.US);
    assertTrue(told.contains("37.50 % a year"), told);
    assertTrue(told.contains("rolling-average"), told);
    assertTrue(told.contains("40 CFR 84.106"), told);
    assertTrue(told.contains("2026-04-01"), told);
  }

  // 40 CFR 82.157(m): 80 lb unit, 100 lb lost in 2026 is 125 %: report by 2027-03-01
  @Test
  void aCircuitThatLosesMoreThanItsChargeInAYearIsReported() {
    ChargedCircuit circuit = circuit("R-22", "80", "commercial-refrigeration");
    List<GasAddition> additions = additions("2025-12-31=50 2026-01-01=40 2026-12-31=60");
    Reason report = DUTIES.chronic(additions, circuit, 2026).orElseThrow();
    assertEquals(LocalDate.of(2027, 3, 1), report.inputs().get("due"));
    List<GasAddition> less = additions("2025-12-31=50 2026-01-01=40 2026-12-31=59.9999");
    assertTrue(DUTIES.chronic(less, circuit, 2026).isEmpty());
  }

  @Test
  void elsewhereNoThresholdIsInvented() {
    LeakRate rate = rolled("30", "120");
    for (String place : List.of("DE", "", "GB")) {
      ChargedCircuit circuit =
          ChargedCircuit.of(
              refrigerant("R-404A"), pounds("120"), "commercial-refrigeration", place);
      LeakVerdict verdict = DUTIES.judge(rate, circuit);
      assertFalse(verdict.over());
      assertEquals("no-leak-threshold", verdict.reasons().get(0).code());
    }
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> added(DAY, "0"));
    assertThrows(
        IllegalArgumentException.class, () -> RATES.annualizing(List.of(), BigDecimal.ZERO, DAY));
    assertThrows(
        IllegalArgumentException.class, () -> ExactMass.kg(new Quantity(3, Measure.AMPERE)));
    assertThrows(IllegalArgumentException.class, () -> circuit("R-22", "50", "kitchen"));
  }

  @Test
  void badRowsAreToldWithFileLineAndReason(@TempDir Path folder) throws Exception {
    String packaged = Files.readString(Path.of("scoring/leak-rules.csv"));
    Files.writeString(
        folder.resolve("leak-rules.csv"),
        packaged
            .replace(",20,%/a,", ",20,d,")
            .replace("DEF-ANNUAL,both,annualizing", "DEF-ANNUAL,both,yearly")
            .replace("--03-01", "1 March"));
    RuleTables tables = new RuleTables("scoring", folder);
    LeakRates.load(tables);
    String told = assertThrows(BadTables.class, tables::check).getMessage();
    assertTrue(told.contains("line 3, column measure: 'd' is not one of [%/a]"), told);
    assertTrue(told.contains("column topic: 'yearly' is not one of"), told);
    assertTrue(told.contains("needs one row of topic annualizing, not 0"), told);
    assertTrue(told.contains("'1 March' is not a day such as --03-01"), told);
  }
}

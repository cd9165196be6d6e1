package coldround.replacement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Fault;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.scoring.statistics.WeibullLife;
import java.time.LocalDate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutlookTest {

  private static final Terms TEN = Sample.terms(10);

  @Test
  void keepingGrowsDearerWithAgeAndFaults() {
    UnitOutlook quiet = Sample.of("walk-in-cooler", 2020).outlook(TEN);
    UnitOutlook troubled =
        Sample.of("walk-in-cooler", 2020).faults(6, "compressor-no-start").outlook(TEN);
    assertTrue(troubled.keeping().get(0).repairs() > 2 * quiet.keeping().get(0).repairs());
    for (int year = 1; year < 10; year++) {
      assertTrue(quiet.keeping().get(year).total() > quiet.keeping().get(year - 1).total());
      assertTrue(quiet.dying()[year] > quiet.dying()[year - 1]);
    }
  }

  // 0.5 + 0.5 (3.5/5)^2 at age 3 and a reference age of 5 years, Weibull shape 3: by hand
  @Test
  void faultsGrowWithTheHazardUpToTheCap() {
    Ageing ageing = new Ageing(WeibullLife.ofMedian(10, 3), 0.5, 4, 0.5);
    assertEquals(0.5 + 0.5 * 0.49, ageing.level(3), 1e-12);
    assertEquals(0.5 + 0.5 * 4, ageing.level(30), 1e-12);
    assertEquals(ageing.level(8) / ageing.level(3), ageing.growth(3, 8), 1e-12);
  }

  // what a trend adds halves every year (trend-persistence), on top of the growth with age; by hand
  // from the assessment, the plan beginning half a year (184 days) after the day of judgement
  @Test
  void aBurstOfFaultsFadesToTheUsualRateOfTheUnit() {
    Sample burst = Sample.of("walk-in-cooler", 1990);
    for (int daysAgo : new int[] {171, 147, 141, 119, 113, 33}) {
      LocalDate date = Sample.TODAY.minusDays(daysAgo);
      burst.faults.add(new Fault(date, "high-head-lockout", "", date, null, null, ""));
    }
    var its = burst.assessed().faults();
    double usual = its.posterior().mean();
    assertTrue(its.expectedNextYear() > 2 * usual, its.toString());
    UnitOutlook unit = burst.outlook(TEN);
    for (int year = 0; year < 10; year++) {
      double left = Math.pow(0.5, 184 / 365.25 + year);
      double expected = usual + (its.expectedNextYear() - usual) * left;
      // so old that age adds no more
      assertEquals(expected, unit.keeping().get(year).faults(), 1e-9);
    }
    assertTrue(
        unit.reasons()
            .get(0)
            .text(MeasureSystem.US)
            .contains("the latest 2026-02-10 high-head lockout"),
        unit.reasons().get(0).text(MeasureSystem.US));
  }

  // hand calculation from costs.csv and economics.csv: 12 lb of R-404A, 5 % a year, 18 a pound
  @Test
  void refrigerantCostsMoreAsItsSupplyFalls() {
    UnitOutlook unit = Sample.of("walk-in-cooler", 2020).outlook(TEN);
    double first = unit.keeping().get(0).refrigerant();
    double last = unit.keeping().get(9).refrigerant();
    assertTrue(first >= 12 * 0.05 * 18 - 1e-9, "" + first);
    assertTrue(last > 1.2 * first, first + " to " + last);
  }

  @Test
  void thePriceIsTheUnitsOwnBeforeThatOfItsKind() {
    assertEquals(8100, Sample.of("walk-in-cooler", 2020).outlook(TEN).replacing().price());
    UnitOutlook own = Sample.of("walk-in-cooler", 2020).price(12500).outlook(TEN);
    assertEquals(12500, own.replacing().price());
    assertTrue(own.replacing().own());
    // 12500 + 350 disposal + 12 lb at 12 a pound
    assertEquals(12500 + 350 + 144, own.prices()[0], 1e-6);
  }

  // by hand with the six-tenths rule: 208 V x 20 A x 0.7 x 0.85 (upkeep-limits.csv) is 2.475 kW
  // where
  // 2 kW are usual (energy-use.csv); costs.csv has 8,100 USD for a walk-in cooler, 5,000 to 14,000
  @ParameterizedTest
  @CsvSource({"208, 20, 9205", "208, 600, 14000", "230, 0.1, 5000"})
  void aPriceByKindFollowsTheSizeWithinTheRangeOfTheTable(
      double volts, double amps, double expected) {
    Sample sized = Sample.of("walk-in-cooler", 2020);
    sized.plate.put("supply", Quantity.of(volts, "V"));
    sized.plate.put("compressor_rated", Quantity.of(amps, "A"));
    ReplacingCost replacing = sized.outlook(TEN).replacing();
    assertEquals(expected, replacing.price(), 1);
    assertFalse(replacing.own());
    assertEquals(9900, sized.price(9900).outlook(TEN).replacing().price());
  }

  @Test
  void aKindWithoutPriceIsSaid() {
    Sample unknown = Sample.of("wine-cabinet", 2020);
    NoPrice none = assertThrows(NoPrice.class, () -> unknown.outlook(TEN));
    assertTrue(none.getMessage().contains("wine-cabinet"), none.getMessage());
  }

  @Test
  void anOldTroubledUnitIsReplacedBeforeANewQuietOne() {
    UnitOutlook old = Sample.of("walk-in-cooler", 2006).faults(9, "compressor-failed").outlook(TEN);
    UnitOutlook young = Sample.of("walk-in-cooler", 2024).outlook(TEN);
    assertEquals(0, old.bestYear(TEN.discount()).year());
    assertTrue(young.bestYear(TEN.discount()).year() > 3);
  }

  @Test
  void everyOutlookSaysWhatItRestsOn() {
    UnitOutlook unit = Sample.of("walk-in-cooler", 2012).faults(3, "coil-iced").outlook(TEN);
    assertTrue(unit.reasons().size() >= 5);
    unit.reasons()
        .forEach(
            reason -> {
              assertFalse(reason.text(MeasureSystem.US).contains("{"));
              assertFalse(reason.source().citation().isEmpty());
            });
  }

  @Test
  void moneyOfTheYearsAndMoneyOfTodayAreWorthTheSame() {
    UnitOutlook unit = Sample.of("walk-in-cooler", 2010).outlook(TEN);
    Terms nominal = new Terms(Sample.TODAY, 2027, 10, TEN.discount(), 0.03, true);
    Discount asked = Discount.nominal(0.07, 0.03);
    double today = unit.keeping().get(4).total() * TEN.discount().spv(4);
    double told = unit.keeping().get(4).total() * nominal.told(4) * asked.spv(4);
    assertEquals(today, told, 1e-9);
  }

  // mean of the drawn numbers against the mean of their distributions
  @Test
  void theDrawsHaveTheMeansTheyShould() {
    int runs = 20000;
    assertEquals(
        0.4, mean(runs, run -> new Chance(1, run, 3).gamma(0.4)), 5 * Math.sqrt(0.4 / runs));
    assertEquals(7, mean(runs, run -> new Chance(1, run, 3).gamma(7)), 5 * Math.sqrt(7.0 / runs));
    assertEquals(
        1, mean(runs, run -> new Chance(1, run, -1).lognormal(0.15)), 5 * 0.15 / Math.sqrt(runs));
    assertEquals(
        2.3,
        mean(runs, run -> Chance.poisson(2.3, new Chance(2, run, 0).uniform())),
        5 * Math.sqrt(2.3 / runs));
  }

  private static double mean(int runs, java.util.function.IntToDoubleFunction draw) {
    return IntStream.range(0, runs).mapToDouble(draw).average().orElseThrow();
  }

  @Test
  void theSimulationAgreesWithTheClosedForm() {
    UnitOutlook unit = Sample.of("walk-in-cooler", 2014).faults(3, "coil-iced").outlook(TEN);
    PlanOrder order = Sample.order(TEN, 8000);
    for (int year : new int[] {0, 3, 7, 10}) {
      Policy policy = new Policy("x", "x", new int[] {year});
      Policy.Outcome outcome =
          new Simulation(java.util.List.of(unit), order, Sample.ECONOMICS)
              .compare(java.util.List.of(policy))
              .get(0);
      assertEquals(outcome.expected().today(), outcome.mean(), 4 * outcome.standardError());
      assertTrue(outcome.standardError() < 0.02 * outcome.mean());
    }
  }

  @Test
  void aFlipIsWhereTheBestYearChanges() {
    UnitOutlook unit = Sample.of("walk-in-cooler", 2014).faults(3, "coil-iced").outlook(TEN);
    int now = unit.bestYear(TEN.discount()).year();
    Sensitivity price = Sensitivity.of(unit, TEN.discount()).get(0);
    double at = price.above().orElse(price.below().orElseThrow());
    double inside = at > 1 ? at - 0.01 : at + 0.01;
    assertEquals(now, unit.times(inside, 1, 1, 1).bestYear(TEN.discount()).year());
    assertTrue(now != unit.times(at, 1, 1, 1).bestYear(TEN.discount()).year());
  }
}

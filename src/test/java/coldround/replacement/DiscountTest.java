package coldround.replacement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DiscountTest {

  // SPV, UPV and A/P as defined in NIST Handbook 135 (formulas from memory), at the 3 % real rate
  // of
  // 10 CFR 436.14; the ten digits were computed outside this program
  @ParameterizedTest
  @CsvFileSource(resources = "/replacement/discount-3-percent.csv", numLinesToSkip = 1)
  void factorsAtThreePercent(int years, double spv, double upv, double annualWorth) {
    Discount discount = new Discount(0.03);
    assertEquals(spv, discount.spv(years), 1e-9);
    assertEquals(upv, discount.upv(years), 1e-9);
    assertEquals(annualWorth, discount.annualWorth(years), 1e-9);
  }

  // UPV* of the same handbook, computed outside this program
  @Test
  void anAmountThatGrows() {
    assertEquals(12.86831937, new Discount(0.03).upvEscalating(0.01, 15), 1e-8);
    assertEquals(15, new Discount(0.03).upvEscalating(0.03, 15), 1e-9);
    assertEquals(15, new Discount(0).upv(15), 1e-9);
  }

  // printed in the manual of the R package EngrEcon, after the textbooks of Newnan et al. and White
  // et
  // al.: 30000 a year at 8 % for 30 years; 30000 once after 30 years
  @Test
  void printedTextbookValues() {
    assertEquals(337733.5, 30000 * new Discount(0.08).upv(30), 0.05);
    assertEquals(2981.32, 30000 * new Discount(0.08).spv(30), 0.005);
  }

  // the same manual: gradient of 3000 a year at 8 % for 30 years, printed from a factor of four
  // decimals
  @Test
  void aGradientIsASumOfSinglePresentValues() {
    double present = 0;
    for (int year = 1; year <= 30; year++) {
      present += 3000 * (year - 1) * new Discount(0.08).spv(year);
    }
    assertEquals(310367.40, present, 0.15);
  }

  // 3 % real with 2.3 % inflation is 5.369 % nominal, by (1 + D) = (1 + d)(1 + i)
  @Test
  void realAndNominalRatesLeadToEachOther() {
    Discount nominal = Discount.nominal(0.03, 0.023);
    assertEquals(0.05369, nominal.rate(), 1e-12);
    assertEquals(0.03, nominal.real(0.023).rate(), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, -2, Double.NaN, Double.POSITIVE_INFINITY})
  void aRateThatCannotBeIsRefused(double rate) {
    assertThrows(IllegalArgumentException.class, () -> new Discount(rate));
  }

  // equivalent uniform annual cost: price 10000, running 1200, salvage 1500 after 8 years, 3 %;
  // computed outside this program
  @ParameterizedTest
  @CsvSource("10000, 1200, 1500, 8, 0.03, 2455.879305")
  void equivalentAnnualCost(
      double price, double running, double salvage, int life, double rate, double expected) {
    double[] years = new double[life];
    java.util.Arrays.fill(years, running);
    Discount discount = new Discount(rate);
    assertEquals(expected, EconomicLife.annualCost(price, years, salvage, life, discount), 1e-6);
  }
}

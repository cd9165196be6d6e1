package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.statistics.distribution.PascalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GammaPoissonTest {

  // worked out with SciPy: prior shape and years, faults in years; next year's mean, chance of
  // none, 10 % and 90 % quantile
  @ParameterizedTest
  @CsvSource({
    "1.2, 1.5, 0, 3,   0.26666667, 0.78599501, 0, 1",
    "1.2, 1.5, 4, 3,   1.15555556, 0.35222411, 0, 3",
    "0.8, 2.0, 7, 2.5, 1.73333333, 0.20903963, 0, 4",
  })
  void theNextYearFollowsFromPriorAndRecord(
      double shape,
      double years,
      int faults,
      double observed,
      double mean,
      double none,
      int low,
      int high) {
    GammaPoisson rate = new GammaPoisson(shape, years).after(faults, observed);
    assertEquals(mean, rate.mean(), 1e-8);
    assertEquals(none, rate.none(1), 1e-8);
    assertEquals(1 - none, rate.atLeastOne(1), 1e-8);
    assertEquals(low, rate.countQuantile(1, 0.1));
    assertEquals(high, rate.countQuantile(1, 0.9));
  }

  // worked out with SciPy: prior Gamma(2, 4 years), 3 faults in 2.5 years
  @Test
  void theRateItselfIsGamma() {
    GammaPoisson rate = new GammaPoisson(2, 4).after(3, 2.5);
    assertEquals(0.7692307692, rate.mean(), 1e-10);
    assertEquals(0.3440104581, rate.sd(), 1e-10);
    assertEquals(0.2236718168, rate.rateAbove(1), 1e-9);
    assertEquals(0.3096384691, rate.atLeastOne(0.5), 1e-10);
    assertEquals(0.9, 1 - rate.rateAbove(rate.rateQuantile(0.9)), 1e-9);
  }

  // a whole shape makes the count a Pascal distribution, which the library has
  @Property
  void countsAgreeWithApacheCommonsStatistics(
      @ForAll @IntRange(min = 1, max = 12) int shape,
      @ForAll @DoubleRange(min = 0.3, max = 10) double years,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double p) {
    PascalDistribution reference = PascalDistribution.of(shape, years / (years + 1));
    GammaPoisson rate = new GammaPoisson(shape, years);
    assertEquals(reference.probability(0), rate.none(1), 1e-12);
    int expected = reference.inverseCumulativeProbability(p);
    int count = rate.countQuantile(1, p);
    // where the chance is met to the last digits, rounding decides which of two neighbours it is
    boolean met = Math.abs(reference.cumulativeProbability(Math.min(expected, count)) - p) < 1e-12;
    assertEquals(expected, count, met ? 1 : 0);
  }

  @Test
  void kindsOfEventAddUpToTheWhole() {
    GammaPoisson all = new GammaPoisson(1.2, 1.5);
    double apart = all.part(0.3).none(1) * all.part(0.7).none(1);
    assertEquals(all.none(1), apart, 1e-15);
  }

  @Test
  void aRateOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new GammaPoisson(0, 1));
  }
}

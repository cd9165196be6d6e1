package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.statistics.distribution.WeibullDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WeibullLifeTest {

  // worked out with SciPy: median, shape, age; scale, share gone, mean residual life
  @ParameterizedTest
  @CsvSource({
    "12, 2.5,  0, 13.894760, 0,          12.32831814",
    "12, 2.5,  8, 13.894760, 0.22239326,  6.25438766",
    "12, 2.5, 20, 13.894760, 0.91673210,  2.70819930",
    "15, 1.8, 30, 18.387452, 0.91051450,  6.04679073",
    "10, 3.2, 10, 11.213522, 0.5,         2.83051815",
  })
  void aMedianAndAShapeGiveWhatIsGoneAndWhatIsLeft(
      double median, double shape, double age, double scale, double gone, double left) {
    WeibullLife life = WeibullLife.ofMedian(median, shape);
    assertEquals(scale, life.scaleYears(), 1e-6);
    assertEquals(gone, life.goneBy(age), 1e-8);
    assertEquals(left, life.remainingYears(age), 1e-8);
    assertEquals(median, life.medianYears(), 1e-12);
  }

  // worked out with SciPy and checked by quadrature: shape, scale, age; mean residual life
  @ParameterizedTest
  @CsvSource({
    "2,   10,        5, 5.456413608",
    "1,   10,        5, 10",
    "3.5, 15,       10, 5.09377436",
    "3.5, 15,        0, 13.49620765",
    "2,   10,        0, 8.862269255",
    "1.5, 20000, 10000, 13280.45543",
  })
  void meanResidualLifeIsAsByQuadrature(double shape, double scale, double age, double left) {
    assertEquals(1, new WeibullLife(shape, scale).remainingYears(age) / left, 1e-9);
  }

  // the same source: shape, scale, age, span; chance of lasting the span
  @ParameterizedTest
  @CsvSource({
    "2,   10,     5,     1,    0.8958341353",
    "2,   10,     5,     5,    0.4723665527",
    "1,   10,     5,     1,    0.904837418",
    "3.5, 15,     10,    1,    0.9086514554",
    "3.5, 15,     10,    3,    0.6948296124",
    "1.5, 20000,  10000, 2000, 0.8947556534",
  })
  void theChanceOfLastingDependsOnTheAgeReached(
      double shape, double scale, double age, double span, double lasts) {
    assertEquals(1 - lasts, new WeibullLife(shape, scale).failsWithin(age, span), 1e-10);
  }

  @Property
  void agreesWithApacheCommonsStatistics(
      @ForAll @DoubleRange(min = 0.5, max = 6) double shape,
      @ForAll @DoubleRange(min = 1, max = 40) double mean,
      @ForAll @DoubleRange(min = 0, max = 80) double age) {
    WeibullLife life = WeibullLife.ofMean(mean, shape);
    WeibullDistribution reference = WeibullDistribution.of(shape, life.scaleYears());
    assertEquals(mean, reference.getMean(), 1e-9 * mean);
    assertEquals(reference.cumulativeProbability(age), life.goneBy(age), 1e-12);
  }

  @Property
  void theOldHaveLessLeftThanTheYoungWhenShapeIsAboveOne(
      @ForAll @DoubleRange(min = 1.2, max = 5) double shape,
      @ForAll @DoubleRange(min = 0, max = 200) double age) {
    WeibullLife life = new WeibullLife(shape, 12);
    double left = life.remainingYears(age);
    assertTrue(left > 0 && left >= life.remainingYears(age + 1) - 1e-9, "left " + left);
  }

  @Test
  void theTailIsTheSameOnBothSidesOfTheChangeOfFormula() {
    // 100 is where the continued fraction takes over from the library
    double below = IncompleteGammaTail.scaled(0.4, 100);
    double above = IncompleteGammaTail.scaled(0.4, Math.nextUp(100.0));
    assertEquals(1, above / below, 1e-12);
  }

  @Test
  void aShapeOfNothingIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new WeibullLife(0, 3));
  }
}

package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShrinkageTest {

  // worked out with SciPy: prior N(0.04, 0.02²), three cycles with sd 0.015
  @Test
  void threeCyclesPullAFoulingRateAwayFromItsPrior() {
    Shrinkage rate =
        new Shrinkage(0.04, 0.02).with(0.07, 0.015).with(0.055, 0.015).with(0.08, 0.015);
    assertEquals(0.06385965, rate.mean(), 1e-8);
    assertEquals(0.00794719, rate.sd(), 1e-8);
  }

  // worked out by the formulas for precisions: prior mean 10, variance 4; readings 13, variance 9
  @ParameterizedTest
  @CsvSource({
    "1,  10.92307692, 2.769230769",
    "4,  11.92,       1.44",
    "25, 12.75229358, 0.3302752294"
  })
  void manyReadingsOutweighThePrior(int readings, double mean, double variance) {
    Shrinkage value = new Shrinkage(10, 2).with(13, 3 / Math.sqrt(readings));
    assertEquals(mean, value.mean(), 1e-8);
    assertEquals(variance, value.sd() * value.sd(), 1e-9);
  }

  @Property
  void theResultLiesBetweenPriorAndReading(
      @ForAll @DoubleRange(min = -10, max = 10) double prior,
      @ForAll @DoubleRange(min = -10, max = 10) double reading,
      @ForAll @DoubleRange(min = 0.1, max = 5) double sd) {
    Shrinkage value = new Shrinkage(prior, 1).with(reading, sd);
    assertTrue(value.mean() >= Math.min(prior, reading) - 1e-12);
    assertTrue(value.mean() <= Math.max(prior, reading) + 1e-12);
    assertTrue(value.sd() < Math.min(1, sd));
  }

  @Test
  void certaintyIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Shrinkage(1, 0));
  }
}

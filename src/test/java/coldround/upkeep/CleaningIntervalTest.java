package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CleaningIntervalTest {

  // √(2C/k) and √(2Ck): the algebra of the lot-size formula (Harris 1913, from memory), figures
  // worked out with SciPy as an implementation apart from this one
  @ParameterizedTest(name = "cleaning {0}, growth {1} a day²: every {2} days, {3} a day")
  @CsvSource({"90, 0.004, 212.1320344, 0.8485281374", "180, 0.02, 134.164, 2.683282"})
  void theCheapestIntervalIsTheRootOfTwiceTheCostOverTheGrowth(
      double cost, double growth, double days, double perDay) {
    assertEquals(days, CleaningInterval.days(cost, growth), 5e-4);
    assertEquals(perDay, CleaningInterval.costPerDay(cost, growth), 5e-7);
  }

  // continuous discounting with ln(1 + i)/365 a day, C = 90, k = 0.004: root of the condition,
  // closed form by Lambert's W and direct minimisation agree to 1e-5 (computed with SciPy)
  @ParameterizedTest(name = "at {0} a year every {1} days")
  @CsvSource({"0, 212.1320344", "0.03, 212.7411500", "0.06, 213.3361291", "0.10, 214.1086772"})
  void discountingMakesTheIntervalALittleLonger(double rate, double days) {
    assertEquals(days, CleaningInterval.discountedDays(90, 0.004, rate), 1e-5);
  }

  // the cost rate C/T + kT/2 at a times the best interval is (a + 1/a)/2 times the least
  @ParameterizedTest
  @CsvSource({"0.8, 1.025", "1.2, 1.0166667", "1.5, 1.0833333", "2, 1.25", "0.5, 1.25"})
  void anotherIntervalCostsMoreByAKnownShare(double times, double dearer) {
    double days = times * CleaningInterval.days(90, 0.004);
    double rate = 90 / days + 0.004 * days / 2;
    assertEquals(dearer, rate / CleaningInterval.costPerDay(90, 0.004), 1e-6);
  }

  @Test
  void noIntervalIsCheapestWhereDirtCostsNothing() {
    assertThrows(IllegalArgumentException.class, () -> CleaningInterval.days(90, 0));
    assertThrows(IllegalArgumentException.class, () -> CleaningInterval.days(0, 0.004));
    assertThrows(
        IllegalArgumentException.class, () -> CleaningInterval.discountedDays(90, 0.004, -0.01));
  }
}

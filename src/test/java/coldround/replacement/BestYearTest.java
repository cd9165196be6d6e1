package coldround.replacement;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Defender against challenger. The data are made up, the expected figures were computed outside
 * this program by the textbook formulas (equivalent annual cost, marginal cost, present value).
 */
class BestYearTest {

  private static final Discount SIX = new Discount(0.06);
  private static final double PRICE = 12000;

  private static double[] running(int years) {
    return IntStream.range(0, years).mapToDouble(k -> 900 + 350.0 * k).toArray();
  }

  private static double[] salvage(int years) {
    return IntStream.rangeClosed(1, years).mapToDouble(n -> PRICE * Math.pow(0.75, n)).toArray();
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/replacement/challenger.csv", numLinesToSkip = 1)
  void annualCostOfTheChallengerByLife(int life, double running, double salvage, double annual) {
    assertEquals(running, running(15)[life - 1], 1e-9);
    assertEquals(annual, EconomicLife.annualCost(PRICE, running(15), salvage, life, SIX), 1e-6);
  }

  @Test
  void theChallengerIsBestKeptSevenYears() {
    EconomicLife life = EconomicLife.of(PRICE, running(15), salvage(15), SIX);
    assertEquals(7, life.years());
    assertEquals(3827.4424, life.annualCost(), 5e-5);
  }

  // 20 years, the challenger bought again and again: lives 7, 7, 6
  @Test
  void aChainOfChallengersToTheHorizon() {
    double[] prices = IntStream.range(0, 20).mapToDouble(y -> PRICE).toArray();
    Successors chain = Successors.of(prices, running(20), salvage(20), salvage(20), SIX);
    assertEquals(43949.10482, chain.presentAt(0), 1e-5);
    assertEquals(List.of(6, 7, 7), chain.livesFrom(0).stream().sorted().toList());
  }

  // keep the defender x years, then challengers for ever: 2 is best, 3 only 2.62 dearer
  @Test
  void theDefenderIsKeptTwoYears() {
    double forEver = EconomicLife.of(PRICE, running(15), salvage(15), SIX).annualCost() / 0.06;
    double[] keeping = IntStream.range(0, 4).mapToDouble(k -> 2300 + 550.0 * k).toArray();
    double[] worth =
        IntStream.rangeClosed(0, 4).mapToDouble(k -> 2600 * Math.pow(0.6, k)).toArray();
    double[] totals = new double[5];
    for (int keep = 0; keep <= 4; keep++) {
      totals[keep] = untilSold(keep, keeping, worth) + forEver * SIX.spv(keep);
    }
    assertArrayEquals(
        new double[] {63790.7064, 63478.0249, 63246.7661, 63249.3837, 63551.0871}, totals, 5e-4);
  }

  // the sale forgone today counts as a cost of keeping it
  private static double untilSold(int years, double[] keeping, double[] worth) {
    Successors nothing =
        Successors.of(
            new double[years], new double[years], new double[years], new double[years], SIX);
    BestYear alone =
        BestYear.of(
            Arrays.copyOf(keeping, years),
            new double[years],
            Arrays.copyOf(worth, years + 1),
            0,
            nothing,
            SIX);
    return worth[0] + alone.totals()[years];
  }

  @Property(tries = 100)
  void noOtherYearAndNoOtherChainIsCheaper(@ForAll Random random) {
    int horizon = 1 + random.nextInt(7);
    double[] prices = numbers(random, horizon, 1000, 9000);
    double[] running = numbers(random, horizon, 0, 2000);
    double[] salvage = numbers(random, horizon, 0, 500);
    double[] keeping = numbers(random, horizon, 0, 3000);
    Discount discount = new Discount(random.nextDouble() * 0.2 - 0.05);
    Successors chain = Successors.of(prices, running, salvage, salvage, discount);
    BestYear best =
        BestYear.of(keeping, new double[horizon], new double[horizon + 1], 0, chain, discount);
    double least = Double.POSITIVE_INFINITY;
    // every set of years in which something is bought
    for (int years = 0; years < 1 << horizon; years++) {
      least = Math.min(least, paid(years, prices, running, salvage, keeping, discount));
    }
    assertEquals(least, best.least(), 1e-6);
    assertTrue(best.costOfShift(0).orElseThrow() == 0);
  }

  private static double paid(
      int bought,
      double[] prices,
      double[] running,
      double[] salvage,
      double[] keeping,
      Discount discount) {
    double sum = 0;
    int since = -1;
    for (int year = 0; year < prices.length; year++) {
      if ((bought >> year & 1) == 1) {
        sum += (prices[year] - (since < 0 ? 0 : salvage[year - since - 1])) * discount.spv(year);
        since = year;
      }
      sum += (since < 0 ? keeping[year] : running[year - since]) * discount.spv(year + 1);
    }
    return since < 0 ? sum : sum - salvage[prices.length - since - 1] * discount.spv(prices.length);
  }

  private static double[] numbers(Random random, int count, double low, double high) {
    return random.doubles(count, low, high).toArray();
  }

  // one unit, two years: it dies in the first with a chance of 0.25
  @Test
  void aDeathIsPaidForAtASurcharge() {
    Discount none = new Discount(0);
    Successors chain =
        Successors.of(
            new double[] {1000, 1000}, new double[] {10, 10}, new double[2], new double[2], none);
    BestYear best =
        BestYear.of(
            new double[] {100, 100}, new double[] {0.25, 0}, new double[3], 50, chain, none);
    assertEquals(1020, best.totals()[0], 1e-9);
    assertEquals(100 + 0.25 * (1010 + 50) + 0.75 * 1010, best.totals()[1], 1e-9);
    assertEquals(100 + 0.25 * (1010 + 50) + 0.75 * 100, best.totals()[2], 1e-9);
  }
}

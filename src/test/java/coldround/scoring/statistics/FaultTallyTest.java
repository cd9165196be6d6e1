package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;

class FaultTallyTest {

  /** By hand: rates 1 and 3 a year over one year each; mean 2, scatter (1+1-4)/2 below Poisson. */
  @Test
  void unitsThatScatterNoMoreThanChanceGetTheStrongestPrior() {
    FaultTally tally = FaultTally.of(1, 365).plus(FaultTally.of(3, 365));
    GammaPoisson prior = tally.prior(0.25, 20).orElseThrow();
    assertEquals(20, prior.years());
    assertEquals(2 * 365.25 / 365, prior.mean(), 1e-12);
  }

  /** By hand: counts 0, 0, 0, 12 in a year each: mean 3, variance (144 - 36 - 12) / 4 = 24. */
  @Test
  void unitsThatScatterMuchGetAWeakPrior() {
    FaultTally tally = FaultTally.NONE;
    for (int faults : new int[] {0, 0, 0, 12}) {
      tally = tally.plus(FaultTally.of(faults, 365));
    }
    GammaPoisson prior = tally.prior(0.01, 20).orElseThrow();
    assertEquals(3.0 / 24 * 365 / 365.25, prior.years(), 1e-12);
    assertEquals(3 * 365.25 / 365, prior.mean(), 1e-12);
  }

  @Test
  void withoutFaultsThereIsNothingToEstimate() {
    assertEquals(Optional.empty(), FaultTally.NONE.prior(1, 20));
    assertEquals(Optional.empty(), FaultTally.of(0, 700).prior(1, 20));
  }

  @Test
  void theOrderOfTheUnitsDoesNotMatter() {
    FaultTally forth = FaultTally.NONE;
    FaultTally back = FaultTally.NONE;
    for (int i = 0; i < 50; i++) {
      forth = forth.plus(FaultTally.of(i % 7, 100 + 13L * i));
      back = back.plus(FaultTally.of((49 - i) % 7, 100 + 13L * (49 - i)));
    }
    assertEquals(forth, back);
  }

  // recovery of known parameters from counts drawn with the samplers of Apache Commons Statistics
  @Test
  void ratesDrawnFromAKnownGammaAreFoundAgain() {
    UniformRandomProvider random = new SplittableRandom(4711)::nextLong;
    var rates = GammaDistribution.of(1.2, 1 / 1.5).createSampler(random);
    FaultTally tally =
        IntStream.range(0, 40_000)
            .mapToObj(i -> drawn(rates.sample(), 400 + i % 1500, random))
            .reduce(FaultTally.NONE, FaultTally::plus);
    GammaPoisson prior = tally.prior(0.25, 20).orElseThrow();
    assertEquals(0.8, prior.mean(), 0.02);
    assertTrue(Math.abs(prior.years() - 1.5) < 0.15, "years " + prior.years());
  }

  private static FaultTally drawn(double rate, int days, UniformRandomProvider random) {
    double mean = Math.max(1e-9, rate * days / 365.25);
    return FaultTally.of(PoissonDistribution.of(mean).createSampler(random).sample(), days);
  }
}

package coldround.scoring;

import coldround.scoring.FailureModes.FailureMode;
import coldround.scoring.statistics.GammaPoisson;

/**
 * Chance that some failure mode occurs twice or more in a year nobody watched and again in the year
 * to come, with nothing known but the prior. This is what a unit without a record is scored at.
 */
final class RepeatExpectation {

  private RepeatExpectation() {}

  static double of(GammaPoisson prior, FailureModes modes) {
    double none = 1;
    for (FailureMode mode : modes.all()) {
      none *= 1 - twiceThenAgain(prior.part(mode.share()));
    }
    return 1 - none;
  }

  /** With a rate from Gamma(a, b), counts of two years are negative multinomial. */
  private static double twiceThenAgain(GammaPoisson rate) {
    double inOne = rate.none(1) * (1 + rate.shape() / (rate.years() + 1));
    double inTwo = rate.none(2) * (1 + rate.shape() / (rate.years() + 2));
    double twice = 1 - inOne;
    double twiceThenNone = rate.none(1) - inTwo;
    return Math.max(0, twice - twiceThenNone);
  }
}

package coldround.scoring.statistics;

/**
 * A normally distributed quantity known from a prior and from measurements with known error:
 * precisions add up. The order of the measurements does not matter beyond rounding, so callers that
 * need the same last digit pass them in a fixed order.
 *
 * @param mean expected value
 * @param sd standard deviation
 */
public record Shrinkage(double mean, double sd) {

  /**
   * @throws IllegalArgumentException unless the standard deviation is above 0
   */
  public Shrinkage {
    if (!(sd > 0)) {
      throw new IllegalArgumentException("standard deviation " + sd);
    }
  }

  /** With one more measurement. */
  public Shrinkage with(double measured, double measurementSd) {
    double mine = 1 / (sd * sd);
    double its = 1 / (measurementSd * measurementSd);
    return new Shrinkage((mean * mine + measured * its) / (mine + its), 1 / Math.sqrt(mine + its));
  }
}

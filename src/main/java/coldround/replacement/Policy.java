package coldround.replacement;

/** One way to decide when units are replaced, for comparison. */
public record Policy(String code, String name, int[] years) {

  /**
   * What came of it in the simulation, in the money the plan is told in where it is by year.
   *
   * @param expected by the closed form
   * @param mean cost today over all runs
   * @param standardError of that mean
   * @param average mean of all spending in each year
   * @param low tenth percentile of all spending in each year
   * @param middle median of it
   * @param high ninetieth percentile of it
   * @param overInYear chance that replacements, planned and unplanned, exceed the limit of each
   *     year
   * @param over chance that they do in any year
   */
  public record Outcome(
      Policy policy,
      Expected expected,
      double mean,
      double standardError,
      double[] average,
      double[] low,
      double[] middle,
      double[] high,
      double[] overInYear,
      double over) {}

  public Policy {
    years = years.clone();
  }
}

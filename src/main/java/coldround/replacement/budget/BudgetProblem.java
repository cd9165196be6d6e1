package coldround.replacement.budget;

import java.util.Arrays;
import java.util.List;

/**
 * For each unit exactly one of its options is to be chosen, so that the sum of costs is least and
 * what is paid in each year keeps within that year's limit.
 *
 * <p>Money is in whole hundredths of the currency where it meets a limit; costs are rounded to the
 * same.
 *
 * @param units all with one option or more
 * @param limits for each year; infinity for none, and then nothing is carried over from it
 * @param carryOver share of what is left of a limit that may be spent the year after, 0 to 1
 * @param siteCost paid once for a site and year in which an option acts there, however many do
 * @param siteCostToday what that is worth today, for each year
 */
public record BudgetProblem(
    List<Unit> units, double[] limits, double carryOver, double siteCost, double[] siteCostToday) {

  /**
   * One thing that can be done about a unit.
   *
   * @param year in which it acts at the site; as many as there are years for never
   * @param cost worth today of all that follows from it
   * @param spend what is paid under the limit of each year
   */
  public record Option(int year, double cost, double[] spend) {
    public Option {
      spend = spend.clone();
    }

    /** What is paid in its own year only. */
    public static Option paidAtOnce(int year, double cost, double amount, int years) {
      double[] spend = new double[years];
      if (year < years) {
        spend[year] = amount;
      }
      return new Option(year, cost, spend);
    }

    @Override
    public double[] spend() {
      return spend.clone();
    }

    double spend(int inYear) {
      return spend[inYear];
    }

    double spendInAll() {
      return Arrays.stream(spend).sum();
    }
  }

  /**
   * @param site units of one site share its cost in a year
   */
  public record Unit(String id, String site, List<Option> options) {
    public Unit {
      options = List.copyOf(options);
      if (options.isEmpty()) {
        throw new IllegalArgumentException("no option for " + id);
      }
    }
  }

  public BudgetProblem {
    units = List.copyOf(units);
    int years = limits.length;
    if (units.stream()
        .flatMap(unit -> unit.options().stream())
        .anyMatch(option -> option.spend.length != years)) {
      throw new IllegalArgumentException("an option must say what it spends in each year");
    }
    limits = limits.clone();
    siteCostToday = siteCostToday.clone();
    if (!(carryOver >= 0 && carryOver <= 1)) {
      throw new IllegalArgumentException("the share carried over must be 0 to 1, not " + carryOver);
    }
    if (Arrays.stream(limits).anyMatch(limit -> !(limit >= 0))) {
      throw new IllegalArgumentException("a limit must not be below 0");
    }
  }

  @Override
  public double[] limits() {
    return limits.clone();
  }

  @Override
  public double[] siteCostToday() {
    return siteCostToday.clone();
  }

  public int years() {
    return limits.length;
  }

  /** The same with other limits. */
  public BudgetProblem withLimits(double[] others) {
    return new BudgetProblem(units, others, carryOver, siteCost, siteCostToday);
  }

  /** Cost of these options, one for each unit. */
  public double cost(int[] chosen) {
    double sum = 0;
    for (int u = 0; u < chosen.length; u++) {
      sum += units.get(u).options().get(chosen[u]).cost();
    }
    boolean[][] acts = new Sites(this).acting(chosen);
    for (boolean[] site : acts) {
      for (int year = 0; year < site.length; year++) {
        sum += site[year] ? siteCostToday[year] : 0;
      }
    }
    return sum;
  }

  /** What these options spend in each year. */
  public double[] spend(int[] chosen) {
    double[] spend = new double[years()];
    for (int u = 0; u < chosen.length; u++) {
      Option option = units.get(u).options().get(chosen[u]);
      for (int year = 0; year < spend.length; year++) {
        spend[year] += option.spend(year);
      }
    }
    for (boolean[] site : new Sites(this).acting(chosen)) {
      for (int year = 0; year < site.length; year++) {
        spend[year] += site[year] ? siteCost : 0;
      }
    }
    return spend;
  }

  /** True when that spending keeps within the limits, with what earlier years left. */
  public boolean within(double[] spend) {
    double left = 0;
    for (int year = 0; year < limits.length; year++) {
      double room = limits[year] + carryOver * left;
      if (spend[year] > room + 0.005) {
        return false;
      }
      left = Double.isInfinite(room) ? 0 : room - spend[year];
    }
    return true;
  }
}

package coldround.replacement.budget;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Choices for all units of one site together that are nearly the cheapest at given prices. */
final class SiteColumns {

  private static final double NO_OPTION = 1e9;
  private static final int MOST_TRIED = 100_000;

  /**
   * One choice.
   *
   * @param options number of the option for each unit of the site
   * @param cost worth today, the site's own cost included
   * @param spend in each year, likewise
   * @param regret what it costs more, at the prices, than the cheapest choice
   */
  record Column(int[] options, double cost, double[] spend, double regret) {}

  private final BudgetProblem problem;
  private final int[] units;
  private final int[][] options;
  private final double[][] costs;
  private final double[] opening;
  private final List<Column> columns = new ArrayList<>();
  private double slack;
  private int tried;
  private boolean complete;

  /**
   * @param units numbers of the units of the site
   * @param prices of one spent in each year, besides what it costs anyway
   */
  SiteColumns(BudgetProblem problem, int[] units, double[] prices) {
    this.problem = problem;
    this.units = units;
    int years = problem.years();
    options = new int[units.length][years + 1];
    costs = new double[units.length][years + 1];
    for (int u = 0; u < units.length; u++) {
      price(problem.units().get(units[u]).options(), prices, u);
    }
    opening = problem.siteCostToday();
    for (int year = 0; year < years; year++) {
      opening[year] += prices[year] * problem.siteCost();
    }
  }

  private void price(List<BudgetProblem.Option> all, double[] prices, int u) {
    Arrays.fill(costs[u], NO_OPTION);
    for (int o = 0; o < all.size(); o++) {
      BudgetProblem.Option option = all.get(o);
      double cost = option.cost();
      for (int year = 0; year < prices.length; year++) {
        cost += prices[year] * option.spend(year);
      }
      if (cost < costs[u][option.year()]) {
        costs[u][option.year()] = cost;
        options[u][option.year()] = o;
      }
    }
  }

  int[] units() {
    return units;
  }

  /** The cheapest choices, up to so much above the cheapest of all. */
  List<Column> within(double most) {
    columns.clear();
    tried = 0;
    slack = most;
    OpenYears open = new OpenYears(costs, opening, slack);
    Map<Long, Double> sets = open.nearBest();
    complete = open.complete();
    sets.entrySet().stream()
        .sorted(Map.Entry.<Long, Double>comparingByValue().thenComparing(Map.Entry::getKey))
        .forEach(set -> choose(set.getKey(), set.getValue(), new int[units.length], 0));
    columns.sort(Comparator.comparingDouble(Column::regret));
    return List.copyOf(columns);
  }

  /** False when some choices within the range asked for were left out, as there are too many. */
  boolean complete() {
    return complete && tried <= MOST_TRIED;
  }

  /** All ways to choose for the units from that one on, with just these years open. */
  private void choose(long open, double regret, int[] years, int u) {
    if (regret > slack || tried++ > MOST_TRIED) {
      return;
    }
    if (u == years.length) {
      if (used(years) == open) {
        columns.add(column(years, regret));
      }
      return;
    }
    double least = least(open, u);
    for (int year = 0; year <= opening.length; year++) {
      boolean may = year == opening.length || (open >> year & 1) == 1;
      if (may && costs[u][year] < NO_OPTION) {
        years[u] = year;
        choose(open, regret + costs[u][year] - least, years, u + 1);
      }
    }
  }

  private long used(int[] years) {
    long used = 0;
    for (int year : years) {
      used |= year < opening.length ? 1L << year : 0;
    }
    return used;
  }

  private double least(long open, int u) {
    double least = costs[u][opening.length];
    for (int year = 0; year < opening.length; year++) {
      least = (open >> year & 1) == 1 ? Math.min(least, costs[u][year]) : least;
    }
    return least;
  }

  private Column column(int[] years, double regret) {
    int[] chosen = new int[units.length];
    double cost = 0;
    double[] spend = new double[opening.length];
    for (int u = 0; u < units.length; u++) {
      chosen[u] = options[u][years[u]];
      BudgetProblem.Option option = problem.units().get(units[u]).options().get(chosen[u]);
      cost += option.cost();
      for (int year = 0; year < spend.length; year++) {
        spend[year] += option.spend(year);
      }
    }
    double[] today = problem.siteCostToday();
    long used = used(years);
    for (int year = 0; year < spend.length; year++) {
      cost += (used >> year & 1) * today[year];
      spend[year] += (used >> year & 1) * problem.siteCost();
    }
    return new Column(chosen, cost, spend, regret);
  }
}

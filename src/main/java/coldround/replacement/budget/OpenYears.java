package coldround.replacement.budget;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * In which years a site is best visited, when each year in which any of its units is acted on costs
 * something once: all sets of years that are nearly as cheap as the cheapest. Branches on years.
 * One year more helps the less the more there are, which settles most years without a search.
 */
final class OpenYears {

  private static final int MOST_NODES = 20_000;

  private final double[][] costs;
  private final double[] opening;
  private final double slack;
  private final Map<Long, Double> found = new HashMap<>();
  private double best = Double.POSITIVE_INFINITY;
  private int nodes;

  /**
   * @param costs for each unit what acting in each year costs, and last what never acting does;
   *     large where that is no option
   * @param opening what a year costs the site
   * @param slack sets that cost that much more than the cheapest are wanted too
   */
  OpenYears(double[][] costs, double[] opening, double slack) {
    this.costs = costs;
    this.opening = opening;
    this.slack = slack;
  }

  /** Sets of years as bits, with their cost above the cheapest. */
  Map<Long, Double> nearBest() {
    double[] never = Arrays.stream(costs).mapToDouble(unit -> unit[opening.length]).toArray();
    search(0, (1L << opening.length) - 1, never, Arrays.stream(never).sum());
    Map<Long, Double> near = new HashMap<>();
    found.forEach(
        (open, cost) -> {
          if (cost <= best + slack) {
            near.put(open, cost - best);
          }
        });
    return near;
  }

  /** False when the search was given up. */
  boolean complete() {
    return nodes <= MOST_NODES;
  }

  /**
   * @param open years that are
   * @param undecided years that may be
   * @param now cost of each unit with those open
   * @param total cost with those open
   */
  private void search(long open, long undecided, double[] now, double total) {
    if (nodes++ > MOST_NODES) {
      return;
    }
    if (total <= best + slack) {
      found.put(open, total);
      best = Math.min(best, total);
    }
    int needed = needed(undecided, now);
    if (needed >= 0) {
      open(needed, open, undecided, now, total);
      return;
    }
    long rest = undecided;
    double bound = total;
    int branch = -1;
    double most = Double.NEGATIVE_INFINITY;
    for (int year = 0; year < opening.length; year++) {
      if (has(undecided, year)) {
        double gain = gain(year, now);
        rest = gain < -slack ? rest & ~(1L << year) : rest;
        bound -= Math.max(0, gain);
        if (gain >= -slack && gain > most) {
          most = gain;
          branch = year;
        }
      }
    }
    if (branch >= 0 && bound <= best + slack) {
      open(branch, open, rest, now, total);
      search(open, rest & ~(1L << branch), now, total);
    }
  }

  private static boolean has(long set, int year) {
    return (set >> year & 1) == 1;
  }

  /** What opening that year saves. */
  private double gain(int year, double[] now) {
    double gain = -opening[year];
    for (int u = 0; u < now.length; u++) {
      gain += Math.max(0, now[u] - costs[u][year]);
    }
    return gain;
  }

  /** A year that every set within the slack has; -1 when none is known. */
  private int needed(long undecided, double[] now) {
    double[] loss = new double[opening.length];
    for (int u = 0; u < now.length; u++) {
      double least = now[u];
      double second = Double.POSITIVE_INFINITY;
      int where = -1;
      for (int year = 0; year < opening.length; year++) {
        if (has(undecided, year)) {
          double cost = costs[u][year];
          if (cost < least) {
            second = least;
            least = cost;
            where = year;
          } else {
            second = Math.min(second, cost);
          }
        }
      }
      if (where >= 0) {
        loss[where] += second - least;
      }
    }
    for (int year = 0; year < loss.length; year++) {
      if (has(undecided, year) && loss[year] - opening[year] > slack) {
        return year;
      }
    }
    return -1;
  }

  private void open(int year, long open, long undecided, double[] now, double total) {
    double[] then = now.clone();
    double cost = total + opening[year];
    for (int u = 0; u < then.length; u++) {
      if (costs[u][year] < then[u]) {
        cost -= then[u] - costs[u][year];
        then[u] = costs[u][year];
      }
    }
    search(open | 1L << year, undecided & ~(1L << year), then, cost);
  }
}

package coldround.replacement.budget;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;

/**
 * Improves a plan by moving two sites at a time to other of their choices, the best two there are,
 * until none is left; then it knocks some sites out of place, lets the others settle around them,
 * and goes on. Finds good plans, proves nothing.
 */
final class ColumnSearch {

  // dearer than a limit is ever worth, so that no plan over a limit looks good
  private static final double PENALTY = 2;
  private static final double STEP = 0.5;
  private static final double WARMTH = 5e-6;
  private static final int NEAR = 12;
  private static final int PATIENCE = 500;
  private static final int INDEX_BITS = 20;

  private final BudgetProblem problem;
  private final double[] limits;
  private final double linear;
  private final int sites;
  private final List<SiteColumns.Column> all = new ArrayList<>();
  private final int[] first;
  private final int[] site;
  private final double[] cost;
  private final double[] regret;
  private final double[][] spend;
  private final boolean[] frozen;
  private final SplittableRandom random = new SplittableRandom(1);

  /**
   * @param columns choices of each site, the best first
   * @param linear bound of the linear relaxation, whose prices the regrets are at
   */
  ColumnSearch(BudgetProblem problem, List<List<SiteColumns.Column>> columns, double linear) {
    this.problem = problem;
    this.limits = problem.limits();
    this.linear = linear;
    sites = columns.size();
    first = new int[sites + 1];
    columns.forEach(all::addAll);
    site = new int[all.size()];
    for (int s = 0; s < sites; s++) {
      first[s + 1] = first[s] + columns.get(s).size();
      Arrays.fill(site, first[s], first[s + 1], s);
    }
    cost = all.stream().mapToDouble(SiteColumns.Column::cost).toArray();
    regret = all.stream().mapToDouble(SiteColumns.Column::regret).toArray();
    spend = all.stream().map(SiteColumns.Column::spend).toArray(double[][]::new);
    frozen = new boolean[sites];
  }

  /**
   * @param enough a plan of that cost ends the search
   * @param stop asked from time to time
   * @return number, within its site, of the choice of each site; not sure to be within the limits
   */
  int[] search(double enough, BooleanSupplier stop) {
    int[] now = Arrays.copyOf(first, sites);
    double at = settle(now);
    int[] best = now;
    double least = at;
    int idle = 0;
    while (least > enough && !stop.getAsBoolean()) {
      if (idle++ > PATIENCE) {
        now = Arrays.copyOf(first, sites);
        at = Double.POSITIVE_INFINITY;
        idle = 0;
      }
      int[] next = now.clone();
      knock(next);
      settle(next);
      Arrays.fill(frozen, false);
      double then = settle(next);
      if (then <= at || random.nextDouble() < Math.exp((at - then) / (WARMTH * Math.abs(linear)))) {
        now = next;
        at = then;
      }
      if (then < least) {
        best = next;
        least = then;
        idle = 0;
      }
    }
    int[] within = new int[sites];
    for (int s = 0; s < sites; s++) {
      within[s] = best[s] - first[s];
    }
    return within;
  }

  private void knock(int[] plan) {
    int kicks = 1 + random.nextInt(2);
    for (int kick = 0; kick < kicks; kick++) {
      int s = random.nextInt(sites);
      plan[s] = first[s] + random.nextInt(Math.min(NEAR, first[s + 1] - first[s]));
      frozen[s] = true;
    }
  }

  /** Moves pairs while that helps; answers the cost, with the penalty for what is over limits. */
  private double settle(int[] plan) {
    State state = new State(plan);
    while (state.moveBestPair()) {
      // goes on until no pair is left that helps
    }
    return state.total + state.over;
  }

  /** One plan and what moving its sites would change. */
  private final class State {
    private final int[] plan;
    private final double[] spent = new double[limits.length];
    private final double[] dearer = new double[all.size()];
    private final double[] worse = new double[all.size()];
    private final long[] order = new long[all.size()];
    private double total;
    private double over;
    private double change;
    private int left;
    private int right;

    State(int[] plan) {
      this.plan = plan;
      for (int chosen : plan) {
        total += cost[chosen];
        for (int year = 0; year < spent.length; year++) {
          spent[year] += spend[chosen][year];
        }
      }
      over = over(-1, -1, Double.POSITIVE_INFINITY);
    }

    boolean moveBestPair() {
      double room = compare();
      change = -STEP;
      left = -1;
      for (int i = 0; i < order.length; i++) {
        int one = index(i);
        if (2 * dearer[one] - over >= change) {
          break;
        }
        if (!frozen[site[one]]) {
          pairWith(i, one, room);
        }
      }
      if (left >= 0) {
        over = over(left, right, Double.POSITIVE_INFINITY);
        move(left);
        move(right);
      }
      return left >= 0;
    }

    /** Puts the choices in order; answers by how much regrets may grow in a better plan. */
    private double compare() {
      double regrets = 0;
      for (int chosen : plan) {
        regrets += regret[chosen];
      }
      for (int i = 0; i < order.length; i++) {
        dearer[i] = cost[i] - cost[plan[site[i]]];
        worse[i] = regret[i] - regret[plan[site[i]]];
        order[i] = (Math.round(dearer[i] * 100) << INDEX_BITS) + i;
      }
      Arrays.sort(order);
      return total + over - linear - regrets;
    }

    private int index(int i) {
      return (int) (order[i] & (1L << INDEX_BITS) - 1);
    }

    private void pairWith(int i, int one, double room) {
      for (int j = i; j < order.length; j++) {
        int other = index(j);
        double cheaper = dearer[one] + dearer[other] - over;
        if (cheaper >= change) {
          return;
        }
        boolean hopeless = worse[one] + worse[other] >= room + change;
        if (!hopeless && site[one] != site[other] && !frozen[site[other]]) {
          double then = over(one, other, change - cheaper);
          if (cheaper + then < change) {
            change = cheaper + then;
            left = one;
            right = other;
          }
        }
      }
    }

    private void move(int choice) {
      int before = plan[site[choice]];
      total += cost[choice] - cost[before];
      for (int year = 0; year < spent.length; year++) {
        spent[year] += spend[choice][year] - spend[before][year];
      }
      plan[site[choice]] = choice;
    }

    /** Penalty after moving to both choices (-1 for none), given up at that much. */
    private double over(int one, int other, double most) {
      double carried = 0;
      double penalty = 0;
      for (int year = 0; year < spent.length && penalty < most; year++) {
        double paid = spent[year];
        if (one >= 0) {
          paid += spend[one][year] - spend[plan[site[one]]][year];
          paid += spend[other][year] - spend[plan[site[other]]][year];
        }
        double room = limits[year] + carried;
        if (paid > room + 0.004) {
          penalty += PENALTY * (paid - room);
          carried = 0;
        } else {
          carried = Double.isInfinite(room) ? 0 : problem.carryOver() * (room - paid);
        }
      }
      return penalty;
    }
  }
}

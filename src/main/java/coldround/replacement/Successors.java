package coldround.replacement;

import java.util.ArrayList;
import java.util.List;

/**
 * What comes after the unit of today: from any year a new one is bought and again renewed whenever
 * that is cheapest, up to the horizon. A dynamic program backwards from the horizon.
 */
public final class Successors {

  private final double[] present;
  private final int[] lives;

  private Successors(double[] present, int[] lives) {
    this.present = present;
    this.lives = lives;
  }

  /**
   * @param prices what a new unit costs at the start of each year; as many as the horizon has years
   * @param running cost of each year of use of a new unit, at its end
   * @param salvage what a new unit brings when it is renewed after each year of use
   * @param residual what it is worth after each year of use when that is the horizon
   */
  public static Successors of(
      double[] prices, double[] running, double[] salvage, double[] residual, Discount discount) {
    int horizon = prices.length;
    double[] present = new double[horizon + 1];
    int[] lives = new int[horizon + 1];
    for (int start = horizon - 1; start >= 0; start--) {
      present[start] = Double.POSITIVE_INFINITY;
      double spent = prices[start];
      for (int life = 1; life <= Math.min(running.length, horizon - start); life++) {
        spent += running[life - 1] * discount.spv(life);
        double[] worth = start + life == horizon ? residual : salvage;
        double then = present[start + life] - worth[life - 1];
        double total = spent + then * discount.spv(life);
        if (total < present[start]) {
          present[start] = total;
          lives[start] = life;
        }
      }
    }
    return new Successors(present, lives);
  }

  /**
   * Worth, at the start of that year, of all that is paid from then to the horizon.
   *
   * @param year 0 is the first; the horizon itself gives 0
   */
  public double presentAt(int year) {
    return present[year];
  }

  /** Years that each new unit from then on is kept. */
  public List<Integer> livesFrom(int year) {
    List<Integer> all = new ArrayList<>();
    for (int start = year; start < present.length - 1; start += lives[start]) {
      all.add(lives[start]);
    }
    return all;
  }
}

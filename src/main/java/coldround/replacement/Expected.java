package coldround.replacement;

import java.util.List;

/**
 * What is to be expected of one way to decide, by the closed form: the units of today may die
 * before their turn.
 *
 * @param today worth today of all costs
 * @param planned what the replacements that are planned cost in each year, should no unit die
 *     before; in the money the plan is told in, as the others by year
 * @param capital what replacements are expected to cost in each year, planned or not
 * @param running what running all units is expected to cost in each year
 */
public record Expected(double today, double[] planned, double[] capital, double[] running) {

  /** What units that die before their turn add to the planned spending of a year. */
  public double unplanned(int year) {
    return capital[year] - planned[year];
  }

  static Expected of(List<UnitOutlook> units, int[] years, Terms terms) {
    Sums sums = new Sums(terms);
    for (int u = 0; u < years.length; u++) {
      sums.add(units.get(u), years[u]);
    }
    for (SharedShutdowns.Group group : SharedShutdowns.of(units, years, terms.horizon())) {
      sums.share(group, units);
    }
    return new Expected(
        sums.today, sums.told(sums.planned), sums.told(sums.capital), sums.told(sums.running));
  }

  /** In money of today. */
  private static final class Sums {
    private final Terms terms;
    private final double[] planned;
    private final double[] capital;
    private final double[] running;
    private double today;

    Sums(Terms terms) {
      this.terms = terms;
      planned = new double[terms.horizon()];
      capital = new double[terms.horizon()];
      running = new double[terms.horizon()];
    }

    void add(UnitOutlook unit, int turn) {
      Successors next = unit.successors(terms.discount());
      today += unit.bestYear(terms.discount()).totals()[turn];
      buy(planned, unit, next, turn, 1);
      double alive = 1;
      for (int year = 0; year < turn; year++) {
        running[year] += alive * unit.keeping().get(year).total();
        double dies = alive * unit.dying()[year];
        if (year + 1 < capital.length) {
          capital[year + 1] += dies * unit.replacing().surcharge();
        }
        renew(unit, next, year + 1, dies);
        alive -= dies;
      }
      renew(unit, next, turn, alive);
    }

    private void renew(UnitOutlook unit, Successors next, int from, double chance) {
      buy(capital, unit, next, from, chance);
      int start = from;
      for (int life : next.livesFrom(from)) {
        for (int age = 0; age < life; age++) {
          running[start + age] += chance * unit.running().get(age).total();
        }
        start += life;
      }
    }

    private static void buy(
        double[] spend, UnitOutlook unit, Successors next, int from, double chance) {
      int start = from;
      for (int life : next.livesFrom(from)) {
        spend[start] += chance * (unit.prices()[start] + unit.replacing().shutdown());
        start += life;
      }
    }

    void share(SharedShutdowns.Group group, List<UnitOutlook> units) {
      double shutdown = units.get(group.units().get(0)).replacing().shutdown();
      double saved = shutdown * SharedShutdowns.saved(group, units);
      planned[group.year()] -= shutdown * (group.units().size() - 1);
      capital[group.year()] -= saved;
      today -= saved * terms.discount().spv(group.year());
    }

    double[] told(double[] amounts) {
      double[] told = amounts.clone();
      for (int year = 0; year < told.length; year++) {
        told[year] *= terms.told(year);
      }
      return told;
    }
  }
}

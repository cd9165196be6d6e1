package coldround.replacement;

import java.util.List;

/** Yearly amounts to be expected, without chance in them. */
final class Expected {

  private Expected() {}

  /** What running all units costs in each year, in the money the plan is told in. */
  static double[] running(List<UnitOutlook> units, int[] years, Terms terms) {
    double[] sum = new double[terms.horizon()];
    for (int u = 0; u < years.length; u++) {
      UnitOutlook unit = units.get(u);
      Successors next = unit.successors(terms.discount());
      double alive = 1;
      for (int year = 0; year < sum.length; year++) {
        double old = year < years[u] ? unit.keeping().get(year).total() : 0;
        if (year < years[u]) {
          sum[year] += alive * old * terms.told(year);
          double dies = alive * unit.dying()[year];
          addNew(sum, unit, next, year + 1, dies, terms);
          alive -= dies;
        }
      }
      addNew(sum, unit, next, years[u], alive, terms);
    }
    return sum;
  }

  private static void addNew(
      double[] sum, UnitOutlook unit, Successors next, int from, double chance, Terms terms) {
    int start = from;
    for (int life : next.livesFrom(from)) {
      for (int age = 0; age < life; age++) {
        int year = start + age;
        sum[year] += chance * unit.running().get(age).total() * terms.told(year);
      }
      start += life;
    }
  }
}

package coldround.replacement;

import coldround.replacement.budget.BudgetProblem;
import java.util.ArrayList;
import java.util.List;

/** Turns outlooks and an order into the problem of the budget program. */
final class Options {

  private Options() {}

  /**
   * @throws Conflict when a unit is left without any year
   */
  static BudgetProblem problem(List<UnitOutlook> units, PlanOrder order) {
    Terms terms = order.terms();
    double shutdown = units.isEmpty() ? 0 : units.get(0).replacing().shutdown();
    double[] today = new double[terms.horizon()];
    for (int year = 0; year < today.length; year++) {
      today[year] = shutdown * terms.discount().spv(year);
    }
    List<BudgetProblem.Unit> choices = new ArrayList<>();
    List<Conflict.Part> none = new ArrayList<>();
    for (UnitOutlook unit : units) {
      List<BudgetProblem.Option> options = options(unit, order);
      if (options.isEmpty()) {
        none.add(new Conflict.Part(unit.id(), Conflicts.noYear(unit, order)));
      } else {
        choices.add(new BudgetProblem.Unit(unit.id(), unit.siteKey(), options));
      }
    }
    if (!none.isEmpty()) {
      throw new Conflict("some units must be replaced when they must not be", none);
    }
    return new BudgetProblem(choices, order.limits(), order.carryOver(), shutdown, today);
  }

  private static List<BudgetProblem.Option> options(UnitOutlook unit, PlanOrder order) {
    Terms terms = order.terms();
    double[] totals = unit.bestYear(terms.discount()).totals();
    Successors next = unit.successors(terms.discount());
    List<BudgetProblem.Option> options = new ArrayList<>();
    for (int year = 0; year <= terms.horizon(); year++) {
      if (order.allows(unit.id(), year)) {
        // the program adds the shutdown once for the site, so it is not counted with the unit
        double shared =
            year < terms.horizon() ? unit.replacing().shutdown() * terms.discount().spv(year) : 0;
        double[] spend = spend(unit, next, year, terms);
        options.add(new BudgetProblem.Option(year, totals[year] - shared, spend));
      }
    }
    return options;
  }

  /** The planned replacement and the renewals of what then is new. */
  private static double[] spend(UnitOutlook unit, Successors next, int year, Terms terms) {
    double[] spend = new double[terms.horizon()];
    int when = year;
    for (int life : next.livesFrom(year)) {
      double shutdown = when > year ? unit.replacing().shutdown() : 0;
      spend[when] += (unit.prices()[when] + shutdown) * terms.told(when);
      when += life;
    }
    return spend;
  }
}

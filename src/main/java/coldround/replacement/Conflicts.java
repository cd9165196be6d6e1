package coldround.replacement;

import coldround.replacement.budget.BudgetProblem;
import coldround.replacement.budget.Shortfall;
import java.util.ArrayList;
import java.util.List;

/** Says in words which demands on a plan do not go together. */
final class Conflicts {

  private Conflicts() {}

  static String noYear(UnitOutlook unit, PlanOrder order) {
    int first = order.terms().firstYear();
    int from = order.mustNot().get(unit.id());
    String not =
        from >= order.terms().horizon()
            ? "must not be replaced within the plan"
            : "must not be replaced before " + (first + from);
    int by = first + order.must().get(unit.id());
    return unit.place() + " " + not + ", and must be replaced by " + by;
  }

  static Conflict of(
      List<UnitOutlook> units, PlanOrder order, BudgetProblem problem, Shortfall shortfall) {
    List<Conflict.Part> parts = new ArrayList<>();
    for (int year = 0; year < problem.years(); year++) {
      double missing = shortfall.missing()[year];
      if (missing > 0) {
        String message =
            "the limit of "
                + Math.round(problem.limits()[year])
                + " would have to be raised by "
                + (long) Math.ceil(missing)
                + (order.carryOver() > 0 ? "; up to then" : "; in that year")
                + " it has to pay for "
                + behind(units, order, problem, shortfall.chosen(), year)
                + (problem.siteCost() > 0
                    ? ", and " + Math.round(problem.siteCost()) + " for each site and year of work"
                    : "");
        parts.add(new Conflict.Part("" + (order.terms().firstYear() + year), message));
      }
    }
    return new Conflict("the limits are lower than what must be replaced costs", parts);
  }

  /** The units that use the limit up: those of earlier years too, as they leave less to carry. */
  private static String behind(
      List<UnitOutlook> units, PlanOrder order, BudgetProblem problem, int[] chosen, int year) {
    List<String> named = new ArrayList<>();
    for (int u = 0; u < chosen.length; u++) {
      double[] spend = problem.units().get(u).options().get(chosen[u]).spend();
      double paid = 0;
      for (int t = order.carryOver() > 0 ? 0 : year; t <= year; t++) {
        paid += spend[t];
      }
      if (paid > 0) {
        named.add(units.get(u).place() + " (" + Math.round(paid) + due(units.get(u), order) + ")");
      }
    }
    return String.join(", ", named);
  }

  private static String due(UnitOutlook unit, PlanOrder order) {
    Integer by = order.must().get(unit.id());
    return by == null ? "" : ", must be replaced by " + (order.terms().firstYear() + by);
  }
}

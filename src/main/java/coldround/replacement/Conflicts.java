package coldround.replacement;

import coldround.replacement.budget.BudgetProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

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
      List<UnitOutlook> units, PlanOrder order, BudgetProblem problem, double[] missing) {
    List<Conflict.Part> parts = new ArrayList<>();
    for (int year = 0; year < missing.length; year++) {
      if (missing[year] > 0) {
        parts.add(
            new Conflict.Part(
                "" + (order.terms().firstYear() + year),
                "the limit of "
                    + Math.round(problem.limits()[year])
                    + " would have to be raised by "
                    + (long) Math.ceil(missing[year])
                    + "; by then these must be replaced: "
                    + due(units, order, year)));
      }
    }
    return new Conflict("the limits are lower than what must be replaced costs", parts);
  }

  private static String due(List<UnitOutlook> units, PlanOrder order, int year) {
    return units.stream()
        .filter(unit -> order.must().getOrDefault(unit.id(), Integer.MAX_VALUE) <= year)
        .map(unit -> unit.place() + " (" + Math.round(unit.prices()[0]) + ")")
        .collect(Collectors.joining(", "));
  }
}

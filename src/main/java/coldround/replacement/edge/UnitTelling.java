package coldround.replacement.edge;

import coldround.pages.Told;
import coldround.quantity.MeasureSystem;
import coldround.reason.Reason;
import coldround.replacement.Drawing;
import coldround.replacement.Economics;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.Sensitivity;
import coldround.replacement.Terms;
import coldround.replacement.UnitDecision;
import coldround.replacement.YearCost;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Half a page on one unit: what it costs, when it is best replaced, and what that rests on. */
final class UnitTelling {

  /** Half a page on one unit. */
  record Half(
      String title,
      String verdict,
      String picture,
      String score,
      List<String> shifts,
      List<String> reasons,
      String flips) {}

  private final Economics economics;
  private final MeasureSystem system;
  private final ReplacementPlan plan;
  private final Terms terms;
  private final PlaceWords places;

  /**
   * @param places how the sites are called
   */
  UnitTelling(Economics economics, MeasureSystem system, ReplacementPlan plan, PlaceWords places) {
    this.places = places;
    this.economics = economics;
    this.system = system;
    this.plan = plan;
    this.terms = plan.order().terms();
  }

  Half half(UnitDecision decision) {
    var outlook = decision.outlook();
    List<String> reasons = outlook.reasons().stream().map(this::sentence).toList();
    return new Half(
        outlook.tag() + ", " + kind(decision) + ", " + places.of(outlook),
        verdict(decision),
        Drawing.keeping(decision, terms),
        Drawing.score(decision),
        shifts(decision),
        reasons,
        Flips.sentence(Sensitivity.of(outlook, terms.discount())));
  }

  private String sentence(Reason reason) {
    return Told.sentence(reason.text(system)) + ".";
  }

  private String verdict(UnitDecision decision) {
    YearCost first = decision.outlook().keeping().get(0);
    double annual = Drawing.newAnnual(decision.outlook(), terms.discount());
    String planned =
        "Replace in "
            + year(decision.year())
            + (decision.year() == decision.best().year()
                ? ", its best year"
                : "; its best year by itself is "
                    + year(decision.best().year())
                    + ", and the difference costs "
                    + PlanWords.money(decision.forgone()));
    return planned
        + ". Keeping it costs "
        + PlanWords.money(first.total())
        + " in "
        + terms.firstYear()
        + " ("
        + PlanWords.money(first.ofFaults())
        + " for faults, "
        + PlanWords.money(first.refrigerant())
        + " for refrigerant, "
        + PlanWords.money(first.energy())
        + " for avoidable electricity, "
        + PlanWords.money(first.upkeep())
        + " for upkeep); a new one costs "
        + PlanWords.money(annual)
        + " a year with its price."
        + decision.must().stream()
            .mapToObj(by -> " It must be replaced by " + year(by) + ".")
            .collect(Collectors.joining())
        + together(decision);
  }

  /** Why a year may be another than the best one: one shutdown does for several units. */
  private String together(UnitDecision decision) {
    String others =
        plan.decisions().stream()
            .filter(other -> other != decision && other.year() == decision.year())
            .filter(other -> other.outlook().customer().equals(decision.outlook().customer()))
            .filter(other -> other.outlook().site().equals(decision.outlook().site()))
            .map(other -> other.outlook().tag())
            .collect(Collectors.joining(", "));
    return others.isEmpty()
        ? ""
        : " Done with "
            + others
            + ", so that access and shutdown, "
            + PlanWords.money(decision.outlook().replacing().shutdown())
            + ", are paid once.";
  }

  private List<String> shifts(UnitDecision decision) {
    List<String> shifts = new ArrayList<>();
    for (int shift : new int[] {-5, -2, -1, 1, 2, 5}) {
      OptionalDouble cost = decision.best().costOfShift(shift);
      if (cost.isPresent() && decision.best().withinHorizon()) {
        int years = Math.abs(shift);
        shifts.add(
            years
                + (years == 1 ? " year " : " years ")
                + (shift < 0 ? "early: " : "late: ")
                + PlanWords.money(cost.getAsDouble()));
      }
    }
    return shifts;
  }

  String kind(UnitDecision decision) {
    return economics.kindName(decision.outlook().assessment().history().unit().kind());
  }

  String year(int index) {
    return index < terms.horizon() ? "" + (terms.firstYear() + index) : "keep";
  }
}

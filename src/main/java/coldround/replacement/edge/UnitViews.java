package coldround.replacement.edge;

import coldround.http.Measured;
import coldround.http.ReasonView;
import coldround.quantity.MeasureSystem;
import coldround.replacement.Economics;
import coldround.replacement.Sensitivity;
import coldround.replacement.Terms;
import coldround.replacement.UnitDecision;
import coldround.replacement.YearCost;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** The units of a plan as the API answers them. */
record UnitViews(Terms terms, Economics economics, MeasureSystem system) {

  record UnitName(String id, String customer, String site, String tag) {}

  record UnitView(
      UnitName unit,
      String kind,
      BigDecimal score,
      Integer replaceIn,
      Integer bestYear,
      Measured forgone,
      Map<String, Measured> costOfShift,
      Measured price,
      Integer mustBy,
      Integer notBefore,
      List<Keeping> keeping,
      List<Flip> sensitivity,
      List<ReasonView> reasons) {}

  record Keeping(
      int year,
      BigDecimal faults,
      Measured repairs,
      Measured stock,
      Measured downtime,
      Measured refrigerant,
      Measured energy,
      Measured upkeep,
      Measured total) {}

  record Flip(String assumption, BigDecimal below, BigDecimal above) {}

  private static final int[] SHIFTS = {-5, -2, -1, 1, 2, 5};

  UnitView of(UnitDecision decision) {
    var outlook = decision.outlook();
    return new UnitView(
        new UnitName(outlook.id(), outlook.customer(), outlook.site(), outlook.tag()),
        outlook.assessment().history().unit().kind(),
        Measured.number(outlook.assessment().condition().score()),
        decision.replaced() ? year(decision.year()) : null,
        decision.best().withinHorizon() ? year(decision.best().year()) : null,
        money(decision.forgone()),
        shifts(decision),
        money(outlook.replacing().price()),
        decision.must().isPresent() ? year(decision.must().getAsInt()) : null,
        decision.mustNot().isPresent() ? year(decision.mustNot().getAsInt()) : null,
        keeping(decision),
        Sensitivity.of(outlook, terms.discount()).stream()
            .map(flip -> new Flip(flip.assumption(), factor(flip.below()), factor(flip.above())))
            .toList(),
        outlook.reasons().stream().map(reason -> ReasonView.of(reason, system)).toList());
  }

  private static BigDecimal factor(OptionalDouble factor) {
    return factor.isEmpty()
        ? null
        : Measured.number(Math.round(factor.getAsDouble() * 1000) / 1000.0);
  }

  private Map<String, Measured> shifts(UnitDecision decision) {
    Map<String, Measured> shifts = new LinkedHashMap<>();
    for (int shift : SHIFTS) {
      OptionalDouble cost = decision.best().costOfShift(shift);
      if (cost.isPresent() && decision.best().withinHorizon()) {
        shifts.put((shift > 0 ? "+" : "") + shift, money(cost.getAsDouble()));
      }
    }
    return shifts;
  }

  private List<Keeping> keeping(UnitDecision decision) {
    List<Keeping> years = new ArrayList<>();
    for (int t = 0; t < decision.outlook().horizon(); t++) {
      YearCost cost = decision.outlook().keeping().get(t);
      years.add(
          new Keeping(
              year(t),
              Measured.number(cost.faults()),
              money(cost.repairs()),
              money(cost.stock()),
              money(cost.downtime()),
              money(cost.refrigerant()),
              money(cost.energy()),
              money(cost.upkeep()),
              money(cost.total())));
    }
    return years;
  }

  private int year(int index) {
    return terms.firstYear() + index;
  }

  private Measured money(double amount) {
    return PlanView.money(economics, amount);
  }
}

package coldround.replacement.edge;

import coldround.http.Measured;
import coldround.quantity.Measure;
import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import coldround.replacement.Economics;
import coldround.replacement.Moved;
import coldround.replacement.Planner;
import coldround.replacement.Policy;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.Terms;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The plan as the API answers it. */
record PlanView(
    String id,
    Instant made,
    LocalDate asOf,
    int firstYear,
    int horizon,
    String basis,
    Measured discountRate,
    Measured inflation,
    BigDecimal carryOver,
    PlanRequest.Factors factors,
    long seed,
    int runs,
    String status,
    Measured cost,
    Measured bound,
    BigDecimal gap,
    Measured costWithoutLimits,
    Measured costOfLimits,
    OneMore nextBestUse,
    List<YearView> years,
    List<UnitViews.UnitView> units,
    List<PolicyView> comparison,
    List<Assumption> assumptions,
    List<String> cautions) {

  record OneMore(
      Integer year, Measured amount, Measured saving, Measured asPartOfMore, List<String> moved) {}

  record YearView(
      int year,
      Measured limit,
      Measured replacements,
      Measured unplanned,
      Measured running,
      Measured low,
      Measured middle,
      Measured high,
      BigDecimal chanceOverLimit,
      List<String> units) {}

  record PolicyView(
      String policy,
      String name,
      Measured expectedCost,
      Measured simulatedCost,
      Measured standardError,
      BigDecimal chanceOverLimit,
      int plannedYearsOverLimit,
      List<Measured> low,
      List<Measured> high) {}

  record Assumption(String name, Measured value, Measured low, Measured high, String source) {}

  static PlanView of(
      String id, Instant made, ReplacementPlan plan, Economics economics, MeasureSystem system) {
    return new Making(plan, economics, system).view(id, made);
  }

  static Measured money(Economics economics, double amount) {
    return Measured.asGiven(economics.costs().money(Math.round(amount * 100) / 100.0));
  }

  /** Translates one plan. */
  private record Making(ReplacementPlan plan, Economics economics, MeasureSystem system) {

    PlanView view(String id, Instant made) {
      Terms terms = plan.order().terms();
      return new PlanView(
          id,
          made,
          terms.asOf(),
          terms.firstYear(),
          terms.horizon(),
          terms.nominal() ? "nominal" : "real",
          rate(told(terms)),
          rate(terms.inflation()),
          Measured.number(plan.order().carryOver()),
          factors(plan.order().moved()),
          plan.order().seed(),
          plan.order().runs(),
          plan.solution().gap() <= Planner.GAP ? "proven" : "best-found",
          money(plan.solution().cost()),
          money(plan.solution().bound()),
          Measured.number(plan.solution().gap()),
          money(plan.withoutLimits()),
          money(plan.costOfLimits()),
          oneMore(),
          years(),
          plan.decisions().stream()
              .map(new UnitViews(plan.order().terms(), economics, system)::of)
              .toList(),
          plan.comparison().stream().map(this::policy).toList(),
          assumptions(),
          cautions());
    }

    private static double told(Terms terms) {
      double real = terms.discount().rate();
      return terms.nominal() ? (1 + real) * (1 + terms.inflation()) - 1 : real;
    }

    private static PlanRequest.Factors factors(Moved moved) {
      return new PlanRequest.Factors(
          moved.price(), moved.faults(), moved.refrigerant(), moved.electricity());
    }

    private static Measured rate(double share) {
      return Measured.asGiven(new Quantity(100 * share, Measure.PERCENT_PER_YEAR));
    }

    private Measured money(double amount) {
      return PlanView.money(economics, amount);
    }

    private List<Measured> money(double[] amounts) {
      List<Measured> all = new ArrayList<>();
      for (double amount : amounts) {
        all.add(money(amount));
      }
      return all;
    }

    private int year(int index) {
      return plan.order().terms().firstYear() + index;
    }

    private OneMore oneMore() {
      ReplacementPlan.OneMore more = plan.more();
      return more.year() < 0
          ? null
          : new OneMore(
              year(more.year()),
              money(more.amount()),
              money(more.saving()),
              money(more.asPartOfMore()),
              more.moved());
    }

    private List<YearView> years() {
      Policy.Outcome ours = plan.ours();
      List<YearView> years = new ArrayList<>();
      for (int t = 0; t < plan.spend().length; t++) {
        int at = t;
        double limit = plan.order().limits()[t];
        years.add(
            new YearView(
                year(t),
                Double.isInfinite(limit) ? null : money(limit),
                money(plan.spend()[t]),
                money(ours.expected().unplanned(t)),
                money(plan.ours().expected().running()[t]),
                money(ours.low()[t]),
                money(ours.middle()[t]),
                money(ours.high()[t]),
                Measured.number(ours.overInYear()[t]),
                plan.decisions().stream()
                    .filter(decision -> decision.year() == at)
                    .map(decision -> decision.outlook().id())
                    .toList()));
      }
      return years;
    }

    private PolicyView policy(Policy.Outcome outcome) {
      return new PolicyView(
          outcome.policy().code(),
          outcome.policy().name(),
          money(outcome.expected().today()),
          money(outcome.mean()),
          money(outcome.standardError()),
          Measured.number(outcome.over()),
          plan.plannedYearsOver(outcome),
          money(outcome.low()),
          money(outcome.high()));
    }

    private List<Assumption> assumptions() {
      return Stream.concat(
              Assumed.rates(economics).stream(), Assumed.costs(plan, economics).stream())
          .map(
              one ->
                  new Assumption(
                      one.name(),
                      Measured.asGiven(one.value()),
                      one.low() == null ? null : Measured.asGiven(one.low()),
                      one.high() == null ? null : Measured.asGiven(one.high()),
                      one.source().toString()))
          .toList();
    }

    private List<String> cautions() {
      Set<String> all = new LinkedHashSet<>();
      plan.decisions().forEach(d -> all.addAll(d.outlook().assessment().condition().cautions()));
      return List.copyOf(all);
    }
  }
}

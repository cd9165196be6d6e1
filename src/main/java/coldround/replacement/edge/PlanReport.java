package coldround.replacement.edge;

import coldround.quantity.MeasureSystem;
import coldround.reason.Reason;
import coldround.replacement.Drawing;
import coldround.replacement.Economics;
import coldround.replacement.Moved;
import coldround.replacement.Planner;
import coldround.replacement.Policy;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.Sensitivity;
import coldround.replacement.Terms;
import coldround.replacement.UnitDecision;
import coldround.replacement.YearCost;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The plan told to the customer, as a page that also prints. */
final class PlanReport {

  private static final int MOST_UNITS_TOLD = 4;
  private static final int MOST_ROWS = 25;

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance report(Told plan);
  }

  /** One year in words. */
  record Year(
      int year,
      String limit,
      String replacements,
      String running,
      String band,
      String chance,
      String units) {}

  /** One line of the list of units. */
  record Line(
      String place,
      String tag,
      String kind,
      String score,
      String keep,
      String best,
      String year,
      String forgone) {}

  /** Half a page on one unit. */
  record Half(
      String title,
      String verdict,
      String picture,
      String score,
      List<String> shifts,
      List<String> reasons,
      List<String> flips) {}

  record Way(String name, String cost, String chance) {}

  record Assumed(String meaning, String value, String range, String source) {}

  /** All that the template shows. */
  record Told(
      String customers,
      String made,
      int first,
      int last,
      String money,
      String basis,
      String headline,
      String proof,
      String limitCost,
      String more,
      String picture,
      List<Year> years,
      List<Half> halves,
      List<Line> lines,
      int others,
      List<Way> ways,
      List<Assumed> assumptions,
      List<String> cautions) {}

  private final ReplacementPlan plan;
  private final Economics economics;
  private final MeasureSystem system;
  private final Terms terms;

  private PlanReport(ReplacementPlan plan, Economics economics, MeasureSystem system) {
    this.plan = plan;
    this.economics = economics;
    this.system = system;
    this.terms = plan.order().terms();
  }

  static String html(
      ReplacementPlan plan,
      Economics economics,
      Map<String, String> names,
      List<String> cautions,
      MeasureSystem system) {
    return Templates.report(told(plan, economics, names, cautions, system)).render();
  }

  static Told told(
      ReplacementPlan plan,
      Economics economics,
      Map<String, String> names,
      List<String> cautions,
      MeasureSystem system) {
    return new PlanReport(plan, economics, system).told(names, cautions);
  }

  private Told told(Map<String, String> names, List<String> cautions) {
    String customers =
        plan.decisions().stream()
            .map(decision -> decision.outlook().customer())
            .distinct()
            .map(code -> names.getOrDefault(code, code))
            .collect(Collectors.joining(", "));
    List<UnitDecision> worst =
        plan.decisions().stream().sorted(Comparator.comparingInt(this::rank)).toList();
    return new Told(
        customers,
        terms.asOf().toString(),
        terms.firstYear(),
        terms.firstYear() + terms.horizon() - 1,
        economics.costs().currency().code(),
        basis(),
        headline(),
        proof(),
        limitCost(),
        more(),
        Drawing.spending(plan),
        years(),
        worst.stream()
            .filter(UnitDecision::replaced)
            .limit(MOST_UNITS_TOLD)
            .map(this::half)
            .toList(),
        worst.stream().limit(MOST_ROWS).map(this::line).toList(),
        Math.max(0, worst.size() - MOST_ROWS),
        plan.comparison().stream().map(this::way).toList(),
        assumptions(),
        cautions);
  }

  private int rank(UnitDecision decision) {
    return decision.year() * 1000
        + (int) (10 * decision.outlook().assessment().condition().score());
  }

  private String basis() {
    return discounting() + moved();
  }

  private String moved() {
    Moved moved = plan.order().moved();
    return moved.equals(Moved.NOT)
        ? ""
        : String.format(
            Locale.ROOT,
            " Costs were moved from the tables: new units %.2f times, faults %.2f, refrigerant"
                + " %.2f, electricity %.2f.",
            moved.price(),
            moved.faults(),
            moved.refrigerant(),
            moved.electricity());
  }

  private String discounting() {
    double real = terms.discount().rate();
    return terms.nominal()
        ? String.format(
            Locale.ROOT,
            "Amounts of a year are in the money of that year, with an inflation of %.1f %% a year;"
                + " the nominal discount rate is %.1f %%. Costs compared over years are worth of"
                + " today.",
            100 * terms.inflation(),
            100 * ((1 + real) * (1 + terms.inflation()) - 1))
        : String.format(
            Locale.ROOT,
            "All amounts are in money of today; the real discount rate is %.1f %% a year. What is"
                + " paid later weighs less by that rate, as in NIST Handbook 135.",
            100 * real);
  }

  private String money(double amount) {
    return String.format(Locale.ROOT, "%,d", Math.round(amount));
  }

  private String headline() {
    long replaced = plan.decisions().stream().filter(UnitDecision::replaced).count();
    Policy.Outcome failure = plan.comparison().get(0);
    Policy.Outcome ours = plan.comparison().get(plan.comparison().size() - 1);
    double saved = failure.expected() - ours.expected();
    return replaced
        + " of "
        + plan.decisions().size()
        + " units are replaced within these years, for "
        + money(java.util.Arrays.stream(plan.spend()).sum())
        + ". Against running every unit to failure that "
        + (saved >= 0 ? "saves " : "costs ")
        + money(Math.abs(saved))
        + ", counted as worth of today.";
  }

  private String proof() {
    double percent = 100 * plan.solution().gap();
    if (percent < 0.0005) {
      return "No other plan is cheaper; that is proven.";
    }
    return plan.solution().gap() <= Planner.GAP
        ? String.format(
            Locale.ROOT, "No other plan is cheaper by more than %.3f %%; that is proven.", percent)
        : String.format(
            Locale.ROOT,
            "This is the best plan found in the time given; another might be cheaper by up to %.2f"
                + " %%.",
            percent);
  }

  private String limitCost() {
    double cost = plan.costOfLimits();
    return cost < 1
        ? "The yearly limits cost nothing: without them the plan would be the same or as good."
        : "The yearly limits cost " + money(cost) + " over these years, as worth of today.";
  }

  private String more() {
    ReplacementPlan.OneMore more = plan.more();
    if (more.year() < 0) {
      return "More money would change nothing.";
    }
    int year = terms.firstYear() + more.year();
    if (more.saving() < 1) {
      return money(more.amount())
          + " more in "
          + year
          + " is not enough for another unit; as part of a larger sum it would save about "
          + money(more.asPartOfMore())
          + ".";
    }
    return money(more.amount())
        + " more in "
        + year
        + " would save "
        + money(more.saving())
        + (more.moved().isEmpty()
            ? "."
            : ": " + more.moved().stream().limit(4).collect(Collectors.joining("; ")) + ".");
  }

  private List<Year> years() {
    Policy.Outcome ours = plan.comparison().get(plan.comparison().size() - 1);
    List<Year> years = new ArrayList<>();
    for (int t = 0; t < terms.horizon(); t++) {
      int at = t;
      double limit = plan.order().limits()[t];
      years.add(
          new Year(
              terms.firstYear() + t,
              Double.isInfinite(limit) ? "none" : money(limit),
              money(plan.spend()[t]),
              money(plan.running()[t]),
              money(ours.low()[t]) + " to " + money(ours.high()[t]),
              Double.isInfinite(limit) ? "" : Math.round(100 * ours.overInYear()[t]) + " %",
              plan.decisions().stream()
                  .filter(decision -> decision.year() == at)
                  .map(decision -> decision.outlook().place())
                  .collect(Collectors.joining(", "))));
    }
    return years;
  }

  private Line line(UnitDecision decision) {
    var outlook = decision.outlook();
    return new Line(
        outlook.customer() + " " + outlook.site(),
        outlook.tag(),
        kind(decision),
        String.format(Locale.ROOT, "%.0f", outlook.assessment().condition().score()),
        money(outlook.keeping().get(0).total()),
        year(decision.best().year()),
        year(decision.year()),
        money(decision.forgone()));
  }

  private String kind(UnitDecision decision) {
    return economics.kindName(decision.outlook().assessment().history().unit().kind());
  }

  private String year(int index) {
    return index < terms.horizon() ? "" + (terms.firstYear() + index) : "keep";
  }

  private Half half(UnitDecision decision) {
    var outlook = decision.outlook();
    List<String> reasons = outlook.reasons().stream().map(this::sentence).toList();
    return new Half(
        outlook.tag() + ", " + kind(decision) + ", " + outlook.customer() + " " + outlook.site(),
        verdict(decision),
        Drawing.keeping(decision, terms),
        Drawing.score(decision),
        shifts(decision),
        reasons,
        flips(decision));
  }

  private String sentence(Reason reason) {
    return reason.text(system) + ".";
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
                    + money(decision.forgone()));
    return planned
        + ". Keeping it costs "
        + money(first.total())
        + " in "
        + terms.firstYear()
        + " ("
        + money(first.ofFaults())
        + " for faults, "
        + money(first.refrigerant())
        + " for refrigerant, "
        + money(first.energy())
        + " for avoidable electricity, "
        + money(first.upkeep())
        + " for upkeep); a new one costs "
        + money(annual)
        + " a year with its price."
        + decision.must().stream()
            .mapToObj(by -> " It must be replaced by " + year(by) + ".")
            .collect(Collectors.joining());
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
                + money(cost.getAsDouble()));
      }
    }
    return shifts;
  }

  private List<String> flips(UnitDecision decision) {
    List<String> flips = new ArrayList<>();
    for (Sensitivity one : Sensitivity.of(decision.outlook(), terms.discount())) {
      List<String> at = new ArrayList<>();
      one.below()
          .ifPresent(factor -> at.add(String.format(Locale.ROOT, "%.2f times or less", factor)));
      one.above()
          .ifPresent(factor -> at.add(String.format(Locale.ROOT, "%.2f times or more", factor)));
      flips.add(
          one.assumption()
              + ": "
              + (at.isEmpty() ? "no value from a quarter to fourfold" : String.join(", or ", at)));
    }
    return flips;
  }

  private Way way(Policy.Outcome outcome) {
    return new Way(
        outcome.policy().name(),
        money(outcome.expected()),
        java.util.Arrays.stream(plan.order().limits()).allMatch(Double::isInfinite)
            ? ""
            : Math.round(100 * outcome.over()) + " %");
  }

  private List<Assumed> assumptions() {
    List<Assumed> all = new ArrayList<>();
    economics
        .rates()
        .forEach(
            rate ->
                all.add(
                    new Assumed(
                        rate.meaning(),
                        plain(rate.shown()),
                        plain(rate.low()) + " to " + plain(rate.high()),
                        rate.source().citation())));
    return all;
  }

  private static String plain(coldround.quantity.Quantity quantity) {
    String number =
        java.math.BigDecimal.valueOf(quantity.value()).stripTrailingZeros().toPlainString();
    return quantity.measure().label().isEmpty()
        ? number
        : number + " " + quantity.measure().label();
  }
}

package coldround.replacement.edge;

import coldround.pages.Figures;
import coldround.quantity.MeasureSystem;
import coldround.replacement.Drawing;
import coldround.replacement.Economics;
import coldround.replacement.Policy;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.Terms;
import coldround.replacement.UnitDecision;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
      String unplanned,
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

  record Way(String name, String cost, String planned, String chance) {}

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
      String deaths,
      boolean fewer,
      String picture,
      Map<String, String> fills,
      List<Year> years,
      List<UnitTelling.Half> halves,
      List<Line> lines,
      int others,
      List<Way> ways,
      List<Assumed> rates,
      List<Assumed> costs,
      List<String> cautions) {}

  private final ReplacementPlan plan;
  private final Economics economics;
  private final Terms terms;
  private final PlanWords words;
  private final UnitTelling units;
  private final Map<String, String> names;
  private final PlaceWords places;

  private PlanReport(
      ReplacementPlan plan, Economics economics, MeasureSystem system, Map<String, String> names) {
    this.names = names;
    this.places = new PlaceWords(plan, names);
    this.plan = plan;
    this.economics = economics;
    this.terms = plan.order().terms();
    this.words = new PlanWords(plan);
    this.units = new UnitTelling(economics, system, plan, places);
  }

  static String html(
      ReplacementPlan plan,
      Economics economics,
      Map<String, String> names,
      List<String> cautions,
      MeasureSystem system) {
    Told told = new PlanReport(plan, economics, system, names).told(cautions, MOST_UNITS_TOLD);
    return Templates.report(told).render();
  }

  /** For a page that has no room for single units and what was assumed. */
  static Told summary(
      ReplacementPlan plan, Economics economics, Map<String, String> names, MeasureSystem system) {
    return new PlanReport(plan, economics, system, names).told(List.of(), 0);
  }

  private Told told(List<String> cautions, int halves) {
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
        Figures.day(terms.asOf()),
        terms.firstYear(),
        terms.firstYear() + terms.horizon() - 1,
        economics.costs().currency().code(),
        words.basis(),
        words.headline(),
        words.proof(),
        words.limitCost(),
        words.more(),
        words.deaths(),
        words.fewer(),
        Drawing.spending(plan),
        Drawing.fills(),
        years(),
        worst.stream().filter(UnitDecision::replaced).limit(halves).map(units::half).toList(),
        worst.stream().limit(MOST_ROWS).map(this::line).toList(),
        Math.max(0, worst.size() - MOST_ROWS),
        plan.comparison().stream().map(this::way).toList(),
        Assumed.rates(economics),
        Assumed.costs(plan, economics),
        cautions);
  }

  private int rank(UnitDecision decision) {
    return decision.year() * 1000
        + (int) (10 * decision.outlook().assessment().condition().score());
  }

  private List<Year> years() {
    Policy.Outcome ours = plan.ours();
    List<Year> years = new ArrayList<>();
    for (int t = 0; t < terms.horizon(); t++) {
      int at = t;
      double limit = plan.order().limits()[t];
      years.add(
          new Year(
              terms.firstYear() + t,
              Double.isInfinite(limit) ? "none" : PlanWords.money(limit),
              PlanWords.money(plan.spend()[t]),
              PlanWords.money(ours.expected().unplanned(t)),
              PlanWords.money(ours.expected().running()[t]),
              PlanWords.money(ours.low()[t]) + " to " + PlanWords.money(ours.high()[t]),
              Double.isInfinite(limit) ? "" : Math.round(100 * ours.overInYear()[t]) + " %",
              places.together(
                  plan.decisions().stream()
                      .filter(decision -> decision.year() == at)
                      .map(UnitDecision::outlook)
                      .toList())));
    }
    return years;
  }

  private Line line(UnitDecision decision) {
    var outlook = decision.outlook();
    return new Line(
        places.of(outlook),
        outlook.tag(),
        units.kind(decision),
        String.format(Locale.ROOT, "%.0f", outlook.assessment().condition().score()),
        PlanWords.money(outlook.keeping().get(0).total()),
        units.year(decision.best().year()),
        units.year(decision.year()),
        PlanWords.money(decision.forgone()));
  }

  private Way way(Policy.Outcome outcome) {
    return new Way(
        outcome.policy().name(),
        PlanWords.money(outcome.expected().today()),
        words.unlimited() ? "" : plan.plannedYearsOver(outcome) + " of " + terms.horizon(),
        words.unlimited() ? "" : Math.round(100 * outcome.over()) + "\u00a0%");
  }
}

package coldround.replacement.edge;

import coldround.replacement.Moved;
import coldround.replacement.Planner;
import coldround.replacement.Policy;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.Terms;
import coldround.replacement.UnitDecision;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The sentences on a plan as a whole. */
final class PlanWords {

  private final ReplacementPlan plan;
  private final Terms terms;

  PlanWords(ReplacementPlan plan) {
    this.plan = plan;
    this.terms = plan.order().terms();
  }

  String basis() {
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

  static String money(double amount) {
    return String.format(Locale.ROOT, "%,d", Math.round(amount));
  }

  String headline() {
    long replaced = plan.decisions().stream().filter(UnitDecision::replaced).count();
    Policy.Outcome failure = plan.comparison().get(0);
    Policy.Outcome ours = plan.ours();
    double saved = failure.expected().today() - ours.expected().today();
    return replaced
        + " of "
        + plan.decisions().size()
        + " units are replaced within these years, for "
        + money(Arrays.stream(plan.spend()).sum())
        + ". Against running every unit to failure that "
        + (saved >= 0 ? "saves " : "costs ")
        + money(Math.abs(saved))
        + ", counted as worth of today.";
  }

  String proof() {
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

  boolean unlimited() {
    return Arrays.stream(plan.order().limits()).allMatch(Double::isInfinite);
  }

  /** Limits hold what is planned; this says what comes besides. */
  String deaths() {
    double sum = 0;
    for (int year = 0; year < terms.horizon(); year++) {
      sum += plan.ours().expected().unplanned(year);
    }
    double each = sum / terms.horizon();
    String besides =
        each < 1
            ? "Units that may die before their turn are not expected to add to it."
            : "Units that die before their turn have to be replaced at once, whatever was planned:"
                + " on average that adds "
                + money(each)
                + " a year, so keep a reserve.";
    return unlimited()
        ? besides
        : "What is planned keeps within the limit in every year. " + besides;
  }

  /** True when in some year units are expected to be dead before their turn in it. */
  boolean fewer() {
    return IntStream.range(0, terms.horizon())
        .anyMatch(year -> plan.ours().expected().unplanned(year) < -0.5);
  }

  String limitCost() {
    if (unlimited()) {
      return "No yearly limit was set.";
    }
    double cost = plan.costOfLimits();
    return cost < 1
        ? "The yearly limits cost nothing: without them the plan would be the same or as good."
        : "The yearly limits cost " + money(cost) + " over these years, as worth of today.";
  }

  String more() {
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
}

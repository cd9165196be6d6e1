package coldround.replacement.edge;

import coldround.replacement.ReplacementPlan;
import coldround.replacement.UnitDecision;
import coldround.replacement.YearCost;
import coldround.sheet.SheetWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The plan as a list of units for a spreadsheet program. */
final class PlanSheet {

  private PlanSheet() {}

  static byte[] of(ReplacementPlan plan, String currency) {
    StringWriter text = new StringWriter();
    try (SheetWriter rows = SheetWriter.guarded(text)) {
      String money = " [" + currency + "]";
      rows.write(
          List.of(
              "customer",
              "site",
              "unit",
              "kind",
              "score",
              "replace_in",
              "best_year",
              "price" + money,
              "cost_over_best_year" + money,
              "faults_first_year",
              "keeping_first_year" + money,
              "keeping_last_year" + money,
              "must_by",
              "not_before"));
      plan.decisions().forEach(decision -> rows.write(row(plan, decision)));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> row(ReplacementPlan plan, UnitDecision decision) {
    var outlook = decision.outlook();
    int first = plan.order().terms().firstYear();
    YearCost now = outlook.keeping().get(0);
    YearCost last = outlook.keeping().get(outlook.horizon() - 1);
    return List.of(
        outlook.customer(),
        outlook.site(),
        outlook.tag(),
        outlook.assessment().history().unit().kind(),
        number(outlook.assessment().condition().score()),
        decision.replaced() ? "" + (first + decision.year()) : "",
        decision.best().withinHorizon() ? "" + (first + decision.best().year()) : "",
        number(outlook.replacing().price()),
        number(decision.forgone()),
        number(now.faults()),
        number(now.total()),
        number(last.total()),
        decision.must().isPresent() ? "" + (first + decision.must().getAsInt()) : "",
        decision.mustNot().isPresent() ? "" + (first + decision.mustNot().getAsInt()) : "");
  }

  private static String number(double value) {
    return java.math.BigDecimal.valueOf(value)
        .setScale(2, java.math.RoundingMode.HALF_UP)
        .toPlainString();
  }
}

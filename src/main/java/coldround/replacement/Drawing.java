package coldround.replacement;

import java.util.Locale;
import java.util.Map;

/** Pictures of a plan as SVG, in colours whose greys are as far apart, so that they print. */
public final class Drawing {

  private static final double WIDTH = 660;
  private static final double NARROW = 330;
  private static final double LEFT = 64;
  private static final double BOTTOM = 24;
  private static final double TOP = 16;
  private static final String PLANNED = "#17406d";
  private static final String UNPLANNED = "#7d9cbf";
  private static final String RUNNING = "#dbe4ee";

  private final StringBuilder svg = new StringBuilder();
  private final double height;
  private final double most;

  private Drawing(double height, double most, String name) {
    this(WIDTH, height, most, name);
  }

  private Drawing(double width, double height, double most, String name) {
    this.height = height;
    this.most = most <= 0 ? 1 : most;
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"%s\" width=\"%.0f\""
            + " height=\"%.0f\" viewBox=\"0 0 %.0f %.0f\" font-family=\"Helvetica, Arial,"
            + " sans-serif\" font-size=\"11\">",
        name, width, height, width, height);
  }

  private void add(String format, Object... values) {
    svg.append(String.format(Locale.ROOT, format, values));
  }

  private double y(double value) {
    return height - BOTTOM - value / most * (height - BOTTOM - TOP);
  }

  private static double round(double most) {
    double step = Math.pow(10, Math.floor(Math.log10(Math.max(1, most / 4))));
    for (double factor : new double[] {1, 2, 2.5, 5}) {
      if (factor * step * 4 >= most) {
        return factor * step;
      }
    }
    return 10 * step;
  }

  private void grid() {
    double step = round(most);
    for (double value = 0; value <= most; value += step) {
      add(
          "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#ccc\"/>",
          LEFT, y(value), WIDTH, y(value));
      add(
          "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%,.0f</text>",
          LEFT - 6, y(value) + 4, value);
    }
  }

  private void bar(double x, double wide, double from, double to, String fill) {
    add(
        "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"%s\" stroke=\"#222\""
            + " stroke-width=\"0.6\"/>",
        x, y(to), wide, Math.max(0, y(from) - y(to)), fill);
  }

  private void under(double x, int year) {
    add("<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">%d</text>", x, height - 8, year);
  }

  private String done() {
    return svg.append("</svg>").toString();
  }

  /** What each part of the yearly spending is filled with, by name. */
  public static Map<String, String> fills() {
    return Map.of("planned", PLANNED, "unplanned", UNPLANNED, "running", RUNNING);
  }

  /**
   * Yearly spending, running below, planned replacements on it and on top what units add that die
   * before their turn; with the 80 % band.
   */
  public static String spending(ReplacementPlan plan) {
    Policy.Outcome ours = plan.ours();
    Expected expected = ours.expected();
    int years = plan.spend().length;
    double most = 0;
    for (int t = 0; t < years; t++) {
      double all = expected.running()[t] + Math.max(plan.spend()[t], expected.capital()[t]);
      most = Math.max(most, Math.max(all, ours.high()[t]));
    }
    Drawing drawing = new Drawing(210, most * 1.05, "Spending by year");
    drawing.grid();
    double wide = (WIDTH - LEFT) / years;
    for (int t = 0; t < years; t++) {
      double x = LEFT + wide * t;
      double running = expected.running()[t];
      // where dead units leave planned replacements undone, the planned part is the smaller
      double planned = running + Math.min(plan.spend()[t], expected.capital()[t]);
      drawing.bar(x + wide * 0.15, wide * 0.6, 0, running, RUNNING);
      drawing.bar(x + wide * 0.15, wide * 0.6, running, planned, PLANNED);
      drawing.bar(x + wide * 0.15, wide * 0.6, planned, running + expected.capital()[t], UNPLANNED);
      drawing.band(x + wide * 0.85, ours.low()[t], ours.high()[t]);
      drawing.under(x + wide * 0.5, plan.order().terms().firstYear() + t);
    }
    return drawing.done();
  }

  private void band(double x, double low, double high) {
    add(
        "<path d=\"M%.1f %.1fH%.1fM%.1f %.1fV%.1fM%.1f %.1fH%.1f\" stroke=\"#000\""
            + " stroke-width=\"1.4\" fill=\"none\"/>",
        x - 4, y(low), x + 4, x, y(low), y(high), x - 4, y(high), x + 4);
  }

  /** What keeping a unit costs in each year against what a new one costs a year. */
  public static String keeping(UnitDecision decision, Terms terms) {
    UnitOutlook unit = decision.outlook();
    double annual = newAnnual(unit, terms.discount());
    double most = annual;
    int years = unit.horizon();
    for (int t = 0; t < years; t++) {
      most = Math.max(most, keptFor(unit, t));
    }
    Drawing drawing = new Drawing(104, most * 1.15, "Keeping against replacing");
    drawing.grid();
    double wide = (WIDTH - LEFT) / years;
    for (int t = 0; t < years; t++) {
      double x = LEFT + wide * t;
      String fill = t < decision.best().year() ? RUNNING : UNPLANNED;
      drawing.bar(x + wide * 0.2, wide * 0.6, 0, keptFor(unit, t), fill);
      drawing.under(x + wide * 0.5, terms.firstYear() + t);
    }
    drawing.add(
        "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#000\" stroke-width=\"1.6\""
            + " stroke-dasharray=\"6 4\"/>",
        LEFT, drawing.y(annual), WIDTH, drawing.y(annual));
    drawing.add(
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">dashed: a new one, %,.0f a year</text>",
        WIDTH, TOP - 6, annual);
    drawing.mark(decision, wide);
    return drawing.done();
  }

  private void mark(UnitDecision decision, double wide) {
    if (decision.best().withinHorizon()) {
      double x = LEFT + wide * decision.best().year();
      add(
          "<path d=\"M%.1f %.1fV%.1f\" stroke=\"#000\" stroke-width=\"2.4\"/>",
          x, TOP - 4, height - BOTTOM);
      add("<text x=\"%.1f\" y=\"%.1f\">best</text>", x + 4, TOP + 4);
    }
  }

  /** With the chance of dying in the year, at what that costs more. */
  static double keptFor(UnitOutlook unit, int year) {
    return unit.keeping().get(year).total() + unit.dying()[year] * unit.replacing().surcharge();
  }

  /** Equivalent annual cost of a new unit over the horizon. */
  public static double newAnnual(UnitOutlook unit, Discount discount) {
    return unit.successors(discount).presentAt(0) * discount.annualWorth(unit.horizon());
  }

  /** Points that each factor takes of a score. */
  public static String score(UnitDecision decision) {
    var factors = decision.outlook().assessment().condition().factors();
    Drawing drawing = new Drawing(NARROW, 10 + 16.0 * factors.size(), 1, "Score by factor");
    int line = 0;
    for (var factor : factors) {
      double y = 4 + 16.0 * line++;
      double full = 4 * factor.weight();
      drawing.add("<text x=\"0\" y=\"%.1f\">%s</text>", y + 11, factor.factor());
      drawing.add(
          "<rect x=\"110\" y=\"%.1f\" width=\"%.1f\" height=\"13\" fill=\"#fff\" stroke=\"#222\""
              + " stroke-width=\"0.6\"/>",
          y, full);
      drawing.add(
          "<rect x=\"110\" y=\"%.1f\" width=\"%.1f\" height=\"13\" fill=\"%s\"/>",
          y, 4 * factor.lost(), PLANNED);
      drawing.add(
          "<text x=\"%.1f\" y=\"%.1f\">%.1f of %.0f lost</text>",
          118 + full, y + 11, factor.lost(), factor.weight());
    }
    return drawing.done();
  }
}

package coldround.pages;

import coldround.pages.CurvePicture.Curve;
import coldround.pages.CurvePicture.Dot;
import coldround.pages.CurvePicture.Mark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Draws curves that hold their value until the next step. */
final class CurveDrawing {

  private static final double LEFT = 40;
  private static final double TOP = 24;
  private static final double BOTTOM = 30;
  private static final double LINE = 13;
  private static final String[] DASHES = {"", "8 4", "2 3", "10 3 2 3", "5 2", "1 5", "14 4"};

  /**
   * One value from a place on.
   *
   * @param told what happened there; empty for nothing to tell
   */
  record Step(double at, double value, String told) {}

  /** A curve by its steps from left to right; it goes on to {@code end}. */
  record Line(String name, List<Step> steps, double end) {}

  /** Where a scale begins and ends, and its marks by place. */
  record Scale(double low, double high, Map<Double, String> marks) {
    static Scale of(List<Double> marks, int decimals) {
      Map<Double, String> named = new TreeMap<>();
      marks.forEach(mark -> named.put(mark, Figures.decimal(mark, decimals)));
      return new Scale(marks.get(0), marks.get(marks.size() - 1), named);
    }

    private double share(double value) {
      return (value - low) / (high - low);
    }
  }

  private final Scale across;
  private final Scale upright;
  private final int width;
  private final int height;
  private final double right;

  /**
   * @param nameRoom room at the right for the names of the curves
   */
  CurveDrawing(Scale across, Scale upright, int width, int height, double nameRoom) {
    this.across = across;
    this.upright = upright;
    this.width = width;
    this.height = height;
    this.right = width - nameRoom;
  }

  CurvePicture draw(List<Line> lines, String unit, String told) {
    return new CurvePicture(
        width,
        height,
        LEFT,
        right,
        TOP,
        height - BOTTOM,
        unit,
        across.marks.entrySet().stream().map(m -> new Mark(x(m.getKey()), m.getValue())).toList(),
        upright.marks.entrySet().stream().map(m -> new Mark(y(m.getKey()), m.getValue())).toList(),
        curves(lines),
        told);
  }

  private double x(double at) {
    return tenth(LEFT + across.share(at) * (right - LEFT));
  }

  private double y(double value) {
    return tenth(height - BOTTOM - upright.share(value) * (height - TOP - BOTTOM));
  }

  private static double tenth(double place) {
    return Math.round(place * 10) / 10.0;
  }

  private List<Curve> curves(List<Line> lines) {
    double[] names = names(lines);
    List<Curve> curves = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      Line line = lines.get(i);
      List<Dot> dots =
          line.steps.stream()
              .filter(step -> !step.told.isEmpty())
              .map(step -> new Dot(x(step.at), y(step.value), step.told))
              .toList();
      curves.add(new Curve(line.name, DASHES[i % DASHES.length], points(line), names[i], dots));
    }
    return curves;
  }

  private String points(Line line) {
    StringBuilder points = new StringBuilder();
    double before = Double.NaN;
    for (Step step : line.steps) {
      if (!Double.isNaN(before)) {
        points.append(x(step.at)).append(',').append(before).append(' ');
      }
      before = y(step.value);
      points.append(x(step.at)).append(',').append(before).append(' ');
    }
    return points.append(x(line.end)).append(',').append(before).toString();
  }

  /** Heights of the names, pushed apart where curves end close together. */
  private double[] names(List<Line> lines) {
    double[] heights = new double[lines.size()];
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < heights.length; i++) {
      List<Step> steps = lines.get(i).steps;
      heights[i] = y(steps.get(steps.size() - 1).value);
      order.add(i);
    }
    order.sort(Comparator.<Integer>comparingDouble(i -> heights[i]).reversed());
    double below = Double.POSITIVE_INFINITY;
    for (int i : order) {
      heights[i] = tenth(Math.min(heights[i], below - LINE));
      below = heights[i];
    }
    return heights;
  }
}

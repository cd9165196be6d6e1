package coldround.pages;

import coldround.pages.CurveDrawing.Line;
import coldround.pages.CurveDrawing.Scale;
import coldround.pages.CurveDrawing.Step;
import coldround.scoring.FleetFaults.Curve;
import coldround.scoring.statistics.FaultTally;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Draws the mean cumulative number of faults by time under observation. */
public final class FaultCurves {

  private static final int WIDTH = 860;
  private static final int HEIGHT = 340;
  private static final double NAMES = 250;
  private static final int MARKS = 6;

  private FaultCurves() {}

  /** Empty curves give a field with nothing in it, which says so. */
  public static CurvePicture draw(List<Curve> curves) {
    List<Line> lines = curves.stream().map(FaultCurves::line).toList();
    double years = lines.stream().mapToDouble(Line::end).max().orElse(1);
    double most =
        lines.stream()
            .flatMap(line -> line.steps().stream())
            .mapToDouble(Step::value)
            .max()
            .orElse(1);
    return new CurveDrawing(scale(years), scale(most), WIDTH, HEIGHT, NAMES)
        .draw(lines, "faults a unit by years under observation", told(curves));
  }

  private static Scale scale(double most) {
    double step = Axis.step(Math.max(most, 0.1), MARKS);
    List<Double> marks = new ArrayList<>();
    for (int n = 0; n == 0 || (n - 1) * step < most; n++) {
      marks.add(n * step);
    }
    if (marks.size() == 1) {
      marks.add(step);
    }
    return Scale.of(marks, step < 0.1 ? 2 : step < 1 ? 1 : 0);
  }

  private static Line line(Curve curve) {
    List<Step> steps = new ArrayList<>();
    steps.add(new Step(0, 0, ""));
    curve
        .steps()
        .forEach(step -> steps.add(new Step(step.age() / FaultTally.DAYS_A_YEAR, step.mean(), "")));
    return new Line(name(curve), steps, curve.longestDays() / FaultTally.DAYS_A_YEAR);
  }

  private static String name(Curve curve) {
    String code = curve.failureMode().isEmpty() ? curve.faultClass() : curve.failureMode();
    return Words.title(code) + ", " + Words.count(curve.faults(), "fault", "faults");
  }

  private static String told(List<Curve> curves) {
    return curves.isEmpty()
        ? "No unit has been watched yet."
        : "Mean number of faults a unit by its time under observation: "
            + curves.stream().map(FaultCurves::last).collect(Collectors.joining("; "))
            + ".";
  }

  private static String last(Curve curve) {
    double mean = curve.steps().isEmpty() ? 0 : curve.steps().get(curve.steps().size() - 1).mean();
    return name(curve)
        + ", "
        + Figures.decimal(mean, 2)
        + " a unit in up to "
        + Figures.decimal(curve.longestDays() / FaultTally.DAYS_A_YEAR, 1)
        + " years";
  }
}

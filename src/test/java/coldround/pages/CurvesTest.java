package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.scoring.FleetFaults.Curve;
import coldround.scoring.statistics.MeanCumulativeFunction.Step;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class CurvesTest {

  private static Curve curve(String name, double days, double... means) {
    List<Step> steps = new java.util.ArrayList<>();
    for (int i = 0; i < means.length; i++) {
      steps.add(new Step(365 * (i + 1), 10, 1, means[i], 0.1));
    }
    return new Curve(name, "", 10, means.length, 30, days, steps);
  }

  @Test
  void aCurveStepsUpAndEndsWithTheLongestWatchedUnit() {
    CurvePicture picture = FaultCurves.draw(List.of(curve("walk-in", 1461, 1, 2, 4)));
    String[] points = picture.curves().get(0).points().split(" ");
    assertEquals(8, points.length, "from nothing, two points a step, to the end");
    double[] first = point(points[0]);
    double[] last = point(points[points.length - 1]);
    assertEquals(picture.left(), first[0]);
    assertEquals(picture.bottom(), first[1]);
    assertEquals(picture.right(), last[0], 1e-9, "4 years is the last mark");
    assertEquals(picture.top(), last[1], 1e-9, "4 faults is the highest mark");
    assertTrue(picture.told().contains("4.00 a unit in up to 4.0 years"), picture.told());
  }

  private static double[] point(String text) {
    String[] parts = text.split(",");
    return new double[] {Double.parseDouble(parts[0]), Double.parseDouble(parts[1])};
  }

  @Test
  void namesOfCurvesThatEndTogetherDoNotLieOnEachOther() {
    CurvePicture picture =
        FaultCurves.draw(
            List.of(curve("a", 900, 1, 2), curve("b", 900, 1, 2), curve("c", 900, 1, 2)));
    List<Double> heights =
        picture.curves().stream().map(CurvePicture.Curve::nameY).sorted().toList();
    assertTrue(heights.get(1) - heights.get(0) >= 12.9 && heights.get(2) - heights.get(1) >= 12.9);
    assertEquals(3, picture.curves().stream().map(CurvePicture.Curve::dashes).distinct().count());
  }

  @Test
  void noCurvesAreSaidToBeNone() {
    CurvePicture picture = FaultCurves.draw(List.of());
    assertEquals(List.of(), picture.curves());
    assertEquals("No unit has been watched yet.", picture.told());
    assertEquals(0, FaultCurves.draw(List.of(curve("quiet", 100))).curves().get(0).steps().size());
  }

  @Test
  void aScoreHoldsUntilTheDayItChanges() {
    LocalDate day = LocalDate.parse("2026-01-01");
    CurvePicture picture =
        ScoreCurve.draw(
            List.of(
                new ScoreCurve.Day(day, 100, "visit 1"),
                new ScoreCurve.Day(day.plusDays(100), 0, "visit 2")),
            day.plusDays(200),
            860,
            220);
    CurvePicture.Curve curve = picture.curves().get(0);
    String[] points = curve.points().split(" ");
    assertEquals(4, points.length);
    assertEquals(picture.top(), point(points[0])[1]);
    assertEquals(picture.top(), point(points[1])[1], "still 100 on the day before");
    assertEquals(picture.bottom(), point(points[2])[1]);
    assertEquals((picture.left() + picture.right()) / 2, point(points[2])[0], 0.11);
    assertEquals(2, curve.steps().size());
    assertTrue(curve.steps().get(1).label().contains("visit 2"));
    assertTrue(picture.told().startsWith("Condition score from 100.0 on "), picture.told());
  }

  @Test
  void oneDayIsAPictureToo() {
    LocalDate day = LocalDate.parse("2026-01-01");
    CurvePicture picture =
        ScoreCurve.draw(List.of(new ScoreCurve.Day(day, 61.5, "")), day, 340, 220);
    assertTrue(!picture.curves().get(0).points().contains("NaN"));
  }
}

package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SplitDrawingTest {

  private static final LocalDate CLEANED = LocalDate.of(2025, 3, 1);

  /** Two readings before the cleaning, two after it, one left out. */
  private static final SplitSeries SERIES =
      new SplitSeries(
          List.of(
              used(LocalDate.of(2025, 1, 1), 20, true),
              used(CLEANED, 25, true),
              used(LocalDate.of(2025, 3, 20), 15, true),
              new SplitSeries.Point(LocalDate.of(2025, 4, 1), 40, true, Optional.of(Sample.cold())),
              used(LocalDate.of(2025, 6, 1), 18, true)),
          OptionalDouble.of(15),
          "",
          OptionalDouble.of(24),
          List.of(CLEANED),
          LocalDate.of(2025, 6, 30),
          Optional.empty());

  private static SplitSeries.Point used(LocalDate day, double splitK, boolean asFound) {
    return new SplitSeries.Point(day, splitK, asFound, Optional.empty());
  }

  private static SplitPicture draw(SplitSeries series) {
    return SplitDrawing.draw(series, MeasureSystem.SI, 800, 300);
  }

  @Test
  void laterLiesFurtherRightAndMoreLiesHigher() {
    List<SplitPicture.Dot> dots = draw(SERIES).dots();
    for (int i = 1; i < dots.size(); i++) {
      assertTrue(dots.get(i).x() > dots.get(i - 1).x());
    }
    assertTrue(dots.get(1).y() < dots.get(0).y());
    assertTrue(dots.get(2).y() > dots.get(1).y());
  }

  @Test
  void theFirstDayIsAtTheLeftEdgeAndMarksAreWhereTheirValuesAre() {
    SplitPicture picture = draw(SERIES);
    assertEquals(picture.left(), picture.dots().get(0).x());
    SplitPicture.Mark twenty =
        picture.splits().stream().filter(m -> m.label().equals("20")).findFirst().orElseThrow();
    assertEquals(picture.dots().get(0).y(), twenty.at(), 0.06);
  }

  // a picture of 800 by 300 with a field from 40 to 788 and 30 to 270; days 0 to 181 since 1
  // January;
  // scale 15 to 40 K: 1 March is day 59, 25 K is 10 of 25
  @Test
  void placesCanBeRecomputedByHand() {
    SplitPicture.Dot cleaned = draw(SERIES).dots().get(1);
    assertEquals(40 + 59.0 / 181 * 748, cleaned.x(), 0.06);
    assertEquals(270 - 10.0 / 25 * 240, cleaned.y(), 0.06);
  }

  @Test
  void linesJoinReadingsOfOneCycleOnlyAndLeaveOutWhatIsNotComputedWith() {
    SplitPicture picture = draw(SERIES);
    List<SplitPicture.Dot> dots = picture.dots();
    assertEquals(
        List.of(at(dots.get(0)) + " " + at(dots.get(1)), at(dots.get(2)) + " " + at(dots.get(4))),
        picture.runs());
    assertEquals(
        List.of(true, true, true, false, true), dots.stream().map(SplitPicture.Dot::used).toList());
    assertTrue(dots.get(3).label().endsWith("left out: the ambient was below 15.6 °C"));
  }

  private static String at(SplitPicture.Dot dot) {
    return dot.x() + "," + dot.y();
  }

  @Test
  void cleaningsAndLevelsHaveTheirPlace() {
    SplitPicture picture = draw(SERIES);
    assertEquals(picture.dots().get(1).x(), picture.cleanings().get(0).at());
    assertEquals(
        List.of("clean split 15.0 K", "limit 24.0 K"),
        picture.levels().stream().map(SplitPicture.Level::label).toList());
    assertEquals(picture.dots().get(2).y(), picture.levels().get(0).y());
  }

  @ParameterizedTest
  @EnumSource(MeasureSystem.class)
  void everythingStaysInsideTheField(MeasureSystem system) {
    SplitPicture picture = SplitDrawing.draw(Sample.splits(), system, 340, 280);
    picture.dots().forEach(dot -> inside(picture, dot.x(), dot.y()));
    for (String each : (picture.band() + " " + picture.course()).split(" ")) {
      String[] xy = each.split(",");
      inside(picture, Double.parseDouble(xy[0]), Double.parseDouble(xy[1]));
    }
    picture.levels().forEach(level -> inside(picture, picture.left(), level.y()));
  }

  private static void inside(SplitPicture picture, double x, double y) {
    assertTrue(x >= picture.left() && x <= picture.right(), "x " + x);
    assertTrue(y >= picture.top() && y <= picture.bottom(), "y " + y);
  }

  // growing 0.02 K a day from 20 K, 24 K is reached after 200 days; the picture goes on a little
  @Test
  void thePictureReachesTheDayOnWhichTheLimitIsCrossed() {
    SplitSeries.Outlook outlook = new SplitSeries.Outlook(20, 19, 21, 0.02, 0.003);
    SplitPicture picture =
        draw(
            new SplitSeries(
                SERIES.readings(),
                SERIES.cleanSplitK(),
                "",
                SERIES.limitK(),
                SERIES.cleanings(),
                SERIES.asOf(),
                Optional.of(outlook)));
    String[] end = picture.course().split(" ")[1].split(",");
    assertEquals(picture.right(), Double.parseDouble(end[0]));
    assertTrue(Double.parseDouble(end[1]) < picture.levels().get(1).y());
  }

  @Test
  void theSentenceSaysTheLatestReadingInTheReadersUnit() {
    assertEquals(
        "5 readings of the condensing split, the latest 18.0 K on 1 Jun 2025. Clean split 15.0 K."
            + " Limit 24.0 K. 1 cleaning.",
        draw(SERIES).told());
  }

  @Test
  void aReadingTakenAfterTheCleaningOfThatDayBelongsToTheNextCycle() {
    SplitSeries after =
        new SplitSeries(
            List.of(
                used(CLEANED.minusDays(30), 24, true),
                used(CLEANED, 25, true),
                used(CLEANED, 15, false),
                used(CLEANED.plusDays(60), 17, true)),
            OptionalDouble.empty(),
            "",
            OptionalDouble.empty(),
            List.of(CLEANED),
            CLEANED.plusDays(90),
            Optional.empty());
    List<SplitPicture.Dot> dots = draw(after).dots();
    assertEquals(
        List.of(at(dots.get(0)) + " " + at(dots.get(1)), at(dots.get(2)) + " " + at(dots.get(3))),
        draw(after).runs());
  }

  // half-widths of 1 K today and 1.2816 x 0.003 K/d x 100 d = 0.384 K of growth add as squares
  @Test
  void theBandWidensAsTheGrowthIsUncertain() {
    SplitSeries.Outlook outlook = new SplitSeries.Outlook(20, 19, 21, 0.02, 0.003);
    assertEquals(22 + 1.0713, outlook.highAfter(100), 1e-3);
    assertEquals(22 - 1.0713, outlook.lowAfter(100), 1e-3);
    assertEquals(21, outlook.highAfter(0), 1e-9);
  }

  @Test
  void oneReadingAloneCanBeDrawn() {
    SplitSeries one =
        new SplitSeries(
            List.of(used(CLEANED, 20, false)),
            OptionalDouble.empty(),
            "",
            OptionalDouble.empty(),
            List.of(),
            CLEANED,
            Optional.empty());
    SplitPicture picture = draw(one);
    assertEquals(List.of(), picture.runs());
    inside(picture, picture.dots().get(0).x(), picture.dots().get(0).y());
  }
}

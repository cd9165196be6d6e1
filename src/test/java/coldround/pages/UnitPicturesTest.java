package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.quantity.MeasureSystem;
import coldround.scoring.FaultEvent;
import coldround.scoring.MonthMargin;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitPicturesTest {

  private static final LocalDate DAY = LocalDate.of(2026, 1, 1);

  private static TripSeries trip(double growthKPerDay, Optional<LocalDate> runsOut) {
    List<MonthMargin> months = new ArrayList<>();
    for (int n = 0; n <= 12; n++) {
      double designC = n == 6 ? 35 : 10;
      months.add(new MonthMargin(YearMonth.of(2026, 1).plusMonths(n), designC, 0));
    }
    SplitSeries.Outlook split = new SplitSeries.Outlook(20, 19, 21, growthKPerDay, 0.001);
    return new TripSeries(DAY, 60, split, months, 5, runsOut);
  }

  // by hand: 60 - 20 is 40 °C now, 40 - 365 * 0.01 is 36.35 °C in a year
  @Test
  void theTripAmbientIsDrawnAndToldAgainstTheHottestMonth() {
    TripPicture picture =
        TripDrawing.draw(
            trip(0.01, Optional.of(LocalDate.of(2026, 7, 1))), MeasureSystem.SI, 800, 300);
    assertTrue(picture.told().contains("40.0 °C"), picture.told());
    assertTrue(picture.told().contains("36.4 °C"), picture.told());
    assertTrue(picture.told().contains("35.0 °C in the hottest month"), picture.told());
    assertEquals("1 Jul 2026", picture.crossing().label());
    String[] ends = picture.trip().split("[ ,]");
    assertTrue(Double.parseDouble(ends[3]) > Double.parseDouble(ends[1]), "it falls");
  }

  @Test
  void aMarginThatLastsCrossesNothing() {
    TripPicture picture = TripDrawing.draw(trip(0, Optional.empty()), MeasureSystem.US, 340, 280);
    assertEquals("", picture.crossing().label());
    assertTrue(picture.told().contains("stays above 9.0 °F"), picture.told());
  }

  // by hand: from 20 K at a growth of 0.1 K a day a limit of 25 K is reached after 50 days
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "25 | 0.1  | is expected to cross its limit on 20 Feb 2026",
        "10 | 0.1  | is over its limit already",
        "90 | 0    | stays under its limit for 3 years",
        "20 | 0.1  | is at its limit now"
      })
  void theDayOfTheLimitIsTold(double limitK, double growth, String told) {
    SplitSeries series =
        new SplitSeries(
            List.of(),
            OptionalDouble.empty(),
            "",
            OptionalDouble.of(limitK),
            List.of(),
            DAY,
            Optional.of(new SplitSeries.Outlook(20, 19, 21, growth, 0)));
    String said = UnitPictures.crosses(series);
    assertTrue(said.contains(told), said);
  }

  @Test
  void repeatsAreLinkedToWhatTheyRepeat() {
    LocalDate first = LocalDate.of(2025, 3, 1);
    LocalDate second = LocalDate.of(2025, 3, 20);
    List<FaultEvent> events =
        List.of(
            new FaultEvent(first, "drain-blocked", Optional.empty(), Optional.empty()),
            new FaultEvent(second, "drain-blocked", Optional.of(first), Optional.of(first)),
            new FaultEvent(second.plusDays(9), "coil-iced", Optional.empty(), Optional.empty()));
    FaultPicture picture = FaultDrawing.draw(events, DAY, 800).orElseThrow();
    assertEquals(2, picture.lanes().size());
    FaultPicture.Lane drain = picture.lanes().get(0);
    assertEquals("Drain blocked", drain.name());
    assertEquals(1, drain.links().size());
    assertTrue(!drain.links().get(0).held());
    assertTrue(drain.events().get(1).repeat());
    assertEquals(
        "3 faults since 1 Mar 2025, 1 repeat, 1 repair that did not hold.", picture.told());
  }

  @Test
  void withoutAFaultNothingIsDrawn() {
    assertTrue(FaultDrawing.draw(List.of(), DAY, 800).isEmpty());
  }
}

package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 10);

  @ParameterizedTest
  @CsvSource({
    "2026-06-10, today",
    "2026-06-11, in 1 day",
    "2026-07-01, in 21 days",
    "2026-07-02, in 3 weeks",
    "2026-06-09, 1 day late",
    "2026-05-19, 3 weeks late",
    "2026-12-09, in 26 weeks",
    "2026-12-10, in 6 months",
    "2024-06-10, 24 months late"
  })
  void aDayIsSoFarOff(LocalDate day, String said) {
    assertEquals(said, Figures.away(day, TODAY));
  }

  @ParameterizedTest
  @CsvSource({"41.65, 41.7", "41.64, 41.6", "0, 0.0", "100, 100.0"})
  void pointsHaveOneDecimalRoundedHalfUp(double points, String said) {
    assertEquals(said, Figures.points(points));
  }

  @Test
  void monthsHaveThreeLetters() {
    assertEquals("1 Sep 2026", Figures.day(LocalDate.of(2026, 9, 1)));
    assertEquals("not known", Figures.day(null));
  }

  // 18 deltaF are 10 K by definition of the degree Fahrenheit
  @Test
  void aSplitIsToldInTheReadersUnit() {
    assertEquals("18.0 °F", Figures.split(10, MeasureSystem.US));
    assertEquals("10.0 K", Figures.split(10, MeasureSystem.SI));
  }

  // 100 psi = 689.476 kPa (NIST SP 811, appendix B.8)
  @Test
  void aPressureIsToldInTheReadersUnit() {
    assertEquals("689 kPag", Figures.quantity(Quantity.of(100, "psig"), MeasureSystem.SI));
    assertEquals("100 psig", Figures.quantity(Quantity.of(100, "psig"), MeasureSystem.US));
  }
}

package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisTest {

  @ParameterizedTest
  @CsvSource({"10, 5, 2", "11, 5, 5", "26, 5, 10", "0.4, 4, 0.1", "1000, 10, 100"})
  void stepsAreOneTwoOrFive(double span, int most, double step) {
    assertEquals(step, Axis.step(span, most), 1e-9);
  }

  @Property
  void marksReachFromBelowToAbove(
      @ForAll @DoubleRange(min = -50, max = 200) double low,
      @ForAll @DoubleRange(min = 0, max = 100) double span,
      @ForAll @IntRange(min = 3, max = 10) int most) {
    List<Double> marks = Axis.marks(low, low + span, most);
    assertTrue(marks.get(0) <= low + 1e-9);
    assertTrue(marks.get(marks.size() - 1) >= low + span - 1e-9);
    assertTrue(marks.size() <= most + 2, marks.toString());
  }

  @Test
  void monthsOfAQuarterAYearApartAndEachYearByItsNumber() {
    List<String> labels =
        Axis.months(LocalDate.of(2024, 11, 1), LocalDate.of(2025, 8, 1), 4).stream()
            .map(Axis.DayMark::label)
            .toList();
    assertEquals(List.of("2025", "Apr", "Jul"), labels);
  }

  @Property
  void neverMoreMonthsThanThereIsRoomFor(
      @ForAll @IntRange(min = 1, max = 40000) int days,
      @ForAll @IntRange(min = 2, max = 14) int most) {
    LocalDate from = LocalDate.of(1990, 3, 1);
    List<Axis.DayMark> marks = Axis.months(from, from.plusDays(days), most);
    assertTrue(marks.size() <= most + 1, marks.toString());
  }
}

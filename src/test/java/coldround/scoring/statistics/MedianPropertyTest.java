package coldround.scoring.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** The median is what sorting with the library gives. */
class MedianPropertyTest {

  @Provide
  Arbitrary<double[]> values() {
    Arbitrary<Double> few = Arbitraries.integers().between(-3, 3).map(Integer::doubleValue);
    Arbitrary<Double> any = Arbitraries.doubles().between(-1e9, 1e9);
    return Arbitraries.oneOf(few, any, Arbitraries.oneOf(few, any))
        .array(double[].class)
        .ofMinSize(1)
        .ofMaxSize(400);
  }

  @Property(tries = 2000)
  void isThatOfTheSorted(@ForAll("values") double[] values) {
    double[] given = values.clone();
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    double expected = sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    assertEquals(expected, TheilSen.median(values), 0.0);
    assertArrayEquals(given, values, "what was given is left as it was");
  }

  /** Orders that are bad for a careless choice of what to part by. */
  @Property(tries = 50)
  void isFoundInAnyOrder(@ForAll("lengths") int length) {
    double[] rising = new double[length];
    double[] organPipe = new double[length];
    for (int i = 0; i < length; i++) {
      rising[i] = i;
      organPipe[i] = Math.min(i, length - i);
    }
    assertEquals((length - 1) / 2.0, TheilSen.median(rising));
    double[] sorted = organPipe.clone();
    Arrays.sort(sorted);
    double middle = (sorted[(length - 1) / 2] + sorted[length / 2]) / 2;
    assertEquals(middle, TheilSen.median(organPipe));
  }

  @Provide
  Arbitrary<Integer> lengths() {
    return Arbitraries.integers().between(1, 50_000);
  }
}

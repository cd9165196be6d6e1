package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.scoring.Condition;
import coldround.scoring.FactorScore;
import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ScoreBarTest {

  @Test
  void theBarIsKeptPointsThenWhatEachFactorTakes() {
    ScoreBar bar = ScoreBar.of(Sample.condition());
    assertEquals("50.8", bar.score());
    assertEquals(
        List.of(50.8, 68.1, 77.7, 91.9), bar.parts().stream().map(ScoreBar.Part::from).toList());
    assertEquals(
        List.of(17.3, 9.6, 14.2, 8.1), bar.parts().stream().map(ScoreBar.Part::length).toList());
  }

  @Test
  void aFactorThatIsNotKnownIsNamedAsThinEvidence() {
    ScoreBar bar = ScoreBar.of(Sample.condition());
    assertEquals("repeat faults", bar.thin());
    assertEquals("34.3 to 62.1", bar.range());
    assertTrue(bar.told().contains("8.1 to repeat faults (estimated)"), bar.told());
  }

  @Test
  void nothingIsOpenWhereAllIsKnown() {
    ScoreBar bar = ScoreBar.of(condition(100, 100, 0, 0));
    assertEquals("", bar.range());
    assertEquals("", bar.thin());
    assertFalse(bar.open());
    assertFalse(bar.parts().get(2).drawn());
    assertTrue(bar.parts().get(0).drawn());
  }

  @Property
  void partsLieEndToEndAndFillTheBar(
      @ForAll @IntRange(max = 1000) int a,
      @ForAll @IntRange(max = 1000) int b,
      @ForAll @IntRange(max = 1000) int c,
      @ForAll @IntRange(max = 1000) int d) {
    ScoreBar bar = ScoreBar.of(condition(a, b, c, d));
    double end = bar.kept();
    for (ScoreBar.Part part : bar.parts()) {
      assertEquals(end, part.from(), 1e-6);
      end = part.from() + part.length();
    }
    assertEquals(100, end, 1e-6);
  }

  /** Shares of the weights in thousandths. */
  private static Condition condition(int age, int refrigerant, int coil, int faults) {
    return Condition.of(
        LocalDate.EPOCH,
        1,
        List.of(
            factor("age", 25, age),
            factor("refrigerant", 20, refrigerant),
            factor("coil", 25, coil),
            factor("repeat-faults", 30, faults)),
        List.of(),
        List.of());
  }

  private static FactorScore factor(String name, double weight, int share) {
    double part = share / 1000.0;
    return FactorScore.of(name, weight, part, part, part, true, List.of());
  }
}

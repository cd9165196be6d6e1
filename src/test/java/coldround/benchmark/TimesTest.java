package coldround.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimesTest {

  /** Of 1 to COUNT milliseconds, the slowest first. */
  @ParameterizedTest
  @CsvSource({
    "1, 0.5, 1",
    "1, 0.99, 1",
    "2, 0.5, 1",
    "100, 0.5, 50",
    "100, 0.99, 99",
    "100, 1, 100",
    "2000, 0.99, 1980",
    "2001, 0.99, 1981"
  })
  void aShareTookAtMostThatLong(int count, double share, double ms) {
    Times times = new Times();
    for (int i = count; i > 0; i--) {
      times.add(i * 1_000_000L);
    }
    assertEquals(count, times.count());
    assertEquals(ms, times.ms(share));
  }

  @Test
  void nothingHasNoShares() {
    assertThrows(IllegalStateException.class, () -> new Times().ms(0.5));
  }
}

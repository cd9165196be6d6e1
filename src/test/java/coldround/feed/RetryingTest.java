package coldround.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pauses between tries. */
class RetryingTest {

  private static final Retrying TWO =
      new Retrying(List.of(Duration.ofSeconds(10), Duration.ofSeconds(100)), 0.2);

  @ParameterizedTest
  @CsvSource({
    "1, 0.5, 0, 10000",
    "1, 0, 0, 8000",
    "1, 1, 0, 12000",
    "2, 0.5, 0, 100000",
    "2, 1, 0, 120000",
    "1, 0.5, 30, 30000",
    "1, 0.5, 5, 10000",
    "1, 0.5, 86400, 120000"
  })
  void aPauseGrowsVariesByAFifthAndHeedsTheSubscriber(
      int tries, double chance, long askedS, long expectedMs) {
    assertEquals(
        Duration.ofMillis(expectedMs), TWO.pause(tries, chance, Duration.ofSeconds(askedS)));
  }

  @Test
  void afterTheLastPauseThereIsNoFurtherTry() {
    assertEquals(false, TWO.isLast(2));
    assertEquals(true, TWO.isLast(3));
  }

  @Test
  void pausesThatShrinkAreRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Retrying(List.of(Duration.ofSeconds(2), Duration.ofSeconds(1)), 0));
    assertThrows(IllegalArgumentException.class, () -> new Retrying(List.of(Duration.ZERO), 0));
    assertThrows(IllegalArgumentException.class, () -> new Retrying(List.of(), 1));
  }

  @Test
  void aSubscriberThatIsDownForADayLosesNothingByTheUsualPauses() throws Exception {
    Properties usual = new Properties();
    try (InputStream in = getClass().getResourceAsStream("/application.properties")) {
      usual.load(in);
    }
    Duration all =
        Arrays.stream(usual.getProperty("coldround.hooks.pauses").split(","))
            .map(pause -> Duration.parse("PT" + pause))
            .reduce(Duration.ZERO, Duration::plus);
    double shortest = 1 - Double.parseDouble(usual.getProperty("coldround.hooks.jitter"));
    assertTrue(all.toMillis() * shortest > Duration.ofDays(1).toMillis());
  }
}

package coldround.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PaceTest {

  private static final Instant NOW = Instant.parse("2026-05-01T12:00:00Z");

  @Test
  void aMinutesCallsMayBeMadeAtOnceThenOneAtATime() {
    Pace pace = new Pace(60);
    for (int i = 0; i < 60; i++) {
      assertEquals(Optional.empty(), pace.call("a", NOW));
    }
    assertEquals(Optional.of(Duration.ofSeconds(1)), pace.call("a", NOW));
    assertEquals(Optional.of(Duration.ofSeconds(1)), pace.call("a", NOW), "refused costs nothing");
    assertEquals(Optional.empty(), pace.call("b", NOW), "others are not hurt");
    assertEquals(Optional.empty(), pace.call("a", NOW.plusSeconds(1)));
    assertTrue(pace.call("a", NOW.plusSeconds(1)).isPresent());
  }

  @Test
  void whoComesAHairTooEarlyIsToldToWaitAndNotZero() {
    Pace pace = new Pace(60);
    for (int i = 0; i < 60; i++) {
      pace.call("a", NOW);
    }
    Instant hair = NOW.plusSeconds(1).minusNanos(400_000);
    assertEquals(Optional.of(Duration.ofMillis(1)), pace.call("a", hair));
  }

  @Test
  void whatIsSavedUpIsNotMoreThanAMinutesCalls() {
    Pace pace = new Pace(10);
    pace.call("a", NOW);
    Instant tomorrow = NOW.plus(Duration.ofDays(1));
    int made = 0;
    while (pace.call("a", tomorrow).isEmpty()) {
      made++;
    }
    assertEquals(10, made);
  }

  @Test
  void zeroIsNoLimit() {
    Pace pace = new Pace(0);
    for (int i = 0; i < 1000; i++) {
      assertEquals(Optional.empty(), pace.call("a", NOW));
    }
  }
}

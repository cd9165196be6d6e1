package coldround.access;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuessesTest {

  private static final Instant NOW = Instant.parse("2026-05-01T12:00:00Z");
  private static final Guesses.Limits LIMITS =
      new Guesses.Limits(3, Duration.ofSeconds(1), Duration.ofMinutes(1), Duration.ofHours(1));

  private final Guesses guesses = new Guesses(LIMITS);

  private static Secret secret(int number) {
    // another beginning each time
    return new Secret("%06d-and-so-on-and-on".formatted(number));
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "3, 0", "4, 1", "5, 2", "6, 4", "9, 32", "10, 60", "40, 60", "1000, 60"})
  void eachWrongOneBeyondTheFreeDoublesThePauseOfItsAddress(int wrong, int seconds) {
    for (int i = 0; i < wrong; i++) {
      guesses.wrong("10.0.0.1", secret(i), NOW);
    }
    Optional<Duration> pause =
        seconds == 0 ? Optional.empty() : Optional.of(Duration.ofSeconds(seconds));
    assertEquals(pause, guesses.pause("10.0.0.1", secret(5000), NOW));
    assertEquals(Optional.empty(), guesses.pause("10.0.0.2", secret(5000), NOW));
    assertEquals(
        Optional.empty(),
        guesses.pause("10.0.0.1", secret(5000), NOW.plusSeconds(Math.max(1, seconds))));
  }

  @Test
  void oneWhoChangesTheAddressIsKnownByTheBeginningOfTheToken() {
    for (int i = 0; i < 5; i++) {
      guesses.wrong("10.0.0." + i, new Secret("cr_aaaaaaaaaaaaaaaaaaaaaaa" + i), NOW);
    }
    Secret like = new Secret("cr_aaaaaaaaaaaaaaaaaaaaaaa9");
    assertEquals(Optional.of(Duration.ofSeconds(2)), guesses.pause("10.9.9.9", like, NOW));
    assertEquals(Optional.empty(), guesses.pause("10.9.9.9", secret(1), NOW));
  }

  @Test
  void whoeverIsKnownThereIsLetInBesideOneWhoGuesses() {
    Secret right = secret(7);
    guesses.right("10.0.0.1", right);
    for (int i = 0; i < 20; i++) {
      guesses.wrong("10.0.0.1", secret(100 + i), NOW);
    }
    assertEquals(Optional.empty(), guesses.pause("10.0.0.1", right, NOW));
    assertEquals(Optional.of(Duration.ofMinutes(1)), guesses.pause("10.0.0.1", secret(8), NOW));
  }

  @Test
  void allIsForgottenAfterAWhile() {
    for (int i = 0; i < 20; i++) {
      guesses.wrong("10.0.0.1", secret(i), NOW);
    }
    Instant later = NOW.plus(Duration.ofHours(1)).plusSeconds(1);
    guesses.wrong("10.0.0.1", secret(50), later);
    assertEquals(Optional.empty(), guesses.pause("10.0.0.1", secret(51), later));
  }
}

package coldround.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MoveTest {

  private static Move move(String due, String day) {
    LocalDate to = LocalDate.parse(day);
    return new Move("t", LocalDate.parse(due), to, LocalDate.parse(due), 900, 800);
  }

  @Test
  void aTaskThatIsMovedOnceMoreIsToldFromTheDayOfTheRules() {
    Move first = move("2027-01-20", "2027-01-15");
    Move second = move("2027-01-15", "2027-01-08");
    assertEquals(move("2027-01-20", "2027-01-08").due(), second.behind(Optional.of(first)).due());
    assertEquals(second.day(), second.behind(Optional.of(first)).day());
  }

  /** The rules ask for a later day by now: the former move holds no more and says nothing. */
  @Test
  void aMoveThatHoldsNoMoreLendsItsDayToNobody() {
    Move former = move("2026-12-13", "2026-12-04");
    Move now = move("2027-01-15", "2027-01-08");
    assertSame(now, now.behind(Optional.of(former)));
    assertSame(now, now.behind(Optional.empty()));
  }

  @Test
  void nothingIsMovedLater() {
    assertThrows(IllegalArgumentException.class, () -> move("2026-12-13", "2027-01-08"));
  }
}

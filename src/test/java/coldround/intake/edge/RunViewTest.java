package coldround.intake.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import coldround.fleet.Kind;
import coldround.intake.Watch;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** What is told of an import under way. */
class RunViewTest {

  private static final Instant BEGAN = Instant.parse("2026-05-31T12:00:00Z");

  private final Hands hands = new Hands();
  private final Watch watch = new Watch(hands);
  private final FileImport.Begun begun = new FileImport.Begun("one", BEGAN, watch);
  private final FileImport.Order order = new FileImport.Order(Kind.VISITS, null, false, true, "");

  /** A clock that is set by hand. */
  private static final class Hands extends Clock {
    private Instant now = BEGAN;

    void seconds(long more) {
      now = now.plus(Duration.ofSeconds(more));
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }

  @Test
  void rowsThatAreHeldBackAreWrittenAsAPartOfReading() {
    watch.reading(1000, () -> 250);
    hands.seconds(2);
    RunView reading = RunView.of(begun, order);
    assertEquals("reading", reading.state());
    assertNull(reading.progress().rowsWritten());
    assertEquals(new BigDecimal("0.25"), reading.progress().share());
    assertEquals(6, reading.progress().secondsLeft());

    watch.writing(40);
    hands.seconds(3);
    watch.more(10);
    RunView writing = RunView.of(begun, order);
    assertEquals("reading", writing.state());
    assertEquals(10, writing.progress().rowsWritten());
    assertEquals(new BigDecimal("0.25"), writing.progress().share());
    assertEquals(9, writing.progress().secondsLeft());

    watch.assessing(4);
    hands.seconds(1);
    watch.more(2);
    RunView assessing = RunView.of(begun, order);
    assertEquals("assessing", assessing.state());
    assertNull(assessing.progress().rowsWritten());
    assertEquals(new BigDecimal("0.5"), assessing.progress().share());
    assertEquals(1, assessing.progress().secondsLeft());
  }

  @Test
  void aFileThatIsTakenOnceMoreBeginsAnew() {
    watch.reading(1000, () -> 1000);
    hands.seconds(5);
    watch.assessing(4);
    hands.seconds(5);
    watch.reading(1000, () -> 500);
    hands.seconds(5);
    RunView again = RunView.of(begun, order);
    assertEquals("reading", again.state());
    assertEquals(0, again.progress().rowsDone());
    assertNull(again.progress().rowsPerSecond());
    assertEquals(5, again.progress().secondsLeft());
  }
}

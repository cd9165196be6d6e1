package coldround.reason;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldround.quantity.MeasureSystem;
import coldround.quantity.Quantity;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ReasonTest {

  private static final Source SOURCE = new Source("limits.csv", "excess", "common practice");

  @Test
  void theSentenceIsMadeInTheReadersUnits() {
    Reason reason =
        new Reason(
            "split-above-clean",
            "{excess} above the clean split since {since}",
            Map.of("excess", Quantity.of(10, "deltaK"), "since", LocalDate.of(2026, 5, 1)),
            SOURCE);
    assertEquals("18.0 °F above the clean split since 2026-05-01", told(reason, MeasureSystem.US));
    assertEquals("10.0 K above the clean split since 2026-05-01", told(reason, MeasureSystem.SI));
  }

  private static String told(Reason reason, MeasureSystem system) {
    return reason.text(system);
  }

  @Test
  void aSentenceWithoutItsFactIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Reason("x", "{gone}", Map.of(), SOURCE));
  }
}

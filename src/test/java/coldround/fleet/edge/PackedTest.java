package coldround.fleet.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.fleet.Reading;
import coldround.quantity.Quantity;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PackedTest {

  private static final Reading HEAD = Reading.taken("head_pressure", Quantity.of(251.5, "psig"));
  private static final Reading FAN =
      new Reading("evaporator_fan", "fan 2", Quantity.of(0.8, "A"), "", "");
  private static final Reading DOUBTED = HEAD.doubted("251.5 psig is not believed");

  static List<List<Reading>> readings() {
    return List.of(
        List.of(),
        List.of(HEAD),
        List.of(FAN),
        List.of(Reading.notTaken("box", "door frozen \"shut\"")),
        List.of(DOUBTED),
        List.of(DOUBTED.asConfirmed()),
        List.of(Reading.taken("ambient", Quantity.of(-0.1, "degC")), FAN, HEAD, DOUBTED));
  }

  @ParameterizedTest
  @MethodSource("readings")
  void readingsComeBackAsTheyWere(List<Reading> readings) {
    assertEquals(readings, Packed.readings(Packed.readingsText(readings)));
  }

  @Test
  void readingsAreReadAsTheyWereWrittenBefore() {
    String stored =
        "[{\"quantity\":\"head_pressure\",\"value\":251.5,\"unit\":\"psig\"},"
            + "{\"quantity\":\"evaporator_fan\",\"part\":\"fan 2\",\"value\":0.8,\"unit\":\"A\"}]";
    assertEquals(List.of(HEAD, FAN), Packed.readings(stored));
  }

  @Test
  void whatIsAValueAndNothingElseTakesNoNames() {
    assertEquals("[[\"head_pressure\",251.5,\"psig\"]]", Packed.readingsText(List.of(HEAD)));
  }
}

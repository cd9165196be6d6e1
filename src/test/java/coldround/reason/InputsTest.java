package coldround.reason;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class InputsTest {

  @Test
  void factsStandInTheOrderInWhichTheyAreTold() {
    Inputs inputs = Inputs.of("b", 1, "a", 2, "c", 3);
    assertEquals(List.of("b", "a", "c"), List.copyOf(inputs.keySet()));
    assertEquals(2, inputs.get("a"));
    assertNull(inputs.get("d"));
    assertTrue(inputs.containsKey("c"));
    assertFalse(inputs.containsKey("d"));
    assertEquals(Map.of("a", 2, "b", 1, "c", 3), inputs);
    assertEquals(Map.of("a", 2, "b", 1, "c", 3).hashCode(), inputs.hashCode());
  }

  @Test
  void ofANameThatComesTwiceTheLastFactHoldsInTheFirstPlace() {
    Map<String, Object> usual = new LinkedHashMap<>(Map.of("a", 1));
    usual.put("b", 2);
    usual.put("a", 3);
    Inputs inputs = Inputs.plus(Inputs.of("a", 1), "b", 2, "a", 3);
    assertEquals(usual, inputs);
    assertEquals(List.of("a", "b"), List.copyOf(inputs.keySet()));
  }

  @Test
  void factsCannotBeChangedAndEachNameHasOne() {
    Inputs inputs = Inputs.of("a", 1);
    assertThrows(UnsupportedOperationException.class, () -> inputs.put("b", 2));
    assertThrows(UnsupportedOperationException.class, () -> inputs.remove("a"));
    assertThrows(IllegalArgumentException.class, () -> Inputs.of("a"));
    Map<String, Object> before = new LinkedHashMap<>(Map.of("a", 1));
    Inputs copy = Inputs.copyOf(before);
    before.put("a", 2);
    assertEquals(1, copy.get("a"));
  }
}

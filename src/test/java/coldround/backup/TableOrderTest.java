package coldround.backup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TableOrderTest {

  @Test
  void whatIsReferredToComesFirst() {
    List<String> order =
        TableOrder.of(
            Map.of(
                "a", Set.of("c"),
                "b", Set.of(),
                "c", Set.of("d", "b"),
                "d", Set.of("b")));
    assertEquals(List.of("b", "d", "c", "a"), order);
  }

  @Test
  void aTableMayReferToItself() {
    assertEquals(List.of("a"), TableOrder.of(Map.of("a", Set.of("a"))));
  }

  @Test
  void aRingIsTold() {
    IllegalArgumentException ring =
        assertThrows(
            IllegalArgumentException.class,
            () -> TableOrder.of(Map.of("a", Set.of("b"), "b", Set.of("a"))));
    assertTrue(ring.getMessage().contains("[a, b]"), ring.getMessage());
  }
}

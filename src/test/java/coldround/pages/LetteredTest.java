package coldround.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LetteredTest {

  @Test
  void eachCautionIsSaidOnceUnderItsLetter() {
    Lettered lettered = new Lettered();
    assertEquals("A", lettered.of("Lock it out."));
    assertEquals("B", lettered.of("Wear goggles."));
    assertEquals("A", lettered.of("Lock it out."));
    assertEquals(
        List.of(
            new RouteSheet.Caution("A", "Lock it out."),
            new RouteSheet.Caution("B", "Wear goggles.")),
        lettered.all());
  }

  @Test
  void theLettersDoNotRunOut() {
    Lettered lettered = new Lettered();
    List<String> letters =
        IntStream.range(0, 1000).mapToObj(i -> lettered.of("caution " + i)).toList();
    assertEquals("Z", letters.get(25));
    assertEquals("AA", letters.get(26));
    assertEquals("AZ", letters.get(51));
    assertEquals("BA", letters.get(52));
    assertEquals(1000, letters.stream().distinct().count());
  }
}

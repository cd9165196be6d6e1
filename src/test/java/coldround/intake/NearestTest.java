package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {

  // the worked example of most textbooks on the Levenshtein distance, from memory
  @ParameterizedTest
  @CsvSource({"kitten, sitting, 3", "'', abc, 3", "abc, abc, 0", "flaw, lawn, 2"})
  void lettersToChangeAreCounted(String one, String other, int distance) {
    assertEquals(distance, Nearest.distance(one, other));
    assertEquals(distance, Nearest.distance(other, one));
  }

  @Test
  void aNameTooFarOffIsNoSuggestion() {
    List<String> names = List.of("clean", "light", "moderate");
    assertEquals("light", Nearest.to("ligth", names).orElseThrow());
    assertEquals("moderate", Nearest.to("modrat", names).orElseThrow());
    assertEquals(true, Nearest.to("xyzzy", names).isEmpty());
    assertEquals(true, Nearest.to("", names).isEmpty());
  }
}

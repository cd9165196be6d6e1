package coldround.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ArgumentsTest {

  private static final String USAGE = "score UNITS READINGS [postgresql]";

  private static String[] words(String text) {
    return text == null ? new String[0] : text.split(" ");
  }

  @ParameterizedTest
  @CsvSource({"10 200, H2", "10 200 postgresql, POSTGRESQL"})
  void theLastOneMayNameTheStore(String given, Store.Kind store) {
    Arguments asked = Arguments.of(USAGE, 2, words(given));
    assertEquals(store, asked.store());
    assertEquals(10, asked.number(0));
    assertEquals(200, asked.number(1));
  }

  @ParameterizedTest
  @CsvSource({"'', 7, H2", "5, 5, H2", "postgresql, 7, POSTGRESQL", "5 postgresql, 5, POSTGRESQL"})
  void whatIsNotSaidIsAsUsually(String given, int number, Store.Kind store) {
    String[] words = given.isEmpty() ? new String[0] : words(given);
    Arguments asked = Arguments.of("feed [EVENTS] [postgresql]", 0, 1, words);
    assertEquals(number, asked.number(0, 7));
    assertEquals(store, asked.store());
  }

  @ParameterizedTest
  @ValueSource(strings = {"10", "10 postgresql", "10 200 300", "10 200 oracle", "postgresql"})
  void tooFewAndTooManyAreToldHowItIs(String given) {
    Exception told =
        assertThrows(IllegalArgumentException.class, () -> Arguments.of(USAGE, 2, words(given)));
    assertEquals(USAGE, told.getMessage());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1", "1.5", "many", "9999999999", "1e3"})
  void anythingButAWholeNumberIsNamed(String given) {
    Arguments asked = Arguments.of(USAGE, 2, given, "1");
    Exception told = assertThrows(IllegalArgumentException.class, () -> asked.number(0));
    assertTrue(told.getMessage().contains("'" + given + "'"), told.getMessage());
    assertTrue(told.getMessage().contains(USAGE), told.getMessage());
  }

  @ParameterizedTest
  @CsvSource({
    "score 10 200, '', score 10 200",
    "score 10 200, h2, score 10 200",
    "score 10 200, postgresql, score 10 200 postgresql",
    "start, h2 postgresql, start|start postgresql",
    "'', h2 postgresql, ''"
  })
  void aFigureIsTakenOnEachKindOfStore(String command, String stores, String expected) {
    List<String> commands = expected.isEmpty() ? List.of() : List.of(expected.split("\\|"));
    assertEquals(commands, Figure.commands(command, stores));
  }

  @ParameterizedTest
  @CsvSource({
    "saturation|score 10 200 postgresql|upkeep 5, {}",
    "start|visit 100, {h2=false}",
    "start|reads 100|visit 100, {h2=true}",
    "import 100 postgresql|start, '{h2=false, postgresql=false}'",
    "feed 100 postgresql|import 100 postgresql, {postgresql=true}"
  })
  void theBuildsThatAreNeededAreKnownBefore(String commands, String expected) {
    assertEquals(expected, Builds.needed(List.of(commands.split("\\|"))).toString());
  }

  @Test
  void aStoreOfAnotherKindIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Store.Kind.of("oracle"));
  }
}

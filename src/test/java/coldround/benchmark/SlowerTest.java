package coldround.benchmark;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlowerTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  @ParameterizedTest
  @CsvSource({
    "less, 2.0, 2.29, 0",
    "less, 2.0, 2.31, 1",
    "less, 2.0, 1.0, 0",
    "more, 0.5, 0.44, 0",
    "more, 0.5, 0.43, 1",
    "more, 0.5, 0.9, 0"
  })
  void whatGotWorseByFifteenPercentIsNamed(String better, double was, double is, int named) {
    Figure figure =
        new Figure("x 1", "/a", "", better.equals("less"), OptionalDouble.empty(), "time of x");
    List<String> worse =
        Slower.worse(List.of(figure), medians("x 1 /a", was), medians("x 1 /a", is));
    assertEquals(named, worse.size());
    worse.forEach(line -> assertTrue(line.startsWith("x 1: time of x was "), line));
  }

  @Test
  void aFigureOfOneSideOnlyIsNotCompared() {
    Figure figure = new Figure("x 1", "/a", "", true, OptionalDouble.empty(), "time of x");
    assertEquals(
        List.of(), Slower.worse(List.of(figure), medians("y 1 /a", 1), medians("x 1 /a", 9)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/runs/0/seconds | | 1.5",
        "/hooks/p99 | /runs/0/seconds | 20",
        "/rounds | | 3,4.5,6",
        "/rounds | /runs/0/seconds | 2,3,4",
        "/rounds | /floors | 3,1.5,1"
      })
  void aFigureIsReadByItsPointerOrAsAShareRoundByRound(String pointer, String of, String values)
      throws IOException {
    JsonNode printed =
        JSON.readTree(
            """
            {"hooks": {"p99": 30}, "runs": [{"seconds": 1.5}], "rounds": [3, 4.5, 6],
             "floors": [1, 3, 6]}\
            """);
    double[] expected = Arrays.stream(values.split(",")).mapToDouble(Double::parseDouble).toArray();
    assertArrayEquals(expected, figure(pointer, of == null ? "" : of).in(printed));
  }

  @ParameterizedTest
  @CsvSource({"/none, ''", "/empty, ''", "/words, ''", "/rounds, /two", "/rounds, /none"})
  void whatIsNotThereOrNotInAsManyRoundsIsNoFigure(String pointer, String of) throws IOException {
    JsonNode printed =
        JSON.readTree(
            "{\"empty\": [], \"words\": [\"a\"], \"rounds\": [3, 4, 6], \"two\": [1, 2]}");
    assertThrows(IllegalStateException.class, () -> figure(pointer, of).in(printed));
  }

  @Test
  void everyFigureNamesAProgramThatThereIs() throws IOException {
    for (String size : List.of("full", "small")) {
      for (Figure figure : Figure.all(size)) {
        String program = figure.command().split(" ")[0];
        assertTrue(Benchmarks.names().contains(program), program);
      }
    }
  }

  private static Figure figure(String pointer, String of) {
    return new Figure("x", pointer, of, true, OptionalDouble.empty(), "");
  }

  private static ObjectNode medians(String name, double median) {
    ObjectNode all = JSON.createObjectNode();
    all.putObject("figures").putObject(name).put("median", median);
    return all;
  }
}

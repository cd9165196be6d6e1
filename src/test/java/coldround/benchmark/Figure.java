package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.opencsv.CSVReaderHeaderAware;
import com.opencsv.exceptions.CsvValidationException;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One figure of a benchmark program that is followed from commit to commit: a row of
 * benchmarks/figures.csv.
 *
 * @param command program with its arguments
 * @param pointer JSON pointer (RFC 6901) into what the program prints last
 * @param of pointer of the figure it is divided by; empty for none
 * @param lessIsBetter false where more is
 * @param goal what is to be reached; empty where it is only followed
 */
record Figure(
    String command,
    String pointer,
    String of,
    boolean lessIsBetter,
    OptionalDouble goal,
    String meaning) {

  private static final String FILE = "/benchmarks/figures.csv";

  /**
   * @param size column of the commands: full or small; figures without a command there are left
   *     out. Where the column beside it names kinds of store, there is one figure for each.
   */
  static List<Figure> all(String size) throws IOException {
    List<Figure> figures = new ArrayList<>();
    try (InputStreamReader text =
            new InputStreamReader(Figure.class.getResourceAsStream(FILE), StandardCharsets.UTF_8);
        CSVReaderHeaderAware rows = new CSVReaderHeaderAware(text)) {
      for (Map<String, String> row = rows.readMap(); row != null; row = rows.readMap()) {
        for (String command : commands(row.get(size), row.get(size + " stores"))) {
          figures.add(figure(row, command));
        }
      }
    } catch (CsvValidationException e) {
      throw new IOException(e);
    }
    return figures;
  }

  /**
   * One command for each kind of store.
   *
   * @param command empty for none
   * @param stores empty where it uses none
   */
  static List<String> commands(String command, String stores) {
    if (command.isEmpty() || stores.isEmpty()) {
      return command.isEmpty() ? List.of() : List.of(command);
    }
    return Arrays.stream(stores.split(" "))
        .map(Store.Kind::of)
        .map(kind -> kind.onto(command))
        .toList();
  }

  private static Figure figure(Map<String, String> row, String command) {
    String goal = row.get("goal");
    return new Figure(
        command,
        row.get("figure"),
        row.get("of"),
        row.get("better").equals("less"),
        goal.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(goal)),
        row.get("meaning"));
  }

  /** By which it is found again in the figures of another commit. */
  String name() {
    return command + " " + pointer + (of.isEmpty() ? "" : " / " + of);
  }

  /**
   * One value, or one for each round that the program measured itself and printed as an array; what
   * is divided by an array is so round by round.
   *
   * @param printed JSON object that the program printed last
   * @throws IllegalStateException where the figure is not in it
   */
  double[] in(JsonNode printed) {
    double[] values = numbers(printed, pointer);
    if (of.isEmpty()) {
      return values;
    }
    double[] divisors = numbers(printed, of);
    if (divisors.length != 1 && divisors.length != values.length) {
      throw new IllegalStateException(
          command + ": not as many rounds at " + pointer + " and " + of);
    }
    double[] shares = new double[values.length];
    Arrays.setAll(shares, i -> values[i] / divisors[divisors.length == 1 ? 0 : i]);
    return shares;
  }

  private double[] numbers(JsonNode printed, String at) {
    JsonNode found = printed.at(at);
    List<JsonNode> numbers = new ArrayList<>();
    if (found.isArray()) {
      found.forEach(numbers::add);
    } else {
      numbers.add(found);
    }
    if (numbers.isEmpty() || !numbers.stream().allMatch(JsonNode::isNumber)) {
      throw new IllegalStateException(command + " printed no number at " + at + ": " + printed);
    }
    return numbers.stream().mapToDouble(JsonNode::asDouble).toArray();
  }

  boolean reached(double value) {
    return goal.isEmpty()
        || (lessIsBetter ? value <= goal.getAsDouble() : value >= goal.getAsDouble());
  }

  /** By how many percent a value is worse than an earlier one; below 0 for better. */
  double worsePercent(double value, double earlier) {
    return 100 * (lessIsBetter ? value / earlier - 1 : earlier / value - 1);
  }
}

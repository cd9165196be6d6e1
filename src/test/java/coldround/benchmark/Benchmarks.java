package coldround.benchmark;

import coldround.demo.Demo;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * Entry point of the benchmark programs: the first argument names one, the rest are its own. Each
 * prints its figures and, as its last line, one JSON object.
 */
public final class Benchmarks {

  /** One benchmark: takes its arguments and prints its figures. */
  public interface Program {
    void run(String... arguments) throws Exception;
  }

  private static final Map<String, Program> PROGRAMS =
      new TreeMap<>(
          Map.of(
              "csv", new CsvConversion(),
              "csv-read", new CsvReading(),
              "csv-score", new CsvScore(),
              "demo", new Demo(),
              "feed", FeedSpeed::run,
              "replacement", Replacement::run,
              "rounds", Rounds::run,
              "rounds-table", RoundsTable::run,
              "saturation", new SaturationLookups()));

  private Benchmarks() {}

  public static void main(String... arguments) throws Exception {
    try {
      program(arguments).run(Arrays.copyOfRange(arguments, 1, arguments.length));
    } catch (IllegalArgumentException e) {
      System.err.println(e.getMessage());
      System.exit(1);
    }
  }

  private static Program program(String... arguments) {
    Program program = arguments.length == 0 ? null : PROGRAMS.get(arguments[0]);
    if (program == null) {
      throw new IllegalArgumentException("name one of " + PROGRAMS.keySet());
    }
    return program;
  }
}

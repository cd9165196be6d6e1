package coldround.benchmark;

import static java.util.Map.entry;

import coldround.demo.Demo;
import java.io.File;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

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
          Map.ofEntries(
              entry("all", new AllFigures()),
              entry("csv", new CsvConversion()),
              entry("csv-read", new CsvReading()),
              entry("csv-score", new CsvScore()),
              entry("demo", new Demo()),
              entry("feed", FeedSpeed::run),
              entry("fleet-list", new FleetPages()),
              entry("fuzz", new FuzzRun()),
              entry("import", new ImportSpeed()),
              entry("import-killed", new KilledImports()),
              entry("reads", new Reads()),
              entry("instances", Instances::restart),
              entry("store-away", Instances::storeAway),
              entry("kills", arguments -> new Kills().run(arguments)),
              entry("replacement", Replacement::run),
              entry("rounds", Rounds::run),
              entry("rounds-scale", RoundsScale::run),
              entry("rounds-service", RoundsService::run),
              entry("rounds-table", RoundsTable::run),
              entry("saturation", new SaturationLookups()),
              entry("slower", new Slower()),
              entry("start", new StartTime()),
              entry("score", arguments -> new FleetScoring().run(arguments)),
              entry("upkeep", arguments -> new FleetTasks().run(arguments)),
              entry("visit", arguments -> new VisitSpeed().run(arguments))));

  private Benchmarks() {}

  /** Of this program; Maven runs it from a loader of its own. */
  static String classpath() {
    return Benchmarks.class.getClassLoader() instanceof URLClassLoader loader
        ? Arrays.stream(loader.getURLs())
            .map(URL::getPath)
            .collect(Collectors.joining(File.pathSeparator))
        : System.getProperty("java.class.path");
  }

  static Set<String> names() {
    return PROGRAMS.keySet();
  }

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

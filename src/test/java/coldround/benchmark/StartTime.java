package coldround.benchmark;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * {@code start [postgresql]}: seconds from the command to ready with the demo fleet in the store
 * already, and the memory resident then: as it is built, with an archive of its classes, and with
 * that and the first compiler of Java alone; beside a Java process that only says its version.
 */
final class StartTime implements Benchmarks.Program {

  private static final int STARTS = 5;

  /** From this version on Java keeps more than classes. */
  private static final int AHEAD_OF_TIME = 25;

  /**
   * A way to start.
   *
   * @param figure what its figures are called
   */
  private record Way(String name, String figure, String... options) {}

  /** One way, start by start. */
  private record Starts(Way way, double[] seconds, double[] megabytes) {}

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("start [postgresql]", 0, arguments);
    try (Store store = Store.of(asked.store())) {
      measure(new Service(store), store.folder.resolve("classes"));
    }
  }

  /**
   * @param classes file for the archive
   */
  private static void measure(Service service, Path classes) throws Exception {
    long begin = System.nanoTime();
    service.start();
    double first = (System.nanoTime() - begin) / 1e9;
    service.close();
    String[] archive = archive(classes);
    service.options(archive[0]);
    service.start();
    service.close();

    System.out.printf("Java %s, medians of %d starts%n", Runtime.version(), STARTS);
    System.out.println("| way | ready s | least | greatest | resident MB |");
    System.out.println("|---|---|---|---|---|");
    Starts plain = measure(service, new Way("as built", "plain"));
    Starts archived =
        measure(service, new Way("with an archive", "archived", archive[1], "-XX:+UseSerialGC"));
    Starts simple =
        measure(
            service,
            new Way(
                "and the first compiler alone",
                "simple",
                archive[1],
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1"));
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("java", Runtime.version().feature());
    figures.put("firstSeconds", first);
    figures.put("bareSeconds", bare());
    for (Starts each : List.of(plain, archived, simple)) {
      figures.put(each.way().figure() + "ReadySeconds", each.seconds());
      figures.put(each.way().figure() + "ResidentMegabytes", each.megabytes());
    }
    System.out.println(new ObjectMapper().writeValueAsString(figures));
  }

  /** The options that make an archive, and that use it. */
  private static String[] archive(Path file) {
    return Runtime.version().feature() >= AHEAD_OF_TIME
        ? new String[] {"-XX:AOTCacheOutput=" + file, "-XX:AOTCache=" + file}
        : new String[] {"-XX:ArchiveClassesAtExit=" + file, "-XX:SharedArchiveFile=" + file};
  }

  private static Starts measure(Service service, Way way) throws Exception {
    service.options(way.options());
    double[] seconds = new double[STARTS];
    double[] resident = new double[STARTS];
    for (int i = 0; i < STARTS; i++) {
      long begin = System.nanoTime();
      service.start();
      seconds[i] = (System.nanoTime() - begin) / 1e9;
      resident[i] = service.residentMegabytes();
      service.close();
    }
    System.out.printf(
        Locale.ROOT,
        "| %s | %.2f | %.2f | %.2f | %.0f |%n",
        way.name(),
        Times.middle(seconds),
        Arrays.stream(seconds).min().orElseThrow(),
        Arrays.stream(seconds).max().orElseThrow(),
        Times.middle(resident));
    return new Starts(way, seconds, resident);
  }

  /** Median seconds of a Java that only says its version. */
  private static double bare() throws Exception {
    double[] seconds = new double[STARTS];
    for (int i = 0; i < STARTS; i++) {
      long begin = System.nanoTime();
      new ProcessBuilder(
              Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version")
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor();
      seconds[i] = (System.nanoTime() - begin) / 1e9;
    }
    return Times.middle(seconds);
  }
}

package coldround.benchmark;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/**
 * {@code start [postgresql]}: seconds from the command to ready with the demo fleet in the store
 * already, and the memory resident then, beside a Java process that only says its version.
 */
final class StartTime implements Benchmarks.Program {

  private static final int STARTS = 5;

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("start [postgresql]", 0, arguments);
    try (Store store = Store.of(asked.store())) {
      run(new Service(store));
    }
  }

  private static void run(Service service) throws Exception {
    long begin = System.nanoTime();
    service.start();
    double first = (System.nanoTime() - begin) / 1e9;
    service.close();
    Laps laps = new Laps(2);
    long[] resident = new long[STARTS];
    System.out.println("| start | bare Java s | ready s | resident MB |");
    System.out.println("|---|---|---|---|");
    for (int i = 0; i < STARTS; i++) {
      laps.begin();
      bare();
      laps.lap(0);
      service.start();
      laps.lap(1);
      resident[i] = service.residentMegabytes();
      service.close();
      System.out.printf(
          Locale.ROOT,
          "| %d | %.2f | %.2f | %d |%n",
          i + 1,
          laps.last(0),
          laps.last(1),
          resident[i]);
    }
    Arrays.sort(resident);
    System.out.printf(
        Locale.ROOT,
        "{\"firstSeconds\": %.2f, \"bareSeconds\": %.3f, \"readySeconds\": %.2f,"
            + " \"residentMegabytes\": %d}%n",
        first,
        laps.median(0),
        laps.median(1),
        resident[STARTS / 2]);
  }

  private static void bare() throws Exception {
    new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version")
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }
}

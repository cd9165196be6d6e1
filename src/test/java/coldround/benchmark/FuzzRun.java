package coldround.benchmark;

import coldround.fuzz.Fuzzing;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * Requests made out of the description of the interface, sent to the packaged service with the demo
 * fleet: {@code fuzz REQUESTS SEED}, and {@code postgresql} as third for the build that lies beside
 * the other. Ends with 1 when one was answered by a fault of the service, after more than 2 s or
 * not at all, or when memory grows.
 */
final class FuzzRun implements Benchmarks.Program {

  private static final int PARTS = 10;

  /** What caches, and the page cache of the database, may still take between two parts. */
  private static final int GROWTH_MEGABYTES = 24;

  private static final int TOLD = 40;

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("fuzz REQUESTS SEED [postgresql]", 2, arguments);
    try (Store store = Store.of(asked.store())) {
      run(new Service(store), asked.number(0), asked.number(1));
    }
  }

  private static void run(Service service, int requests, long seed) throws Exception {
    service.start();
    try (service) {
      Fuzzing fuzzing = new Fuzzing("127.0.0.1", service.port, Service.TOKEN, seed);
      List<Long> megabytes = new ArrayList<>();
      for (int part = 0; part < PARTS; part++) {
        fuzzing.run(requests / PARTS * part, requests / PARTS * (part + 1));
        megabytes.add(live(service));
        System.out.printf(
            "%d requests, %s, slowest %d ms, %d faults, %d MB live%n",
            fuzzing.found().requests(),
            fuzzing.found().statuses(),
            fuzzing.found().slowestMillis(),
            fuzzing.found().faults().size(),
            megabytes.get(part));
      }
      tell(fuzzing.found(), megabytes, seed);
    }
  }

  private static void tell(Fuzzing.Found found, List<Long> megabytes, long seed)
      throws IOException {
    found.faults().stream().limit(TOLD).forEach(fault -> System.out.println("FAULT " + fault));
    long grown = megabytes.get(PARTS - 1) - megabytes.get(PARTS / 2);
    Map<String, Object> line = new LinkedHashMap<>();
    line.put("requests", found.requests());
    line.put("seed", seed);
    line.put("statuses", new TreeMap<>(found.statuses()));
    line.put("slowestMillis", found.slowestMillis());
    line.put("liveMegabytes", megabytes);
    line.put("faults", found.faults().size());
    System.out.println(new ObjectMapper().writeValueAsString(line));
    if (!found.faults().isEmpty() || grown > GROWTH_MEGABYTES) {
      throw new IllegalArgumentException(
          found.faults().size() + " faults; in the second half memory grew by " + grown + " MB");
    }
  }

  /** Megabytes of the heap that are still in use when everything else was thrown away. */
  private static long live(Service service) throws IOException, InterruptedException {
    String jcmd = Path.of(System.getProperty("java.home"), "bin", "jcmd").toString();
    Process collected =
        new ProcessBuilder(jcmd, Long.toString(service.pid()), "GC.run")
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (!collected.waitFor(60, TimeUnit.SECONDS) || collected.exitValue() != 0) {
      throw new IOException("the service could not be told to collect its garbage");
    }
    HttpRequest ask = HttpRequest.newBuilder(service.address("/q/metrics")).build();
    String metrics =
        HttpClient.newHttpClient().send(ask, HttpResponse.BodyHandlers.ofString()).body();
    double bytes =
        metrics
            .lines()
            .filter(line -> line.startsWith("jvm_memory_used_bytes{area=\"heap\""))
            .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
            .sum();
    return Math.round(bytes / (1 << 20));
  }
}

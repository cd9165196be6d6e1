package coldround.benchmark;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The service as it was built, started on a store and a port of its own. */
final class BuiltService implements AutoCloseable {

  static final String TOKEN = "the-token-of-the-benchmarks";
  private static final Duration START = Duration.ofMinutes(3);

  private final HttpClient http = HttpClient.newHttpClient();
  private final Process process;
  private final Path log;
  private final int port;

  private BuiltService(Process process, Path log, int port) {
    this.process = process;
    this.log = log;
    this.port = port;
  }

  /**
   * @param heap such as 512m
   * @param store may hold what an earlier service left
   * @param options for Java, besides
   * @throws IllegalArgumentException when nothing was built for it
   */
  static BuiltService start(String heap, Store store, String... options)
      throws IOException, InterruptedException {
    Path jar = store.kind.built();
    int port = Service.freePort();
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx" + heap);
    command.add("-Dquarkus.http.port=" + port);
    // to try what another collector or a recording does: -Dservice.options="-XX:+UseG1GC"
    String others = System.getProperty("service.options", "");
    command.addAll(others.isBlank() ? List.of(options) : List.of(others.strip().split("\\s+")));
    command.addAll(List.of("-jar", jar.toString()));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(store.environment());
    builder.environment().put("COLDROUND_TOKEN", TOKEN);
    // what the service can do, not what one account may
    builder.environment().put("COLDROUND_RATE_PER_MINUTE", "0");
    builder.environment().put("COLDROUND_RATE_AT_ONCE", "0");
    builder.environment().put("COLDROUND_RATE_DEAR_AT_ONCE", "0");
    Path log = store.folder.resolve("log");
    builder.redirectErrorStream(true).redirectOutput(log.toFile());
    BuiltService service = new BuiltService(builder.start(), log, port);
    service.awaitReady();
    return service;
  }

  private void awaitReady() throws IOException, InterruptedException {
    long end = System.nanoTime() + START.toNanos();
    while (System.nanoTime() < end && process.isAlive()) {
      try {
        if (send(request("/q/health/ready").GET().build()).statusCode() == 200) {
          return;
        }
      } catch (IOException e) {
        // not listening yet
      }
      Thread.sleep(200);
    }
    close();
    throw new IllegalStateException("the service did not start:\n" + Files.readString(log));
  }

  URI address(String path) {
    return URI.create("http://127.0.0.1:" + port + path);
  }

  private HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(address(path)).header("Authorization", "Bearer " + TOKEN);
  }

  private HttpResponse<String> send(HttpRequest request) throws IOException, InterruptedException {
    return http.send(request, HttpResponse.BodyHandlers.ofString());
  }

  /** The receipt of a file that must be taken. */
  String upload(String address, BodyPublisher body) throws IOException, InterruptedException {
    HttpRequest request =
        request("/api/v1/imports/" + address).header("Content-Type", "text/csv").POST(body).build();
    HttpResponse<String> answer = send(request);
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(answer.statusCode() + " " + answer.body());
    }
    return answer.body();
  }

  /** Asks for a file to be taken without waiting for it; the place to ask for it. */
  String handOver(String address, BodyPublisher body) throws IOException, InterruptedException {
    HttpRequest request =
        request("/api/v1/imports/" + address)
            .header("Content-Type", "text/csv")
            .header("Prefer", "respond-async")
            .POST(body)
            .build();
    HttpResponse<String> answer = send(request);
    if (answer.statusCode() != 202) {
      throw new IllegalStateException(answer.statusCode() + " " + answer.body());
    }
    return URI.create(answer.headers().firstValue("Location").orElseThrow()).getPath();
  }

  /** What a call with a body in JSON answers, which must be a good one. */
  String post(String path, String json) throws IOException, InterruptedException {
    HttpRequest.Builder request = request(path).header("Content-Type", "application/json");
    HttpResponse<String> answer =
        send(request.POST(HttpRequest.BodyPublishers.ofString(json)).build());
    if (answer.statusCode() >= 300) {
      throw new IllegalStateException(answer.statusCode() + " " + answer.body());
    }
    return answer.body();
  }

  /** What a read answers. */
  String get(String path) throws IOException, InterruptedException {
    return send(request(path).GET().build()).body();
  }

  /** As by kill -9; what it wrote stays. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  long pid() {
    return process.pid();
  }

  /** What the process has used so far of the processors; not a number where nobody tells. */
  double processorSeconds() {
    return process
        .info()
        .totalCpuDuration()
        .map(time -> time.toMillis() / 1000.0)
        .orElse(Double.NaN);
  }

  /** The most memory the process ever had, in megabytes; 0 where the system does not tell. */
  long peakMegabytes() throws IOException {
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    if (!Files.exists(status)) {
      return 0;
    }
    try (Stream<String> lines = Files.lines(status)) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
          .findFirst()
          .orElse(0);
    }
  }

  @Override
  public void close() {
    process.destroy();
    try {
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

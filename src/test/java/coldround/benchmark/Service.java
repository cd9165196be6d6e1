package coldround.benchmark;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The packaged service in a process of its own, with the demo fleet. */
final class Service implements AutoCloseable {

  static final String TOKEN = "the-token-of-the-benchmark";

  final int port;
  private final Store store;
  private final HttpClient http = HttpClient.newHttpClient();
  private List<String> options = List.of();
  private Process process;

  Service(Store store) throws IOException {
    this.store = store;
    this.port = freePort();
  }

  static int freePort() throws IOException {
    try (ServerSocket any = new ServerSocket(0)) {
      return any.getLocalPort();
    }
  }

  /** Options of Java for the next starts, in place of those before. */
  void options(String... options) {
    this.options = List.of(options);
  }

  /**
   * @throws IllegalArgumentException when nothing was built for the store
   */
  void start() throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.add("-Dquarkus.http.port=" + port);
    command.add("-Dcoldround.hooks.allowed=127.0.0.0/8");
    command.addAll(List.of("-jar", store.kind.built().toString()));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(store.environment());
    builder.environment().put("COLDROUND_DEMO", "true");
    builder.environment().put("COLDROUND_TOKEN", TOKEN);
    // what the service can do, not what one account may
    builder.environment().put("COLDROUND_RATE_PER_MINUTE", "0");
    builder.environment().put("COLDROUND_RATE_AT_ONCE", "0");
    builder.environment().put("COLDROUND_RATE_DEAR_AT_ONCE", "0");
    Path log = store.folder.resolve("log");
    process = builder.redirectErrorStream(true).redirectOutput(log.toFile()).start();
    Instant end = Instant.now().plusSeconds(400);
    while (!ready()) {
      if (!process.isAlive() || Instant.now().isAfter(end)) {
        throw new IOException("the service did not start:\n" + Files.readString(log));
      }
      Thread.sleep(20);
    }
  }

  private boolean ready() throws InterruptedException {
    try {
      HttpRequest ask = HttpRequest.newBuilder(address("/q/health/ready")).build();
      return http.send(ask, HttpResponse.BodyHandlers.discarding()).statusCode() == 200;
    } catch (IOException e) {
      return false;
    }
  }

  URI address(String path) {
    return URI.create("http://127.0.0.1:" + port + path);
  }

  /** Memory of the process now, in megabytes; 0 where the system does not tell. */
  long residentMegabytes() throws IOException {
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    if (!Files.exists(status)) {
      return 0;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
        .findFirst()
        .orElse(0);
  }

  long pid() {
    return process.pid();
  }

  /** As kill -9 does. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor(30, TimeUnit.SECONDS);
  }

  @Override
  public void close() throws InterruptedException {
    process.destroy();
    // one that writes an archive of its classes takes its time
    process.waitFor(2, TimeUnit.MINUTES);
  }
}

package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** A service as it was built, in a process of its own on a store that stays. */
final class KillableService implements AutoCloseable {

  static final String TOKEN = "the-token-of-the-kills";
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Of a process that somebody else on the machine ended by a signal: no fault of the service. */
  private static final List<Integer> SIGNALLED = List.of(137, 143);

  private static final Duration START = Duration.ofMinutes(3);

  /** What was answered. */
  record Answer(int status, String body, String location) {
    JsonNode json() throws IOException {
      return JSON.readTree(body);
    }

    Answer must(int wanted) {
      if (status != wanted) {
        throw new IllegalStateException("answered " + status + ": " + body);
      }
      return this;
    }
  }

  private final HttpClient http =
      HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
  private final Process process;
  private final Path log;
  final int port;

  private KillableService(Process process, Path log, int port) {
    this.process = process;
    this.log = log;
    this.port = port;
  }

  /** Sets off without waiting until it serves. */
  static KillableService launch(Store store, Map<String, String> more) throws IOException {
    return launch(store, Service.freePort(), more);
  }

  static KillableService launch(Store store, int port, Map<String, String> more)
      throws IOException {
    Path jar = store.kind.built();
    Path scratch = Files.createDirectories(store.folder.resolve("scratch"));
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Xmx512m");
    // it lives for seconds: sooner ready is worth more than faster later
    command.add("-XX:TieredStopAtLevel=1");
    command.add("-Djava.io.tmpdir=" + scratch);
    command.add("-Dquarkus.http.port=" + port);
    command.add("-Dcoldround.hooks.allowed=127.0.0.0/8");
    command.add("-Dcoldround.hooks.pauses=1s,1s,2s,5s,10s,30s");
    command.add("-jar");
    command.add(jar.toString());
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(store.environment());
    builder.environment().put("COLDROUND_TOKEN", TOKEN);
    builder.environment().put("COLDROUND_DEMO", "true");
    builder.environment().put("COLDROUND_RATE_PER_MINUTE", "0");
    builder.environment().putAll(more);
    Path log = store.folder.resolve("log-" + port);
    builder
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
    return new KillableService(builder.start(), log, port);
  }

  static KillableService start(Store store, Map<String, String> more)
      throws IOException, InterruptedException {
    KillableService service = launch(store, more);
    for (int i = 0; i < 3 && service.wasEndedByOthers(); i++) {
      service = launch(store, more);
    }
    return service.awaitReady();
  }

  KillableService awaitReady() throws IOException, InterruptedException {
    long end = System.nanoTime() + START.toNanos();
    while (System.nanoTime() < end && process.isAlive()) {
      if (isReady()) {
        return this;
      }
      Thread.sleep(50);
    }
    String how = process.isAlive() ? "in time" : ", it ended with " + process.exitValue();
    process.destroyForcibly();
    throw new IllegalStateException(
        "the service did not start " + how + ":\n" + Files.readString(log));
  }

  private boolean wasEndedByOthers() throws InterruptedException {
    awaitReadyOrGone();
    boolean ended = !process.isAlive() && SIGNALLED.contains(process.exitValue());
    if (ended) {
      System.out.println("a service was ended from outside: " + process.exitValue());
    }
    return ended;
  }

  /** Until it serves or somebody has ended it. */
  void awaitReadyOrGone() throws InterruptedException {
    while (process.isAlive() && !isReady()) {
      Thread.sleep(20);
    }
  }

  boolean isReady() throws InterruptedException {
    try {
      return call("GET", "/q/health/ready", null).status() == 200;
    } catch (IOException e) {
      return false;
    }
  }

  Answer call(String method, String path, String json) throws IOException, InterruptedException {
    return send(method, path, "application/json", json);
  }

  Answer upload(String address, String csv) throws IOException, InterruptedException {
    return send("POST", "/api/v1/imports/" + address, "text/csv", csv);
  }

  private Answer send(String method, String path, String type, String body)
      throws IOException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
            .timeout(Duration.ofSeconds(120))
            .header("Authorization", "Bearer " + TOKEN);
    request.method(method, body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
    if (body != null) {
      request.header("Content-Type", type);
    }
    HttpResponse<String> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofString());
    return new Answer(
        answer.statusCode(), answer.body(), answer.headers().firstValue("Location").orElse(""));
  }

  JsonNode get(String path) throws IOException, InterruptedException {
    return call("GET", path, null).must(200).json();
  }

  /** All items of a list, page by page. */
  List<JsonNode> all(String path) throws IOException, InterruptedException {
    return all(path, "");
  }

  /**
   * @param cursor behind which it begins; empty for the beginning
   */
  List<JsonNode> all(String path, String cursor) throws IOException, InterruptedException {
    List<JsonNode> items = new ArrayList<>();
    String after = cursor.isEmpty() ? "" : "&after=" + cursor;
    while (after != null) {
      JsonNode page = get(path + (path.contains("?") ? "&" : "?") + "limit=500" + after);
      page.path("items").forEach(items::add);
      String next = page.path("next").asText(null);
      // the feed always names a place to go on from
      after = next == null || page.path("items").isEmpty() ? null : "&after=" + next;
    }
    return items;
  }

  /** As by kill -9. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** As an operator stops it, who waits for its end before starting it again. */
  void stop() throws IOException, InterruptedException {
    process.destroy();
    if (!process.waitFor(2, TimeUnit.MINUTES)) {
      throw new IllegalStateException("the service did not end:\n" + Files.readString(log));
    }
  }

  long pid() {
    return process.pid();
  }

  String log() throws IOException {
    return Files.readString(log);
  }

  @Override
  public void close() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(30, TimeUnit.SECONDS)) {
      kill();
    }
  }
}

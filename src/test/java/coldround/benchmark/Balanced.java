package coldround.benchmark;

import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What a load balancer does: calls in turn go to those instances that say they are ready, and to
 * the next where a connection is refused. Connections are kept; a read on one that has been closed
 * meanwhile is sent again (RFC 9110, 9.2.2), nothing else is.
 */
final class Balanced {

  /** What was answered; 0 for none. */
  record Answer(int status, String body, String retryAfter) {}

  private final List<Integer> ports;
  private final Map<Integer, Boolean> ready = new ConcurrentHashMap<>();
  private final HttpClient http =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .connectTimeout(Duration.ofSeconds(5))
          .build();
  private final AtomicInteger turn = new AtomicInteger();

  Balanced(List<Integer> ports) {
    this.ports = ports;
    ports.forEach(port -> ready.put(port, true));
  }

  /** Asks each instance whether it is ready. */
  void look() {
    for (int port : ports) {
      try {
        ready.put(port, once(port, "GET", "/q/health/ready", null).status() == 200);
      } catch (IOException e) {
        ready.put(port, false);
      }
    }
  }

  Answer call(String method, String path, String body) {
    String refused = "";
    for (int i = 0; i < 4 * ports.size(); i++) {
      int port = ports.get(Math.floorMod(turn.getAndIncrement(), ports.size()));
      if (!ready.get(port)) {
        continue;
      }
      try {
        return once(port, method, path, body);
      } catch (ConnectException e) {
        refused = port + " refused";
      } catch (IOException e) {
        return new Answer(0, port + " " + e, "");
      }
    }
    return new Answer(0, "no instance is ready " + refused, "");
  }

  private Answer once(int port, String method, String path, String body) throws IOException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
            .timeout(Duration.ofSeconds(90))
            .header("Authorization", "Bearer " + KillableService.TOKEN);
    request.method(method, body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
    if (body != null) {
      request.header("Content-Type", "application/json");
    }
    try {
      HttpResponse<String> answer =
          http.send(request.build(), HttpResponse.BodyHandlers.ofString());
      String retry = answer.headers().firstValue("Retry-After").orElse("");
      return new Answer(answer.statusCode(), answer.body(), retry);
    } catch (InterruptedException e) {
      throw new IOException(e);
    }
  }
}

package coldround.benchmark;

import java.io.IOException;
import java.net.ConnectException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What a load balancer does: calls in turn go to those instances that say they are ready, and to
 * the next where a connection is refused. Nothing else is sent again.
 */
final class Balanced {

  /** What was answered; 0 for none. */
  record Answer(int status, String body, String retryAfter) {}

  private final List<Integer> ports;
  private final Map<Integer, Boolean> ready = new ConcurrentHashMap<>();
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

  private static Answer once(int port, String method, String path, String body) throws IOException {
    HttpURLConnection call =
        (HttpURLConnection) URI.create("http://127.0.0.1:" + port + path).toURL().openConnection();
    call.setRequestMethod(method);
    call.setConnectTimeout(5_000);
    call.setReadTimeout(90_000);
    call.setRequestProperty("Authorization", "Bearer " + KillableService.TOKEN);
    call.setRequestProperty("Connection", "close");
    if (body != null) {
      call.setDoOutput(true);
      call.setRequestProperty("Content-Type", "application/json");
      call.getOutputStream().write(body.getBytes(StandardCharsets.UTF_8));
    }
    int status = call.getResponseCode();
    try (var in = status < 400 ? call.getInputStream() : call.getErrorStream()) {
      String text = in == null ? "" : new String(in.readAllBytes(), StandardCharsets.UTF_8);
      String retry = call.getHeaderField("Retry-After");
      return new Answer(status, text, retry == null ? "" : retry);
    }
  }
}

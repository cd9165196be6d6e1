package coldround.feed.edge;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

/** A subscriber that keeps what it is sent and answers as a test wants it to. */
final class Receiver implements AutoCloseable {

  /** One message as it came. */
  record Message(HttpHeaders headers, String body, int answered) {
    String id() {
      return headers.firstValue("webhook-id").orElseThrow();
    }

    String subject() {
      return JsonPath.from(body).getString("subject");
    }

    boolean taken() {
      return answered < 300;
    }
  }

  private final HttpServer server;
  private final ExecutorService threads = Executors.newCachedThreadPool();
  final List<Message> messages = new CopyOnWriteArrayList<>();

  /** Status to answer the next message of a subject with. */
  volatile Function<String, Integer> answer = subject -> 200;

  volatile long slowMs;

  Receiver() {
    try {
      server = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 50);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    server.setExecutor(threads);
    server.createContext("/", this::take);
    server.start();
  }

  private void take(HttpExchange exchange) throws IOException {
    String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
    HttpHeaders headers = HttpHeaders.of(exchange.getRequestHeaders(), (name, value) -> true);
    int status = answer.apply(JsonPath.from(body).getString("subject"));
    messages.add(new Message(headers, body, status));
    if (slowMs > 0) {
      try {
        Thread.sleep(slowMs);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    if (status == 302) {
      exchange.getResponseHeaders().add("Location", url());
    }
    exchange.sendResponseHeaders(status, -1);
    exchange.close();
  }

  String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/hook?from=coldround";
  }

  List<String> taken() {
    return messages.stream().filter(Message::taken).map(Message::subject).toList();
  }

  /** Until it is so, for as long as it can take on a slow machine. */
  static void until(String what, BooleanSupplier so) {
    long end = System.nanoTime() + 60_000_000_000L;
    while (!so.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("did not come to it that " + what);
      }
      try {
        Thread.sleep(10);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}

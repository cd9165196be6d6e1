package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** A subscriber that keeps each message once, and counts those that came again. */
final class Inbox implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final HttpServer server;
  private final ExecutorService threads = Executors.newFixedThreadPool(4);
  private final Map<String, String> first = new LinkedHashMap<>();
  private final Map<String, Long> moments = new HashMap<>();
  private final List<String> again = new ArrayList<>();
  private String fault = "";

  Inbox() throws IOException {
    server = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 50);
    server.setExecutor(threads);
    server.createContext("/", this::take);
    server.start();
  }

  private void take(HttpExchange exchange) throws IOException {
    try {
      JsonNode event = JSON.readTree(exchange.getRequestBody().readAllBytes());
      keep(event.path("id").asText(), event.path("data").toString());
      exchange.sendResponseHeaders(204, -1);
    } finally {
      exchange.close();
    }
  }

  private synchronized void keep(String id, String data) {
    String before = first.putIfAbsent(id, data);
    Long earlier = moments.putIfAbsent(id, System.currentTimeMillis());
    if (before != null) {
      long after = System.currentTimeMillis() - earlier;
      again.add(id + " at " + Instant.now() + ", " + after + " ms behind the first");
      if (!before.equals(data)) {
        fault = "message " + id + " came again and said something else";
      }
    }
  }

  String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/";
  }

  /** Ids in the order in which each came first. */
  synchronized List<String> ids() {
    if (!fault.isEmpty()) {
      throw new IllegalStateException(fault);
    }
    return List.copyOf(first.keySet());
  }

  /** Messages that came more than once: delivered, and killed before that was written down. */
  synchronized List<String> again() {
    return List.copyOf(again);
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}

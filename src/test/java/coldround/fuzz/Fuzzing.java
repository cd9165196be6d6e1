package coldround.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Sends requests made out of the description that a running service gives, and holds each answer to
 * three things: no fault of the service, a refusal that says what is wrong, and not over 2 s.
 */
public final class Fuzzing {

  /** Of an answer. */
  public static final long LONGEST_MILLIS = 2000;

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int WORKERS = 4;
  private static final int AGAIN = 5;
  private static final int REMEMBERED = 40;

  /**
   * @param faults each with the request that brings it about
   */
  public record Found(
      int requests, Map<Integer, Integer> statuses, long slowestMillis, List<String> faults) {}

  private final String host;
  private final int port;
  private final String token;
  private final Shots shots;
  private final Map<Integer, Integer> statuses = new TreeMap<>();
  private final List<String> faults = Collections.synchronizedList(new ArrayList<>());
  private final List<Shot> slow = Collections.synchronizedList(new ArrayList<>());
  private final Queue<String> lately = new ConcurrentLinkedQueue<>();
  private volatile String stopped = "";
  private long slowest;

  /** Asks the service for its description and what it holds. */
  public Fuzzing(String host, int port, String token, long seed) throws IOException {
    this.host = host;
    this.port = port;
    this.token = token;
    Calls calls = new Calls(read("/q/openapi?format=json"));
    this.shots = new Shots(calls, pool(), token, seed);
  }

  private JsonNode ask(String method, String path, String type, String body) throws IOException {
    try (Wire wire = new Wire(host, port)) {
      List<String> headers =
          List.of(
              "Host: localhost",
              "Authorization: Bearer " + token,
              "Accept: application/json",
              "Content-Type: " + type);
      byte[] bytes = body == null ? null : body.getBytes(java.nio.charset.StandardCharsets.UTF_8);
      Wire.Answer answer = wire.send(new Shot(0, "", method, path, headers, bytes));
      if (answer.status() >= 300) {
        throw new IOException(path + " answered " + answer.status() + ": " + answer.text());
      }
      return JSON.readTree(answer.body());
    }
  }

  private JsonNode read(String path) throws IOException {
    return ask("GET", path, "text/plain", null);
  }

  private static List<String> each(JsonNode list, String pointer) {
    List<String> values = new ArrayList<>();
    list.path("items").forEach(item -> values.add(item.at(pointer).asText()));
    values.removeIf(String::isEmpty);
    return values.stream().distinct().toList();
  }

  private Pool pool() throws IOException {
    Pool pool = new Pool();
    JsonNode units = read("/api/v1/units?limit=60");
    pool.keep("units", each(units, "/id"));
    pool.keep("customer", each(units, "/customer"));
    pool.keep("site", each(units, "/site"));
    if (!each(units, "/id").isEmpty()) {
      JsonNode history = read("/api/v1/units/" + each(units, "/id").get(0) + "/history");
      List<String> visits = each(history, "/visit");
      pool.keep("visit", visits);
      pool.keep("number", visits);
    }
    pool.keep("tasks", each(read("/api/v1/tasks?limit=60"), "/id"));
    pool.keep("after", after("/api/v1/units?limit=1", "/api/v1/tasks?limit=1", "/api/v1/feed"));
    pool.keep(
        "accounts",
        List.of(made("/api/v1/accounts", "{\"name\": \"Fuzz\", \"role\": \"scheduler\"}")));
    pool.keep(
        "subscriptions",
        List.of(made("/api/v1/subscriptions", "{\"url\": \"http://127.0.0.1:9/hook\"}")));
    pool.keep("rounds", List.of(made("/api/v1/rounds", "{\"seconds\": 1}")));
    String list = "customer,name\nFUZZ,Fuzz\n,nameless\n";
    JsonNode receipt = ask("POST", "/api/v1/imports/customers", "text/csv", list);
    pool.keep("imports", List.of(receipt.path("id").asText()));
    pool.keep("replacement-plans", plans(each(units, "/customer")));
    return pool;
  }

  private List<String> plans(List<String> customers) throws IOException {
    if (customers.isEmpty()) {
      return List.of();
    }
    String body =
        "{\"customers\": [%s], \"limit\": {\"value\": 20000, \"unit\": \"USD\"}, \"runs\": 20}"
            .formatted(Wild.quoted(customers.get(0)));
    return List.of(made("/api/v1/replacement-plans", body));
  }

  private List<String> after(String... lists) throws IOException {
    List<String> cursors = new ArrayList<>(List.of("x", "AAAA", "MTIz", "eyJhIjoxfQ", "-1", "LTE"));
    for (String list : lists) {
      String next = read(list).path("next").asText("");
      if (!next.isEmpty()) {
        cursors.add(next);
        cursors.add(next.substring(1));
        cursors.add(next + "A");
      }
    }
    return cursors;
  }

  private String made(String path, String body) throws IOException {
    JsonNode made = ask("POST", path, "application/json", body);
    return made.path("id").asText(made.at("/account/id").asText());
  }

  /**
   * @param from number of the first request
   * @param to behind that of the last one
   */
  public void run(int from, int to) throws Exception {
    AtomicInteger next = new AtomicInteger(from);
    ExecutorService workers = Executors.newFixedThreadPool(WORKERS);
    try {
      List<Future<?>> running = new ArrayList<>();
      for (int i = 0; i < WORKERS; i++) {
        running.add(
            workers.submit(
                () -> {
                  try (Wire wire = new Wire(host, port)) {
                    for (int at = next.getAndIncrement();
                        at < to && stopped.isEmpty();
                        at = next.getAndIncrement()) {
                      send(wire, shots.make(at));
                    }
                  }
                  return null;
                }));
      }
      for (Future<?> each : running) {
        each.get();
      }
    } finally {
      workers.shutdownNow();
    }
    if (!stopped.isEmpty()) {
      // what comes behind would be refused and would prove nothing
      throw new IllegalStateException(stopped);
    }
    for (Shot shot : List.copyOf(slow)) {
      alone(shot);
    }
    slow.clear();
  }

  private void send(Wire wire, Shot shot) {
    try {
      Wire.Answer answer = wire.send(shot);
      synchronized (statuses) {
        statuses.merge(answer.status(), 1, Integer::sum);
        slowest = Math.max(slowest, answer.millis());
      }
      if (answer.millis() > LONGEST_MILLIS) {
        slow.add(shot);
      }
      lately.add(answer.status() + " " + shot);
      if (lately.size() > REMEMBERED) {
        lately.poll();
      }
      judge(shot, answer);
    } catch (IOException | RuntimeException e) {
      faults.add(e + "\n" + shot);
    }
  }

  /** Whether the token is refused where nothing else can be wrong. */
  private boolean isNobodys() throws IOException {
    try (Wire wire = new Wire(host, port)) {
      List<String> headers = List.of("Host: localhost", "Authorization: Bearer " + token);
      return wire.send(new Shot(0, "", "GET", "/api/v1/units?limit=1", headers, null)).status()
          == 401;
    }
  }

  /** What is slow only while others are served, or the machine has other work, hangs not. */
  private void alone(Shot shot) throws IOException {
    long best = Long.MAX_VALUE;
    for (int i = 0; i < AGAIN && best > LONGEST_MILLIS; i++) {
      try (Wire wire = new Wire(host, port)) {
        best = Math.min(best, wire.send(shot).millis());
      }
    }
    if (best > LONGEST_MILLIS) {
      faults.add(best + " ms\n" + shot);
    }
  }

  private void judge(Shot shot, Wire.Answer answer) throws IOException {
    int status = answer.status();
    if (status >= 500) {
      faults.add(status + " " + answer.text() + "\n" + shot);
    } else if (status == 401 && shot.shows(token) && isNobodys()) {
      stopped = "the token of the run counts no more; the calls before:\n" + lately;
    } else if (status >= 400 && shot.target().startsWith("/api/") && !shot.wantsNoBody()) {
      refusal(shot, answer);
    }
  }

  /**
   * RFC 9457, but where the server never gets so far as to know what is called: an address that is
   * none (RFC 3986), and a head that is too long to be read to its end.
   */
  private void refusal(Shot shot, Wire.Answer answer) {
    boolean unreadable = answer.status() == 400 && answer.body().length == 0 && !isAddress(shot);
    if (unreadable || answer.status() == 414 || answer.status() == 431) {
      return;
    }
    String type = answer.headers().getOrDefault("content-type", "");
    if (!type.startsWith("application/problem+json")) {
      faults.add(answer.status() + " is told as '" + type + "': " + answer.text() + "\n" + shot);
      return;
    }
    try {
      JsonNode problem = JSON.readTree(answer.body());
      boolean told =
          problem.path("type").asText().startsWith("urn:coldround:problem:")
              && problem.path("status").asInt() == answer.status()
              && !problem.path("detail").asText().isEmpty();
      String text = answer.text();
      if (!told || text.contains("Exception") || text.contains("\tat ")) {
        faults.add(answer.status() + " tells " + text + "\n" + shot);
      }
    } catch (IOException e) {
      faults.add(answer.status() + " is no JSON: " + answer.text() + "\n" + shot);
    }
  }

  private static boolean isAddress(Shot shot) {
    try {
      new URI(shot.target());
      return true;
    } catch (URISyntaxException e) {
      return false;
    }
  }

  public Found found() {
    int sent = statuses.values().stream().mapToInt(Integer::intValue).sum();
    return new Found(sent, new TreeMap<>(statuses), slowest, List.copyOf(faults));
  }
}

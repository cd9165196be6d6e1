package coldround.benchmark;

import coldround.benchmark.Readers.Asked;
import coldround.benchmark.Readers.Rate;
import coldround.benchmark.Readers.Rates;
import coldround.feed.PackedChanges;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Reads of the feed beside a bare endpoint of the same service and a bare server of the same
 * library that give the same bytes, the time from a change to its web hook at 200 changes a second,
 * and what a kill in the middle of that loses.
 */
final class FeedSpeed {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int PAGE = 100;
  // each is told as booked, and half of them move the day of a task, which is told too: 200 changes
  private static final int BOOKINGS_PER_SECOND = 134;
  // until little is left to be compiled
  private static final int WARM_UP_SECONDS = 60;
  private static final int HOOK_ROUNDS = 5;
  private static final int HOOK_SECONDS = 10;
  private static final int UNITS = 100;

  private final HttpClient http = HttpClient.newHttpClient();
  private final Readers readers = new Readers(Service.TOKEN, 4);

  /** When the call of a change was sent, and when it was answered, by task and reference. */
  private final Map<String, Instant> sent = new ConcurrentHashMap<>();

  private final Map<String, Instant> answered = new ConcurrentHashMap<>();

  private FeedSpeed() {}

  static void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("feed [EVENTS] [postgresql]", 0, 1, arguments);
    try (Store store = Store.of(asked.store())) {
      new FeedSpeed().measure(asked.number(0, 100_000), store);
    }
    System.exit(0);
  }

  private void measure(int events, Store store) throws Exception {
    Service service = new Service(store);
    service.start();
    // gives their places to the changes that the demo fleet made
    readers.get(service.address("/api/v1/feed/snapshot?limit=1"), null);
    service.close();
    fill(store, events);
    service.start();
    String first = cursor(service, events);
    List<URI> pages = pages(service, first, Math.min(50, events / PAGE));
    List<URI> bare = List.of(readers.bare(service.address("/bare"), pages.get(0)));
    List<Rates> all;
    try (Floor alone = Floor.of(readers.get(pages.get(0), null), store.folder)) {
      List<URI> library = List.of(alone.address());
      all =
          readers.inTurn(
              new Asked(pages, false),
              new Asked(bare, false),
              new Asked(library, false),
              new Asked(pages, true),
              new Asked(bare, true),
              new Asked(library, true));
    }
    tell("pages of " + PAGE, all.subList(0, 3));
    tell("304s", all.subList(3, 6));
    List<Map<String, Object>> hooks = new ArrayList<>();
    boolean lost = deliver(service, hooks);
    service.close();
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("pages", all.get(0));
    figures.put("floorPages", all.get(1));
    figures.put("libraryPages", all.get(2));
    figures.put("eventsAPage", PAGE);
    figures.put("unchanged", all.get(3));
    figures.put("floorUnchanged", all.get(4));
    figures.put("libraryUnchanged", all.get(5));
    Map<String, Object> byFigure = new LinkedHashMap<>();
    for (String figure : hooks.get(0).keySet()) {
      byFigure.put(figure, hooks.stream().map(round -> round.get(figure)).toList());
    }
    figures.put("hooks", byFigure);
    figures.put("lostByKill", lost);
    System.out.println(JSON.writeValueAsString(figures));
  }

  private static void tell(String what, List<Rates> rates) {
    Rate ours = rates.get(0).median();
    Rate floor = rates.get(1).median();
    Rate library = rates.get(2).median();
    System.out.printf(
        Locale.ROOT,
        "%s: %.0f a second, p99 %.1f ms; bare endpoint of the same service %.0f, p99 %.1f ms"
            + " (%.0f %%); library alone %.0f, p99 %.1f ms (%.0f %%)%n",
        what,
        ours.perSecond(),
        ours.p99Ms(),
        floor.perSecond(),
        floor.p99Ms(),
        100 * ours.perSecond() / floor.perSecond(),
        library.perSecond(),
        library.p99Ms(),
        100 * ours.perSecond() / library.perSecond());
  }

  /** Of web hooks, in ms: from the call, which ends with the commit, and from its answer. */
  private static final class Delays {
    private final List<Double> fromCall = new ArrayList<>();
    private final List<Double> fromAnswer = new ArrayList<>();
    private int hooks;
    private double callsPerSecond;

    Map<String, Object> figures() {
      Map<String, Object> figures = new LinkedHashMap<>();
      figures.put("calls", fromCall.size());
      figures.put("hooks", hooks);
      figures.put("callsPerSecond", callsPerSecond);
      figures.put("fromCallP50Ms", share(fromCall, 0.5));
      figures.put("fromCallP99Ms", share(fromCall, 0.99));
      figures.put("fromAnswerP50Ms", share(fromAnswer, 0.5));
      figures.put("fromAnswerP99Ms", share(fromAnswer, 0.99));
      return figures;
    }

    private static double share(Collection<Double> all, double share) {
      double[] sorted = all.stream().mapToDouble(Double::doubleValue).sorted().toArray();
      return sorted[(int) (sorted.length * share)];
    }
  }

  /** Changes as the demo fleet made them and as many in a row, over and over. */
  private static void fill(Store store, int events) throws Exception {
    String thousand = "(select 1 from feed_event fetch first 1000 rows only)";
    try (Connection connection = DriverManager.getConnection(store.url(Store.DATABASE));
        Statement statement = connection.createStatement()) {
      statement.execute("delete from feed_event where position is null");
      statement.execute(
          "insert into feed_event (position, happened, changes, packed)"
              + " select (select position from feed_head) + x.n * e.changes, e.happened, e.changes,"
              + " e.packed from (select row_number() over () as n from "
              + thousand
              + " a cross join "
              + thousand
              + " b fetch first "
              + (events + PackedChanges.MOST - 1) / PackedChanges.MOST
              + " rows only) x cross join (select * from feed_event where changes = "
              + PackedChanges.MOST
              + " order by id fetch first 1 rows only) e");
      statement.execute(
          "update feed_head set position = (select coalesce(max(position), 0) from feed_event)");
    }
  }

  private String cursor(Service service, int events) throws Exception {
    HttpResponse<byte[]> all = readers.get(service.address("/api/v1/feed/snapshot?limit=1"), null);
    String end = JSON.readTree(all.body()).get("cursor").asText();
    long position = Long.parseLong(end.substring(3), 36);
    return "f1." + Long.toString(position - events, 36);
  }

  private List<URI> pages(Service service, String cursor, int count) throws Exception {
    List<URI> pages = new ArrayList<>();
    String after = cursor;
    for (int i = 0; i < count; i++) {
      URI page = service.address("/api/v1/feed?limit=" + PAGE + "&after=" + after);
      pages.add(page);
      after = JSON.readTree(readers.get(page, null).body()).get("next").asText();
    }
    return pages;
  }

  /**
   * True when a change that was answered was not delivered.
   *
   * @param rounds takes the figures of each round of bookings
   */
  private boolean deliver(Service service, List<Map<String, Object>> rounds) throws Exception {
    Map<String, Instant> received = new ConcurrentHashMap<>();
    AtomicInteger hooks = new AtomicInteger();
    // else it holds small answers back for the sake of larger packets
    System.setProperty("sun.net.httpserver.nodelay", "true");
    HttpServer receiver = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 50);
    ExecutorService threads = Executors.newCachedThreadPool();
    receiver.setExecutor(threads);
    receiver.createContext(
        "/",
        exchange -> {
          Instant now = Instant.now();
          JsonNode event = JSON.readTree(exchange.getRequestBody().readAllBytes());
          exchange.sendResponseHeaders(204, -1);
          exchange.close();
          received.putIfAbsent(
              event.get("subject").asText() + event.at("/data/booking/reference").asText(), now);
          hooks.incrementAndGet();
        });
    receiver.start();
    String hook = "http://127.0.0.1:" + receiver.getAddress().getPort() + "/";
    send(
        service.address("/api/v1/subscriptions"),
        "POST",
        "{\"url\": \""
            + hook
            + "\", \"types\": [\"coldround.task.booked\", \"coldround.task.changed\"]}");
    List<String> tasks = tasks(service);
    book(service, tasks, WARM_UP_SECONDS, "warm-up");
    await(received, sent.keySet());
    for (int round = 1; round <= HOOK_ROUNDS; round++) {
      sent.clear();
      answered.clear();
      hooks.set(0);
      Delays delays = new Delays();
      delays.callsPerSecond = book(service, tasks, HOOK_SECONDS, "measured-" + round + "-");
      await(received, answered.keySet());
      delays.hooks = hooks.get();
      for (String change : answered.keySet()) {
        Instant came = received.get(change);
        delays.fromCall.add(Duration.between(sent.get(change), came).toNanos() / 1e6);
        // it may come before the answer does
        double late = Duration.between(answered.get(change), came).toNanos() / 1e6;
        delays.fromAnswer.add(Math.max(0, late));
      }
      rounds.add(delays.figures());
      System.out.println(delays.figures());
    }
    sent.clear();
    answered.clear();
    Set<String> before = killed(service, tasks);
    boolean lost = !await(received, before);
    System.out.printf("%d changes answered before the kill, lost: %b%n", before.size(), lost);
    receiver.stop(0);
    threads.shutdownNow();
    return lost;
  }

  /** Whether all have come, after a minute and a half at the latest. */
  private static boolean await(Map<String, Instant> received, Set<String> changes)
      throws InterruptedException {
    Instant end = Instant.now().plusSeconds(90);
    while (!received.keySet().containsAll(changes) && Instant.now().isBefore(end)) {
      Thread.sleep(20);
    }
    return received.keySet().containsAll(changes);
  }

  /** What was answered before the service was killed in the middle of it. */
  private Set<String> killed(Service service, List<String> tasks) throws Exception {
    ExecutorService writers = Executors.newFixedThreadPool(8);
    for (int w = 0; w < 8; w++) {
      int writer = w;
      writers.submit(
          () -> {
            for (int n = writer; n < tasks.size(); n += 8) {
              booking(service, tasks.get(n), n, "kill-" + n);
            }
            return null;
          });
    }
    while (answered.size() < Math.min(60, tasks.size() / 2)) {
      Thread.sleep(1);
    }
    service.kill();
    writers.shutdown();
    writers.awaitTermination(60, TimeUnit.SECONDS);
    Set<String> before = Set.copyOf(answered.keySet());
    service.start();
    return before;
  }

  /** Of units without history, for it is not their scoring that is measured, in any order. */
  private List<String> tasks(Service service) throws Exception {
    list(service, "customers", "customer\nBENCH\n");
    list(service, "sites", "customer,site\nBENCH,S\n");
    StringBuilder units = new StringBuilder("customer,site,unit,kind\n");
    for (int i = 0; i < UNITS; i++) {
      units.append("BENCH,S,U").append(i).append(",walk-in-cooler\n");
    }
    list(service, "units", units.toString());
    List<String> ids = new ArrayList<>();
    URI first = service.address("/api/v1/tasks?customer=BENCH&limit=500");
    JSON.readTree(readers.get(first, null).body())
        .get("items")
        .forEach(task -> ids.add(task.get("id").asText()));
    Collections.shuffle(ids, new Random(1));
    return ids;
  }

  private void list(Service service, String kind, String csv) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(service.address("/api/v1/imports/" + kind))
            .header("Authorization", "Bearer " + Service.TOKEN)
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(csv));
    int status = status(request);
    if (status != 200) {
      throw new IOException("import answered " + status);
    }
  }

  /**
   * At a steady rate, whatever the answers take.
   *
   * @return changes a second that were answered
   */
  private double book(Service service, List<String> tasks, int seconds, String reference)
      throws Exception {
    ExecutorService writers = Executors.newFixedThreadPool(16);
    long start = System.nanoTime();
    int count = seconds * BOOKINGS_PER_SECOND;
    for (int n = 0; n < count; n++) {
      long due = start + n * (1_000_000_000L / BOOKINGS_PER_SECOND);
      long left = due - System.nanoTime();
      if (left > 0) {
        TimeUnit.NANOSECONDS.sleep(left);
      }
      int number = n;
      writers.submit(
          () -> booking(service, tasks.get(number % tasks.size()), number, reference + number));
    }
    writers.shutdown();
    writers.awaitTermination(300, TimeUnit.SECONDS);
    double took = (System.nanoTime() - start) / 1e9;
    System.out.printf("%s: %d of %d bookings in %.1f s%n", reference, answered.size(), count, took);
    return answered.size() / took;
  }

  private void booking(Service service, String task, int number, String reference) {
    OffsetDateTime begins =
        OffsetDateTime.of(2027, 1, 1, 0, 0, 0, 0, ZoneOffset.UTC).plusDays(number % 300);
    URI address = service.address("/api/v1/tasks/" + task + "/booking");
    String json =
        "{\"start\": \"%s\", \"reference\": \"%s\"}".formatted(begins.toInstant(), reference);
    try {
      sent.put(task + reference, Instant.now());
      // over what is booked already, or a first booking
      int status = status(request(address, "PUT", json).header("If-Match", "*"));
      if (status == 412) {
        status = status(request(address, "PUT", json));
      }
      if (status != 200 && status != 201) {
        throw new IOException("booking answered " + status);
      }
      answered.put(task + reference, Instant.now());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private int status(HttpRequest.Builder request) throws IOException, InterruptedException {
    return http.send(request.build(), HttpResponse.BodyHandlers.discarding()).statusCode();
  }

  private static HttpRequest.Builder request(URI address, String method, String json) {
    return HttpRequest.newBuilder(address)
        .header("Authorization", "Bearer " + Service.TOKEN)
        .header("Content-Type", "application/json")
        .method(method, HttpRequest.BodyPublishers.ofString(json));
  }

  private void send(URI address, String method, String json) throws Exception {
    HttpResponse<String> answer =
        http.send(request(address, method, json).build(), HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() > 299) {
      throw new IOException(Arrays.asList(answer.statusCode(), answer.body()).toString());
    }
  }
}

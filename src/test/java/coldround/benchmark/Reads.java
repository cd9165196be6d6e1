package coldround.benchmark;

import coldround.benchmark.Readers.Asked;
import coldround.benchmark.Readers.Rate;
import coldround.benchmark.Readers.Rates;
import coldround.pages.edge.Browser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * {@code reads UNITS [postgresql]}: the built service with a big fleet that it has taken as files.
 * Each page and filter alone; reads a second beside a bare endpoint of the same service and a bare
 * server of the same library that give the same bytes; the first view of the fleet page in the
 * browser over a slow line.
 */
final class Reads implements Benchmarks.Program {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int SECONDS = 2;
  private static final int ALONE = 15;
  private static final int ROUNDS = 5;
  private static final int MOST_ANEW = 50_000;
  private static final String HEAP = "1g";

  private final Readers readers = new Readers(BuiltService.TOKEN, SECONDS);
  private final Map<String, Object> result = new LinkedHashMap<>();

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("reads UNITS [postgresql]", 1, arguments);
    BigFleet fleet = new BigFleet(asked.number(0));
    try (Store store = Store.of(asked.store());
        BuiltService service = BuiltService.start(HEAP, store)) {
      fleet.load(service);
      store.settle();
      run(fleet, service, store.folder);
    }
    System.out.println(JSON.writeValueAsString(result));
  }

  /**
   * @param folder for the bytes of the floor
   */
  private void run(BigFleet fleet, BuiltService service, Path folder) throws Exception {
    alone(service, fleet);
    many(service, folder);
    firstView(service);
  }

  /** One reader, nobody else. */
  private void alone(BuiltService service, BigFleet fleet) throws Exception {
    System.out.println("| read alone | median ms | worst ms | kB |");
    System.out.println("|---|---|---|---|");
    double[] slowest = new double[ROUNDS];
    for (Map.Entry<String, String> page : pages(service, fleet).entrySet()) {
      double[] times = new double[ALONE];
      int size = readers.get(service.address(page.getValue()), null).body().length;
      for (int i = 0; i < ALONE; i++) {
        URI address = anew(service.address(page.getValue()), i);
        long begin = System.nanoTime();
        readers.get(address, null);
        times[i] = (System.nanoTime() - begin) / 1e6;
      }
      for (int round = 0; round < ROUNDS; round++) {
        int from = round * ALONE / ROUNDS;
        double[] its = Arrays.copyOfRange(times, from, from + ALONE / ROUNDS);
        slowest[round] = Math.max(slowest[round], Times.middle(its));
      }
      Arrays.sort(times);
      System.out.printf(
          Locale.ROOT,
          "| %s | %.1f | %.1f | %d |%n",
          page.getKey(),
          times[ALONE / 2],
          times[ALONE - 1],
          size / 1000);
    }
    result.put("slowestMedianMs", slowest);
  }

  /** The same page under an address of its own, for which nothing is kept. */
  private static URI anew(URI page, int number) {
    return URI.create(page + (page.getQuery() == null ? "?" : "&") + "run=" + number);
  }

  private static List<URI> anew(List<URI> pages) {
    List<URI> all = new ArrayList<>();
    for (int i = 0; i < MOST_ANEW; i++) {
      all.add(anew(pages.get(i % pages.size()), i));
    }
    return all;
  }

  private Map<String, String> pages(BuiltService service, BigFleet fleet) throws Exception {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("fleet, worst first", "/");
    pages.put("fleet, due first", "/?order=due");
    pages.put("fleet, by name", "/?order=name");
    pages.put("fleet, second page", next(service, "/"));
    pages.put("fleet, second page by name", next(service, "/?order=name"));
    pages.put("a customer", "/?customer=" + fleet.customer());
    pages.put("a site", "/?customer=" + fleet.customer() + "&site=" + fleet.site());
    pages.put("a kind", "/?kind=ice-machine");
    pages.put("a refrigerant", "/?refrigerant=R-22");
    pages.put("kind and refrigerant, due first", "/?kind=chiller&refrigerant=R-22&order=due");
    pages.put("words: a site's", "/?q=dock");
    pages.put("words: a tag's", "/?q=U-777");
    pages.put("words: two", "/?q=thornfield%2077");
    pages.put("words: two, due first", "/?q=thornfield%2077&order=due");
    pages.put("words: two, by name", "/?q=thornfield%2077&order=name");
    pages.put("words: of nothing", "/?q=zeppelin");
    pages.put("words and kind", "/?q=dock&kind=chiller");
    pages.put("a unit", "/units/" + unit(service));
    pages.put("upkeep calendar", "/upkeep");
    return pages;
  }

  private String next(BuiltService service, String first) throws Exception {
    String page = new String(readers.get(service.address(first), null).body());
    int at = page.indexOf("\" rel=\"next\"");
    return page.substring(page.lastIndexOf("href=\"", at) + 6, at).replace("&amp;", "&");
  }

  /** One that has visits. */
  private String unit(BuiltService service) throws Exception {
    JsonNode list = JSON.readTree(service.get("/api/v1/units?unit=U-0&limit=1"));
    return list.at("/items/0/unit/id").asText();
  }

  /** Four readers at once, beside the same bytes from memory. */
  private void many(BuiltService service, Path folder) throws Exception {
    List<URI> fleet = new ArrayList<>();
    List<URI> units = new ArrayList<>();
    List<URI> conditions = new ArrayList<>();
    JsonNode list = JSON.readTree(service.get("/api/v1/units?limit=50"));
    for (JsonNode item : list.get("items")) {
      String id = item.at("/unit/id").asText();
      units.add(service.address("/units/" + id));
      conditions.add(service.address("/api/v1/units/" + id + "/condition"));
    }
    fleet.add(service.address("/"));
    Map<String, List<URI>> all = new LinkedHashMap<>();
    all.put("fleet page", fleet);
    all.put("unit page", units);
    all.put("list of 50 units", List.of(service.address("/api/v1/units?limit=50")));
    all.put("condition", conditions);
    all.put("list of 100 tasks", List.of(service.address("/api/v1/tasks?limit=100")));
    String snapshot = service.get("/api/v1/feed/snapshot?limit=1");
    long end = Long.parseLong(JSON.readTree(snapshot).get("cursor").asText().substring(3), 36);
    String from = "f1." + Long.toString(Math.max(0, end - 1000), 36);
    all.put("feed", List.of(service.address("/api/v1/feed?limit=100&after=" + from)));
    System.out.println(
        "| four readers | a second | p99 ms | bare endpoint a second | p99 ms | share"
            + " | library alone a second | share | p99 ms at half the peak | bare endpoint then"
            + " | worked out anew a second | p99 ms |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|");
    for (Map.Entry<String, List<URI>> read : all.entrySet()) {
      many(service, read.getKey(), read.getValue(), folder);
    }
  }

  private void many(BuiltService service, String name, List<URI> pages, Path folder)
      throws Exception {
    List<URI> bare = List.of(readers.bare(service.address("/bare"), pages.get(0)));
    List<Rates> all;
    try (Floor alone = Floor.of(readers.get(pages.get(0), null), folder)) {
      all =
          readers.inTurn(
              new Asked(pages, false),
              new Asked(bare, false),
              new Asked(List.of(alone.address()), false),
              new Asked(anew(pages), false));
    }
    Rate ours = all.get(0).median();
    Rate floor = all.get(1).median();
    Rate library = all.get(2).median();
    Rate anew = all.get(3).median();
    Rates half = readers.steady(pages, ours.perSecond() / 2);
    Rates floorHalf = readers.steady(bare, ours.perSecond() / 2);
    System.out.printf(
        Locale.ROOT,
        "| %s | %.0f | %.1f | %.0f | %.1f | %.0f %% | %.0f | %.0f %% | %.1f | %.1f | %.0f | %.1f |%n",
        name,
        ours.perSecond(),
        ours.p99Ms(),
        floor.perSecond(),
        floor.p99Ms(),
        100 * ours.perSecond() / floor.perSecond(),
        library.perSecond(),
        100 * ours.perSecond() / library.perSecond(),
        half.median().p99Ms(),
        floorHalf.median().p99Ms(),
        anew.perSecond(),
        anew.p99Ms());
    Map<String, Object> its = new LinkedHashMap<>();
    its.put("ours", all.get(0));
    its.put("floor", all.get(1));
    its.put("library", all.get(2));
    its.put("halfP99Ms", half.p99Ms());
    its.put("floorHalfP99Ms", floorHalf.p99Ms());
    its.put("anew", all.get(3));
    result.put(name, its);
  }

  private void firstView(BuiltService service) throws Exception {
    System.out.println("| first view over | kB over the wire | until all is there ms |");
    System.out.println("|---|---|---|");
    firstView(service, "10 Mbit/s, 40 ms", 10, 40);
    firstView(service, "1.6 Mbit/s, 150 ms", 1.6, 150);
  }

  /** In a browser that has never been here; the way in leads on to the fleet. */
  private void firstView(BuiltService service, String name, double megabits, int latencyMs)
      throws Exception {
    Optional<Browser> found = Browser.open();
    if (found.isEmpty()) {
      return;
    }
    try (Browser browser = found.get()) {
      browser.throttle(megabits, latencyMs);
      browser.go(service.address("/enter?token=" + BuiltService.TOKEN).toString());
      long kilobytes = browser.transferred() / 1000;
      System.out.printf("| %s | %d | %d |%n", name, kilobytes, browser.loadMs());
      result.put("first view over " + name, Map.of("kB", kilobytes, "loadedMs", browser.loadMs()));
    }
  }
}

package coldround.benchmark;

import coldround.benchmark.VisitFloor.Taken;
import coldround.fleet.UnitIds;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * {@code visit UNITS [WARM-UP-SECONDS] [postgresql]}: the built service with a big fleet takes
 * visits with their readings one by one, each at another unit that has a history: from the call to
 * its answer, which comes when score, tasks and changes for the feed are committed, and until the
 * feed has been read and shows them. The floor is plain JDBC that puts the rows of the same visits
 * into the same tables, a commit each, in the same run.
 */
final class VisitSpeed implements Benchmarks.Program {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int ROUND = 1000;
  private static final int ROUNDS = 5;
  private static final int LEAST = 100;
  // until little is left to be compiled
  private static final int WARM_UP_SECONDS = 120;
  private static final String HEAP = "2g";

  private final Random chance = new Random(1);
  private final LocalDate day = LocalDate.now().minusDays(1);
  private final List<Times> answered = new ArrayList<>();
  private final List<Times> told = new ArrayList<>();
  private final List<Taken> taken = new ArrayList<>();
  private final Map<String, Object> result = new LinkedHashMap<>();
  private String cursor;
  private int number;
  private int scored;

  @Override
  public void run(String... arguments) throws Exception {
    Arguments asked = Arguments.of("visit UNITS [WARM-UP-SECONDS] [postgresql]", 1, 2, arguments);
    int warmUpSeconds = asked.number(1, WARM_UP_SECONDS);
    BigFleet fleet = new BigFleet(asked.number(0));
    // the others are there to warm up
    int measured = Math.min(ROUNDS * ROUND, fleet.visited() / 2);
    // whole rounds, or a small one
    measured -= measured > ROUND ? measured % ROUND : 0;
    if (measured < LEAST) {
      throw new IllegalArgumentException(
          asked.usage() + ": in so small a fleet fewer than " + 2 * LEAST + " have a history");
    }
    result.put("units", asked.number(0));
    result.put("store", asked.store().toString());
    try (Store store = Store.of(asked.store())) {
      Instant since;
      long position;
      try (BuiltService service = BuiltService.start(HEAP, store)) {
        fleet.load(service);
        store.settle();
        List<String> units = units(service, fleet);
        Collections.shuffle(units, chance);
        result.put("loadBefore", Machine.load());
        warmUp(service, units.subList(measured, units.size()), warmUpSeconds);
        since = Instant.now();
        position = position();
        double spent = service.processorSeconds();
        for (int i = 0; i < measured; i++) {
          if (i % ROUND == 0) {
            answered.add(new Times());
            told.add(new Times());
          }
          measure(service, units.get(i));
        }
        double each = 1000 * (service.processorSeconds() - spent) / measured;
        result.put("serviceProcessorMsAVisit", each);
        result.put("peakMegabytes", service.peakMegabytes());
      }
      floor(store, since, position);
    }
    result.put("loadAfter", Machine.load());
    System.out.println(JSON.writeValueAsString(result));
  }

  private static List<String> units(BuiltService service, BigFleet fleet) throws Exception {
    List<String> ids = new ArrayList<>();
    String page = "/api/v1/units?limit=500&order=name";
    for (String next = ""; next != null; ) {
      JsonNode list = JSON.readTree(service.get(page + next));
      for (JsonNode item : list.get("items")) {
        if (fleet.isVisited(item.at("/unit/tag").asText())) {
          ids.add(item.at("/unit/id").asText());
        }
      }
      next = list.get("next").isNull() ? null : "&after=" + list.get("next").asText();
    }
    return ids;
  }

  private void warmUp(BuiltService service, List<String> units, int seconds) throws Exception {
    cursor = JSON.readTree(service.get("/api/v1/feed/snapshot?limit=1")).get("cursor").asText();
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    int calls = 0;
    while (System.nanoTime() < end) {
      service.post("/api/v1/visits", visit(units.get(calls++ % units.size())));
      changes(service);
    }
    result.put("warmUpCalls", calls);
  }

  private void measure(BuiltService service, String unit) throws Exception {
    String visit = visit(unit);
    long begin = System.nanoTime();
    service.post("/api/v1/visits", visit);
    answered.get(answered.size() - 1).add(System.nanoTime() - begin);
    List<String> changed = changes(service);
    told.get(told.size() - 1).add(System.nanoTime() - begin);
    // a task is named by its unit and more
    if (changed.isEmpty()
        || !changed.stream().allMatch(each -> (each + "-").startsWith(unit + "-"))) {
      throw new IllegalStateException("after a visit at " + unit + " the feed tells of " + changed);
    }
    scored += changed.contains(unit) ? 1 : 0;
    taken.add(new Taken(UnitIds.number(unit).orElseThrow(), "P-" + number, changed.size()));
  }

  /** As a technician may send it, the coil cleaned at every fourth unit. */
  private String visit(String unit) {
    number++;
    int ambient = 60 + chance.nextInt(35);
    return String.format(
        Locale.ROOT,
        """
        {"unit": "%s", "visit": "P-%d", "date": "%s", "purpose": "planned", "technician": "T%d",
         "readings": [{"quantity": "ambient", "value": %d, "unit": "degF"},
                      {"quantity": "head_pressure", "value": %d, "unit": "psig"},
                      {"quantity": "suction_pressure", "value": %d, "unit": "psig"},
                      {"quantity": "liquid_line", "value": %d, "unit": "degF"},
                      {"quantity": "box", "value": %d, "unit": "degF"},
                      {"quantity": "compressor", "value": %.1f, "unit": "A"},
                      {"quantity": "evaporator_fan", "notTaken": "behind shelving"}],
         "findings": {"condenser_coil": "%s", "contactor": "good", "drain": "good"},
         "work": ["%s"]}\
        """,
        unit,
        number,
        day,
        number % 9,
        ambient,
        170 + 4 * (ambient - 50) + chance.nextInt(20),
        50 + chance.nextInt(20),
        ambient + 20,
        34 + chance.nextInt(5),
        9 + chance.nextDouble(),
        number % 2 == 0 ? "moderate" : "heavy",
        number % 4 == 0 ? "condenser-coil-cleaned" : "inspected");
  }

  /** The units and tasks that the feed tells of since it was last read. */
  private List<String> changes(BuiltService service) throws Exception {
    JsonNode page = JSON.readTree(service.get("/api/v1/feed?limit=100&after=" + cursor));
    cursor = page.get("next").asText();
    List<String> subjects = new ArrayList<>();
    page.get("items").forEach(item -> subjects.add(item.get("subject").asText()));
    return subjects;
  }

  private long position() {
    return Long.parseLong(cursor.substring(3), 36);
  }

  private void floor(Store store, Instant since, long position) throws IOException, SQLException {
    try (VisitFloor floor =
        new VisitFloor(
            DriverManager.getConnection(store.url(Store.DATABASE)), taken, since, position)) {
      Times plain = floor.measure();
      System.out.printf(
          "%d visits in rounds of %d, medians of the rounds, ms:%n",
          taken.size(), Math.min(ROUND, taken.size()));
      System.out.println("| | p50 | p99 | most |");
      System.out.println("|---|---|---|---|");
      tell("a visit, from the call to its answer", "", answered);
      tell("until the feed has shown its changes", "told", told);
      tell("the same rows by plain JDBC", "floor", List.of(plain));
      result.put("tasksAVisit", floor.tasks());
      result.put("changesAVisit", floor.changes());
      result.put("newScores", scored);
    }
  }

  private void tell(String what, String name, List<Times> rounds) {
    Map<String, Double> shares = new LinkedHashMap<>();
    shares.put("P50Ms", 0.5);
    shares.put("P99Ms", 0.99);
    shares.put("MaxMs", 1.0);
    List<String> cells = new ArrayList<>();
    shares.forEach(
        (figure, share) -> {
          String full = name + figure;
          double[] ms = rounds.stream().mapToDouble(times -> times.ms(share)).toArray();
          result.put(full.substring(0, 1).toLowerCase(Locale.ROOT) + full.substring(1), ms);
          cells.add(String.format(Locale.ROOT, "%.2f", Times.middle(ms)));
        });
    System.out.printf("| %s | %s |%n", what, String.join(" | ", cells));
  }
}

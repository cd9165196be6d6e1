package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** What the service is doing when it is killed. */
final class KillHarms {

  private static final int WRITERS = 4;

  private KillHarms() {}

  private interface Step {
    void run(int number) throws Exception;
  }

  /** The same step again and again by several at once, until the service is gone. */
  private static void together(Step step) throws Exception {
    AtomicInteger number = new AtomicInteger();
    List<Thread> threads = new ArrayList<>();
    for (int i = 0; i < WRITERS; i++) {
      Thread thread =
          new Thread(
              () -> {
                try {
                  while (true) {
                    step.run(number.incrementAndGet());
                  }
                } catch (Exception e) {
                  // the service is gone; what was answered before is held against what is found
                }
              });
      thread.start();
      threads.add(thread);
    }
    for (Thread thread : threads) {
      thread.join();
    }
  }

  /** Of a few units: the listed score is the one that their history gives. */
  private static void scoresFitHistories(KillableService service, int most) throws Exception {
    int seen = 0;
    for (JsonNode line : service.get("/api/v1/units?limit=500").path("items")) {
      if (seen++ >= most) {
        return;
      }
      String unit = line.path("unit").path("id").asText();
      JsonNode condition = service.get("/api/v1/units/" + unit + "/condition");
      Harm.check(
          Math.abs(condition.path("score").asDouble() - line.path("score").asDouble()) < 0.051,
          "unit %s is listed with %s and has %s"
              .formatted(unit, line.path("score"), condition.path("score")));
    }
  }

  private static List<String> units(KillableService service) throws Exception {
    List<String> ids = new ArrayList<>();
    for (JsonNode line : service.get("/api/v1/units?limit=100").path("items")) {
      ids.add(line.path("unit").path("id").asText());
    }
    return ids;
  }

  /** A file of visits in one transaction. */
  static final class Import implements Harm {
    private static final int ROWS = 3000;
    private final String csv;
    private final String round;
    private volatile int answered;

    Import(int round) {
      this.round = "K" + round;
      StringBuilder text =
          new StringBuilder(
              "customer,site,unit,visit,date,ambient [degF],head_pressure [psig],suction_pressure"
                  + " [psig],condenser_coil\n");
      for (int i = 0; i < ROWS; i++) {
        text.append(this.round)
            .append(",S,U")
            .append(i % 50)
            .append(",V")
            .append(i)
            .append(",2026-0")
            .append(1 + i % 9)
            .append("-12,82,260,41,moderate\n");
      }
      this.csv = text.toString();
    }

    @Override
    public String name() {
      return "import";
    }

    @Override
    public int longest() {
      return 4000;
    }

    @Override
    public void work(KillableService service) throws Exception {
      answered = 1;
      service.upload("visits", csv).must(200);
      answered = 2;
    }

    @Override
    public void prepare(KillableService service) throws Exception {
      service.upload("customers", "customer\n" + round + "\n").must(200);
      service.upload("sites", "customer,site\n" + round + ",S\n").must(200);
      StringBuilder units = new StringBuilder("customer,site,unit,kind,refrigerant\n");
      for (int i = 0; i < 50; i++) {
        units.append(round).append(",S,U").append(i).append(",walk-in-cooler,R-404A\n");
      }
      service.upload("units", units.toString()).must(200);
    }

    @Override
    public String check(KillableService service) throws Exception {
      if (answered == 0) {
        return "before its file was sent";
      }
      JsonNode there = service.upload("visits?preview=true", csv).must(200).json().path("rows");
      int unchanged = there.path("unchanged").asInt();
      Harm.check(
          unchanged == ROWS || unchanged == 0 && there.path("created").asInt() == ROWS,
          "half a file: " + there);
      Harm.check(answered < 2 || unchanged == ROWS, "an answered file is lost: " + there);
      service.upload("visits", csv).must(200);
      JsonNode again = service.upload("visits", csv).must(200).json().path("rows");
      Harm.check(again.path("unchanged").asInt() == ROWS, "not there once: " + again);
      return (unchanged == ROWS ? "whole" : "nothing")
          + (answered == 2 ? ", answered" : ", not answered");
    }
  }

  /** Visits from the field, each scored in its transaction. */
  static final class Visits implements Harm {
    private final String round;
    private final Map<String, String> answered = new ConcurrentHashMap<>();

    private List<String> units = List.of();

    Visits(int round) {
      this.round = "K" + round;
    }

    @Override
    public void prepare(KillableService service) throws Exception {
      units = units(service);
    }

    @Override
    public String name() {
      return "visits";
    }

    @Override
    public int longest() {
      return 2500;
    }

    @Override
    public void work(KillableService service) throws Exception {
      together(
          number -> {
            String unit = units.get(number % units.size());
            String visit = round + "-" + number;
            service
                .call(
                    "POST",
                    "/api/v1/visits",
                    """
                    {"unit": "%s", "visit": "%s", "date": "2026-05-12", "purpose": "planned",
                     "readings": [{"quantity": "head_pressure", "value": 240, "unit": "psig"}],
                     "findings": {"condenser_coil": "heavy"}}\
                    """
                        .formatted(unit, visit))
                .must(201);
            answered.put(visit, unit);
          });
    }

    @Override
    public String check(KillableService service) throws Exception {
      for (Map.Entry<String, String> each : answered.entrySet()) {
        Harm.check(
            service
                    .call(
                        "GET",
                        "/api/v1/units/" + each.getValue() + "/visits/" + each.getKey(),
                        null)
                    .status()
                == 200,
            "an answered visit is lost: " + each);
      }
      scoresFitHistories(service, 40);
      return answered.size() + " visits answered, all there";
    }
  }

  /** The whole fleet scored anew at a start with other tables. */
  static final class Reassessment implements Harm {
    private final Path tables;
    private int changes;

    Reassessment(Path tables) throws IOException {
      this.tables = Files.createDirectories(tables);
      change();
    }

    /** Another source of the same weights: the scores stay, and must all be made again. */
    void change() throws IOException {
      changes++;
      try (Stream<String> lines = Files.lines(Path.of("scoring", "weights.csv"))) {
        Files.writeString(
            tables.resolve("weights.csv"),
            String.join("\n", lines.toList()).replace("no source", "no source, " + changes) + "\n");
      }
    }

    Map<String, String> environment() {
      return Map.of("COLDROUND_SCORING", tables.toString());
    }

    @Override
    public String name() {
      return "scoring";
    }

    @Override
    public int longest() {
      return 6000;
    }

    @Override
    public void work(KillableService service) throws Exception {
      service.awaitReadyOrGone();
    }

    @Override
    public String check(KillableService service) throws Exception {
      scoresFitHistories(service, 40);
      return "all units scored, by their histories";
    }
  }

  /** Rounds being planned in the background. */
  static final class Planning implements Harm {
    private final String day;
    private volatile String place = "";

    Planning(int round) {
      this.day = java.time.LocalDate.now().plusDays(round % 20).toString();
    }

    @Override
    public String name() {
      return "planning";
    }

    @Override
    public int longest() {
      return 5000;
    }

    @Override
    public void work(KillableService service) throws Exception {
      place =
          service
              .call(
                  "POST",
                  "/api/v1/rounds",
                  "{\"from\":\"%s\",\"to\":\"%s\",\"seconds\":3}".formatted(day, day))
              .must(202)
              .location();
    }

    @Override
    public String check(KillableService service) throws Exception {
      if (place.isEmpty()) {
        return "before it was answered";
      }
      long end = System.nanoTime() + 90_000_000_000L;
      String first = service.get(place).path("state").asText();
      String state = first;
      while (!state.equals("planned")) {
        Harm.check(System.nanoTime() < end, "a plan that was promised is not made: " + state);
        Thread.sleep(100);
        state = service.get(place).path("state").asText();
      }
      return "found " + first + ", then planned";
    }
  }

  /** Bookings, each told by web hooks. */
  static final class Bookings implements Harm {
    private final String round;
    private final Random random;
    private final List<String> tasks = new ArrayList<>();
    private final Map<String, String> answered = new ConcurrentHashMap<>();
    private int offset;

    Bookings(int round, Random random) {
      this.round = "K" + round;
      this.random = new Random(random.nextLong());
    }

    @Override
    public String name() {
      return "hooks";
    }

    @Override
    public int longest() {
      return 2500;
    }

    @Override
    public void prepare(KillableService service) throws Exception {
      for (JsonNode task : service.get("/api/v1/tasks?limit=500").path("items")) {
        tasks.add(task.path("id").asText());
      }
      offset = random.nextInt(tasks.size());
    }

    @Override
    public void work(KillableService service) throws Exception {
      together(
          number -> {
            String task = tasks.get((offset + number) % tasks.size());
            String reference = round + "-" + number;
            KillableService.Answer answer =
                service.call(
                    "PUT",
                    "/api/v1/tasks/" + task + "/booking",
                    "{\"start\":\"2026-12-%02dT09:00:00Z\",\"technician\":\"T1\",\"reference\":\"%s\"}"
                        .formatted(1 + number % 28, reference));
            Harm.check(answer.status() < 500, answer.body());
            if (answer.status() < 300) {
              answered.put(task, reference);
            }
          });
    }

    @Override
    public String check(KillableService service) throws Exception {
      for (Map.Entry<String, String> each : answered.entrySet()) {
        JsonNode booking = service.get("/api/v1/tasks/" + each.getKey() + "/booking");
        // one that was being changed at the kill may have become what was not answered any more
        Harm.check(
            booking.path("reference").asText().startsWith(round + "-"),
            "an answered booking is lost: " + each);
      }
      return answered.size() + " bookings answered, all there";
    }
  }
}

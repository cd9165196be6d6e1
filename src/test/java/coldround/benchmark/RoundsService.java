package coldround.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpRequest.BodyPublishers;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * {@code rounds-service TECHNICIANS UNITS SECONDS [postgresql]}: five days planned by the built
 * service, heap 1 GB, from the call to the answers: when the first plan with all that the law asks
 * for is read, what it costs then and at the end, how long an emergency takes in it, processor time
 * and memory.
 */
final class RoundsService {

  private static final int UNITS_A_SITE = 3;
  private static final int EMERGENCIES = 3;
  private static final ObjectMapper JSON = new ObjectMapper();

  private final int technicians;
  private final int units;
  private final int seconds;
  private final Random chance = new Random(1);
  private final LocalDate today = LocalDate.now();

  private RoundsService(int technicians, int units, int seconds) {
    this.technicians = technicians;
    this.units = units;
    this.seconds = seconds;
  }

  static void run(String... arguments) throws Exception {
    Arguments asked =
        Arguments.of("rounds-service TECHNICIANS UNITS SECONDS [postgresql]", 3, arguments);
    try (Store store = Store.of(asked.store());
        BuiltService service = BuiltService.start("1g", store)) {
      new RoundsService(asked.number(0), asked.number(1), asked.number(2)).measure(service);
    }
  }

  private void measure(BuiltService service) throws Exception {
    for (Map.Entry<String, String> list : lists().entrySet()) {
      service.upload(list.getKey(), BodyPublishers.ofString(list.getValue()));
    }
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("technicians", technicians);
    figures.put("units", units);
    figures.put("loadBefore", Machine.load());
    plan(service, figures);
    figures.put("loadAfter", Machine.load());
    figures.put("peakMegabytes", service.peakMegabytes());
    System.out.println(JSON.writeValueAsString(figures));
  }

  private void plan(BuiltService service, Map<String, Object> figures) throws Exception {
    LocalDate monday = today.with(TemporalAdjusters.next(DayOfWeek.MONDAY));
    String asked =
        "{\"from\": \"%s\", \"to\": \"%s\", \"seconds\": %d, \"seed\": 1}"
            .formatted(monday, monday.plusDays(4), seconds);
    long begin = System.nanoTime();
    double spent = service.processorSeconds();
    String id = JSON.readTree(service.post("/api/v1/rounds", asked)).path("id").asText();
    JsonNode plan;
    do {
      Thread.sleep(250);
      plan = JSON.readTree(service.get("/api/v1/rounds/" + id));
      if (!figures.containsKey("firstSeconds") && complete(plan)) {
        figures.put("firstSeconds", since(begin));
        figures.put("firstProcessorSeconds", round(service.processorSeconds() - spent));
        figures.put("firstCost", Math.round(plan.path("cost").path("total").asDouble()));
      }
    } while (List.of("waiting", "planning").contains(plan.path("state").asText()));
    figures.put("tasks", tasks(plan.path("days")) + tasks(plan.path("leftOut")));
    figures.put("planned", tasks(plan.path("days")));
    figures.put("state", plan.path("state").asText());
    figures.put("cost", Math.round(plan.path("cost").path("total").asDouble()));
    figures.put("seconds", since(begin));
    figures.put("processorSeconds", round(service.processorSeconds() - spent));
    double before = service.processorSeconds();
    figures.put("emergencySeconds", emergencies(service, id, plan));
    double each = (service.processorSeconds() - before) / EMERGENCIES;
    figures.put("emergencyProcessorSeconds", round(each));
  }

  /** A call that must be made, could be and is not stands among the notes. */
  private static boolean complete(JsonNode plan) {
    for (JsonNode note : plan.path("notes")) {
      if (note.path("code").asText().equals("no-room")) {
        return false;
      }
    }
    return !plan.path("days").isEmpty();
  }

  private static int tasks(JsonNode part) {
    return part.findValues("tasks").stream().mapToInt(JsonNode::size).sum();
  }

  private static List<Double> emergencies(BuiltService service, String id, JsonNode plan)
      throws Exception {
    List<Double> taken = new ArrayList<>();
    JsonNode day = plan.path("days").path(0);
    for (int i = 0; i < EMERGENCIES; i++) {
      JsonNode round = day.path("rounds").path(i * day.path("rounds").size() / EMERGENCIES);
      String unit = round.at("/stops/0/tasks/0/unit/id").asText();
      String body =
          "{\"unit\": \"%s\", \"minutes\": 45, \"day\": \"%s\"}"
              .formatted(unit, day.path("day").asText());
      long begin = System.nanoTime();
      service.post("/api/v1/rounds/" + id + "/emergencies", body);
      taken.add(since(begin));
    }
    return taken;
  }

  private static double since(long begin) {
    return round((System.nanoTime() - begin) * 1e-9);
  }

  private static double round(double value) {
    return Math.round(100 * value) / 100.0;
  }

  /** An invented fleet over a country side, last seen within the past year. */
  private Map<String, String> lists() {
    Map<String, String> lists = new LinkedHashMap<>();
    lists.put("customers", "customer,name\nC,Invented\n");
    int sites = Math.max(1, units / UNITS_A_SITE);
    StringBuilder rows =
        new StringBuilder("customer,site,latitude,longitude,time_zone,visiting_hours\n");
    for (int s = 0; s < sites; s++) {
      String hours = List.of("", "Mo-Fr 06:00-14:00", "Mo-Fr 08:00-11:00,14:00-18:00").get(s % 3);
      rows.append("C,S%d,%s,America/New_York,\"%s\"\n".formatted(s, place(), hours));
    }
    lists.put("sites", rows.toString());
    rows = new StringBuilder("customer,site,unit,kind,installed,refrigerant,charge [lb]\n");
    StringBuilder visits = new StringBuilder("customer,site,unit,visit,date,condenser_coil,work\n");
    for (int u = 0; u < units; u++) {
      String unit = "C,S%d,U%d".formatted(u % sites, u);
      String kind = List.of("walk-in-cooler", "reach-in-freezer", "display-case").get(u % 3);
      rows.append("%s,%s,%d-06-01,R-404A,8\n".formatted(unit, kind, 2008 + u % 16));
      LocalDate seen = today.minusDays(30 + chance.nextInt(330));
      visits.append("%s,1,%s,light,condenser-coil-cleaned;inspected\n".formatted(unit, seen));
    }
    lists.put("units", rows.toString());
    lists.put("visits", visits.toString());
    rows = new StringBuilder("technician,latitude,longitude,hours,competences\n");
    for (int t = 0; t < technicians; t++) {
      String hours = t % 3 == 0 ? "Mo-Th 07:00-17:00" : "Mo-Fr 07:30-16:00";
      String known = t % 4 == 2 ? "electrical" : "electrical;refrigerant-handling";
      rows.append("T%d,%s,%s,%s\n".formatted(t, place(), hours, known));
    }
    lists.put("technicians", rows.toString());
    return lists;
  }

  private String place() {
    return String.format(
        Locale.ROOT, "%.4f,%.4f", 37.5 + 2 * chance.nextDouble(), -80 + 2.5 * chance.nextDouble());
  }
}

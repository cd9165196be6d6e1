package coldround.description;

import static coldround.description.DescribedClient.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.description.Described.Call;
import coldround.description.DescribedClient.Answer;
import coldround.description.DescribedClient.Arguments;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.net.URI;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Every call that is described is made, by a client that takes no answer which is not described:
 * status, media type and each field. With {@code -Dcoldround.publish=true} the first good answer of
 * a call without an example becomes its example.
 */
@QuarkusTest
class EveryCallTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Duration LONGEST = Duration.ofSeconds(60);

  private Described described;
  private DescribedClient client;
  private DescribedClient stranger;
  private final String customer = "E" + UUID.randomUUID().toString().substring(0, 8);
  private final String technician = "T" + customer;
  private final Map<String, Answer> good = new LinkedHashMap<>();
  private final List<String> faults = new ArrayList<>();
  private String unit = "";
  private String task = "";

  @BeforeEach
  void readTheDescription() {
    URI service = URI.create("http://localhost:" + RestAssured.port);
    described = Described.running();
    client = new DescribedClient(service, Api.TOKEN, described);
    stranger = new DescribedClient(service, null, described);
  }

  /** Keeps the first good answer of each call; what is wrong is told of all at the end. */
  private Answer call(String id, Arguments arguments) {
    try {
      Answer answer = client.call(id, arguments).isGood();
      good.putIfAbsent(id, answer);
      return answer;
    } catch (AssertionError e) {
      faults.add(e.getMessage());
      return new Answer(described.call(id), 0, new byte[0], Map.of());
    }
  }

  private JsonNode read(String id, Arguments arguments) {
    return call(id, arguments).json();
  }

  @Test
  void everyCallAnswersAsItIsDescribed() throws Exception {
    fleet();
    units();
    refrigerants();
    upkeep();
    feed();
    subscriptions();
    rounds();
    replacement();
    others();
    for (Call call : described.calls()) {
      if (!good.containsKey(call.id())) {
        unforeseen(call);
      }
    }
    described.calls().forEach(this::refusals);
    good.values().forEach(this::conditional);
    Examples.keep(described, good.values());
    assertEquals(List.of(), faults);
  }

  private JsonNode list(String kind, String csv) {
    return read("importFile", with("kind", kind).body("text/csv", csv));
  }

  private void fleet() {
    list("customers", "customer,name\n" + customer + ",Harbor Grocers\n");
    list(
        "sites",
        "customer,site,name,address,latitude,longitude\n"
            + customer
            + ",S1,Dock,\"1 Dock Street\",38.20,-79.01\n");
    list(
        "units",
        "customer,site,unit,kind,refrigerant,charge [lb],installed,condenser_place,replacement_cost [USD]\n"
            + "%1$s,S1,U1,walk-in-cooler,R-404A,12,2008-05-01,roof,9000\n%1$s,S1,U2,reach-in-cooler,R-404A,3,2012-05-01,indoors,4000\n"
                .formatted(customer));
    list(
        "technicians",
        "technician,name,latitude,longitude,hours,competences\n"
            + technician
            + ",Ruth,38.21,-79.02,Mo-Su 07:00-17:00,refrigerant-handling;electrical;flammable\n");
    JsonNode receipt =
        list(
            "visits",
            "customer,site,unit,visit,date,ambient [degF],head_pressure [psig],suction_pressure [psig],condenser_coil\n"
                + "%1$s,S1,U1,1,2025-06-01,80,230,40,light\n%1$s,S1,U1,2,2026-05-12,82,260,41,heavy\n%1$s,S1,U9,3,2026-05-12,82,260,41,heavy\n"
                    .formatted(customer));
    list(
        "faults",
        "customer,site,unit,date,failure_mode,downtime [h]\n"
            + customer
            + ",S1,U1,2025-08-01,high-head-lockout,4\n");
    Arguments its = with("id", receipt.path("id").asText());
    call("getImport", its);
    call("getRejectedRows", its);
    call(
        "importFile",
        with("kind", "technicians")
            .with("Prefer", "respond-async")
            .body("text/csv", "technician,name\n" + technician + ",Ruth Ansell\n"));
    call("exportCsv", with("kind", "technicians"));
    call("exportNdjson", with("kind", "technicians"));
  }

  private void units() {
    JsonNode units = read("listUnits", with("customer", customer).with("limit", 1));
    units = read("listUnits", with("customer", customer).with("unit", "U1"));
    unit = units.at("/items/0/unit/id").asText();
    call("getUnit", with("id", unit));
    call("getUnitHistory", with("id", unit).with("limit", 2));
    call("getCondition", with("id", unit));
    call("listScores", with("id", unit));
    call("getVisitEffect", with("id", unit).with("number", "2"));
    call("getVisit", with("unit", unit).with("visit", "2"));
    ObjectNode visit = (ObjectNode) client.example("recordVisit");
    visit.put("unit", unit).put("visit", "4711");
    call("recordVisit", new Arguments().body(visit)).is(201);
    ((ObjectNode) visit.at("/readings/0")).put("value", 151);
    call("recordVisit", new Arguments().body(visit)).is(200);
    call("confirmReading", with("id", unit).body(client.example("confirmReading")));
    call("listCorrections", with("unit", unit));
    call("getMeanCumulativeFaults", with("customer", customer));
    call("drawMeanCumulativeFaults", with("customer", customer));
    call("tryWeights", with("customer", customer).body(client.example("tryWeights")));
  }

  private void refrigerants() {
    call("listRefrigerants", with("limit", 2));
    call("getRefrigerant", with("designation", "R-404A"));
    call("getSaturation", with("designation", "R-404A").with("pressure", 200).with("unit", "psig"));
    call(
        "getExpectedHead",
        with("designation", "R-404A").with("ambient", 70).with("split", 30).with("unit", "degF"));
  }

  private void upkeep() {
    JsonNode tasks = read("listTasks", with("unit", unit).with("limit", 2));
    call("listBundles", with("customer", customer).with("limit", 1));
    call("backtestCleanings", with("customer", customer));
    ObjectNode question = (ObjectNode) client.example("askWhatIf");
    call("askWhatIf", new Arguments().body(question.put("customer", customer)));
    task = tasks.at("/items/0/id").asText();
    JsonNode booking = client.example("bookTask");
    call("bookTask", with("id", task).body(booking)).is(201);
    call("bookTask", with("id", task).body(booking)).is(200);
    call("getBooking", with("id", task));
    call("cancelBooking", with("id", task)).is(204);
    read("listTasks", with("unit", unit))
        .path("items")
        .forEach(
            each -> {
              if (each.get("task").asText().equals("condenser-coil-cleaning")) {
                task = each.get("id").asText();
              }
            });
    ObjectNode visit = (ObjectNode) client.example("completeTask");
    call("completeTask", with("id", task).body(visit.put("unit", unit).put("date", "2026-06-01")))
        .is(201);
    call("getCompletion", with("id", task));
  }

  private void feed() {
    call("readSnapshot", with("limit", 1));
    call("readFeed", with("limit", 2));
    call("readTaskCalendar", with("customer", customer));
    call("readSchema", with("type", "coldround.task.booked"));
  }

  private void subscriptions() throws InterruptedException {
    ObjectNode body = (ObjectNode) client.example("subscribe");
    // nobody listens there
    body.put("url", "http://127.0.0.1:9/hook");
    body.putArray("types").add("coldround.task.unbooked");
    String id = read("subscribe", new Arguments().body(body)).path("id").asText();
    for (int i = 0; i < 3; i++) {
      JsonNode open = read("listTasks", with("unit", unit));
      String other = open.at("/items/" + i + "/id").asText();
      call("bookTask", with("id", other).body(client.example("bookTask")));
      call("cancelBooking", with("id", other));
    }
    Arguments its = with("id", id);
    until("getSubscription", its, answer -> answer.path("deadLetters").asInt() == 3);
    call("listSubscriptions", new Arguments());
    call("rotateSecret", its);
    call("resumeSubscription", its);
    JsonNode letters = read("listDeadLetters", its);
    call("sendDeadLetterAgain", with("id", id).with("letter", letters.at("/items/0/id").asText()));
    call("sendDeadLettersAgain", its);
    call("unsubscribe", its);
  }

  private JsonNode until(String id, Arguments arguments, Predicate<JsonNode> reached)
      throws InterruptedException {
    Instant end = Instant.now().plus(LONGEST);
    JsonNode answer = read(id, arguments);
    while (!reached.test(answer) && Instant.now().isBefore(end)) {
      Thread.sleep(100);
      answer = read(id, arguments);
    }
    assertTrue(reached.test(answer), id + " answered to the end " + answer);
    return answer;
  }

  private void rounds() throws InterruptedException {
    // whatever the hour of today, that week has all its hours before it
    LocalDate monday = LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.MONDAY));
    ObjectNode order = JSON.createObjectNode().put("seconds", 1).put("from", monday.toString());
    order.putArray("technicians").add(technician);
    order.putArray("customers").add(customer);
    String id = read("planRounds", new Arguments().body(order)).path("id").asText();
    Arguments its = with("id", id);
    JsonNode plan = until("readRounds", its, EveryCallTest::isPlanned);
    for (String form : List.of("Csv", "GeoJson", "Calendar")) {
      call("readRoundsAs" + form, its);
    }
    call("printRouteSheets", its);
    ObjectNode move = (ObjectNode) client.example("moveStop");
    JsonNode last = null;
    for (JsonNode day : plan.path("days")) {
      last = day.at("/rounds/0/stops/0").isMissingNode() ? last : day;
    }
    move.put("stop", last.at("/rounds/0/stops/0/id").asText());
    call("moveStop", with("id", id).body(move.retain("stop", "position")));
    ObjectNode emergency = (ObjectNode) client.example("insertEmergency");
    emergency.put("unit", unit).put("day", plan.path("from").asText());
    call("insertEmergency", with("id", id).body(emergency));
    call("replanRounds", with("id", id).body(order.deepCopy().retain("seconds")));
    call("stopPlanningByPost", its);
    call("stopPlanning", its);
    until("readRounds", its, EveryCallTest::isPlanned);
  }

  private static boolean isPlanned(JsonNode plan) {
    return !List.of("waiting", "planning").contains(plan.path("state").asText());
  }

  private void replacement() throws InterruptedException {
    ObjectNode order = (ObjectNode) client.example("makeReplacementPlan");
    order.putArray("customers").add(customer);
    String id = read("makeReplacementPlan", new Arguments().body(order)).path("id").asText();
    Arguments its = with("id", id);
    // a plan may be made in the background
    until("readReplacementPlan", its, plan -> !plan.path("years").isEmpty());
    for (String form : List.of("Csv", "Html", "Pdf")) {
      call("readReplacementPlan" + form, its);
    }
  }

  private void others() {
    JsonNode profiles = read("listProfiles", new Arguments());
    call("getProfile", with("name", profiles.at("/items/0/name").asText()));
    ObjectNode own = (ObjectNode) client.example("saveProfile");
    call("saveProfile", new Arguments().body(own.put("name", "p-" + customer.toLowerCase())));
  }

  /** A call that nothing above makes: with the examples of its parameters and of its body. */
  private void unforeseen(Call call) {
    Arguments arguments = new Arguments();
    for (JsonNode parameter : call.operation().path("parameters")) {
      if (parameter.path("in").asText().equals("path")) {
        arguments.with(parameter.get("name").asText(), parameter.path("example").asText("none"));
      }
    }
    try {
      if (call.operation().at("/requestBody/content").has(Described.JSON)) {
        arguments.body(client.example(call.id()));
      }
      Answer answer = client.call(call, arguments);
      if (answer.status() < 300) {
        good.put(call.id(), answer);
      }
    } catch (AssertionError e) {
      faults.add(e.getMessage());
    }
  }

  /** Without a token, of what there is not, and with what cannot be. */
  private void refusals(Call call) {
    Arguments none = new Arguments();
    boolean limited = false;
    for (JsonNode parameter : call.operation().path("parameters")) {
      String name = parameter.get("name").asText();
      limited = limited || name.equals("limit");
      if (parameter.get("in").asText().equals("path")) {
        none.with(name, "none");
      }
    }
    // the schemas of events are for anybody
    refused(call, stranger, none, call.id().equals("readSchema") ? 404 : 401);
    boolean names = call.path().contains("{");
    if (names && call.method().equals("GET")) {
      refused(call, client, none, 404);
    }
    if (limited && !names && call.method().equals("GET")) {
      refused(call, client, with("limit", 0), 400);
    }
  }

  private void refused(Call call, DescribedClient who, Arguments arguments, int status) {
    try {
      Answer answer = who.call(call, arguments).is(status);
      assertEquals("application/problem+json", answer.type(), call.id());
      assertEquals(status, answer.json().path("status").asInt(), call.id());
    } catch (AssertionError e) {
      faults.add(e.getMessage());
    }
  }

  /** A read that has a tag says so, and the other way round. */
  private void conditional(Answer answer) {
    Call call = answer.call();
    boolean tagged = answer.headers().containsKey("etag");
    if (call.method().equals("GET") && tagged != call.tells(304)) {
      faults.add(call.id() + (tagged ? " has a tag and tells no 304" : " tells a 304 without tag"));
    }
  }
}

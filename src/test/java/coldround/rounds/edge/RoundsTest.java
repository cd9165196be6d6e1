package coldround.rounds.edge;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.DemoLists;
import coldround.DemoServed;
import coldround.EventSchemas;
import coldround.PdfEdges;
import coldround.fleet.FleetWiping;
import coldround.fleet.UnitIds;
import coldround.rounds.RoundPlan;
import coldround.rounds.Standing;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.sql.DataSource;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A planner plans next week's rounds of the demo fleet and changes them. */
@QuarkusTest
@TestProfile(DemoServed.class)
class RoundsTest {

  private static final String ROUNDS = "/api/v1/rounds";
  private static final LocalDate MONDAY =
      LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.MONDAY));
  private static final Map<Class<?>, String> PLANS = new java.util.HashMap<>();

  @Inject DataSource database;
  @Inject StoredRounds store;

  @Inject FleetWiping wiping;

  @BeforeEach
  void aWeekIsPlanned() throws Exception {
    if (PLANS.containsKey(getClass())) {
      return;
    }
    // a plan of all customers holds what other tests have left in the database
    DemoLists.afresh(wiping);
    PLANS.put(getClass(), planned(2));
  }

  private String plan() {
    return PLANS.get(getClass());
  }

  static Response post(String address, String body) {
    return Api.asPlanner().contentType("application/json").body(body).post(address);
  }

  static String planned(int seconds) throws InterruptedException {
    Response accepted =
        post(
            ROUNDS,
            """
            {"from": "%s", "to": "%s", "seconds": %d, "seed": 7}\
            """
                .formatted(MONDAY, MONDAY.plusDays(4), seconds));
    accepted.then().statusCode(202).body("id", notNullValue());
    String id = accepted.jsonPath().getString("id");
    assertTrue(accepted.getHeader("Location").endsWith(ROUNDS + "/" + id));
    assertEquals("planned", ended(id));
    return id;
  }

  static String ended(String id) throws InterruptedException {
    Instant until = Instant.now().plus(Duration.ofMinutes(2));
    String state;
    do {
      Thread.sleep(200);
      state = read(id).getString("state");
    } while (List.of("waiting", "planning").contains(state) && Instant.now().isBefore(until));
    return state;
  }

  private static String anyUnit() {
    return Api.asPlanner().get("/api/v1/units?limit=1").jsonPath().getString("items[0].unit.id");
  }

  static JsonPath read(String id) {
    Response answer = Api.asPlanner().get(ROUNDS + "/" + id);
    assertEquals(200, answer.statusCode(), answer.asString());
    // amounts in full: a float ends after seven digits
    return answer.jsonPath(
        JsonPathConfig.jsonPathConfig().numberReturnType(NumberReturnType.DOUBLE));
  }

  private static List<Object> ids(JsonPath plan) {
    return new ArrayList<>(plan.getList("days.rounds.flatten().stops.flatten().id"));
  }

  private static List<Map<String, Object>> stops(JsonPath plan) {
    return plan.getList("days.rounds.flatten().stops.flatten()");
  }

  @Test
  void aPlanTellsWhoIsWhereWhenAndWhyAndWhatItCosts() {
    JsonPath plan = read(plan());
    assertTrue(stops(plan).size() > 5, plan.prettify());
    for (Map<String, Object> stop : stops(plan)) {
      Instant arrives = OffsetDateTime.parse((String) stop.get("arrives")).toInstant();
      Instant begins = OffsetDateTime.parse((String) stop.get("begins")).toInstant();
      Instant leaves = OffsetDateTime.parse((String) stop.get("leaves")).toInstant();
      assertFalse(begins.isBefore(arrives), stop.toString());
      assertEquals(stop.get("minutes"), (int) Duration.between(begins, leaves).toMinutes());
    }
    List<String> texts = plan.getList("days.rounds.flatten().stops.flatten().why.text");
    texts.forEach(text -> assertTrue(text.contains(" "), text));
    List<List<Object>> reasons =
        plan.getList("days.rounds.flatten().stops.flatten().tasks.flatten().reasons");
    reasons.forEach(each -> assertFalse(each.isEmpty()));
    assertEquals(
        plan.getDouble("cost.total"),
        plan.getDouble("cost.labour")
            + plan.getDouble("cost.overtime")
            + plan.getDouble("cost.driving")
            + plan.getDouble("cost.deferring"),
        0.05);
    assertEquals(1, plan.getDouble("progress.share"));
    assertEquals("mi", plan.getString("travel.distance.unit"));
  }

  @Test
  void everyOpenTaskIsPlannedOrLeftOutWithTheReasonAndNoneTwice() {
    JsonPath plan = read(plan());
    List<String> ids = new ArrayList<>();
    ids.addAll(plan.getList("days.rounds.flatten().stops.flatten().tasks.flatten().id"));
    ids.addAll(plan.getList("leftOut.tasks.flatten().id"));
    Set<String> once = new HashSet<>(ids);
    assertEquals(once.size(), ids.size());
    JsonPath tasks = Api.asPlanner().queryParam("limit", 500).get("/api/v1/tasks").jsonPath();
    List<Map<String, Object>> open = tasks.getList("items");
    for (Map<String, Object> task : open) {
      boolean may = !LocalDate.parse((String) task.get("earliest")).isAfter(MONDAY.plusDays(4));
      assertEquals(may, once.contains(task.get("id")), task.toString());
    }
    List<String> why = plan.getList("leftOut.why.text");
    why.forEach(text -> assertTrue(text.contains(" "), text));
  }

  @Test
  void theFeedTellsEachRoundOnce() throws InterruptedException {
    String id = planned(1);
    List<String> subjects = new ArrayList<>();
    String after = "";
    JsonPath page;
    int tries = 0;
    do {
      page =
          Api.asPlanner()
              .queryParam("limit", 500)
              .queryParam("after", after)
              .get("/api/v1/feed")
              .jsonPath();
      subjects.addAll(
          page.getList("items.findAll { it.type == 'coldround.round.planned' }.subject"));
      List<Map<String, Object>> events = page.getList("items");
      events.stream()
          .filter(event -> event.get("type").toString().startsWith("coldround.round."))
          .forEach(EventSchemas::check);
      after = page.getString("next");
      boolean done = page.getList("items").isEmpty();
      if (done) {
        tries++;
        Thread.sleep(200);
      }
    } while (tries < 10);
    List<Object> rounds = read(id).getList("days.rounds.flatten()");
    assertEquals(rounds.size(), subjects.stream().filter(s -> s.startsWith(id)).count());
  }

  @Test
  void aRoundThatALaterPlanDoesNotHaveIsCalledOffInTheFeed() throws InterruptedException {
    String id = planned(1);
    RoundPlan plan = store.find(id).orElseThrow().plan().orElseThrow();
    RoundPlan.Round dropped = plan.rounds().get(0);
    RoundPlan smaller =
        new RoundPlan(
            plan.from(),
            plan.to(),
            plan.rounds().subList(1, plan.rounds().size()),
            plan.leftOut(),
            plan.notes(),
            plan.cost(),
            plan.currency());
    String before =
        Api.asPlanner()
            .queryParam("limit", 1)
            .get("/api/v1/feed/snapshot")
            .jsonPath()
            .getString("cursor");
    Hold hold = store.again(id, anew -> anew);
    store.end(hold, Standing.State.PLANNED, 1, smaller, "");
    List<Map<String, Object>> told =
        Api.asPlanner()
            .queryParam("limit", 500)
            .queryParam("after", before)
            .get("/api/v1/feed")
            .jsonPath()
            .getList("items.findAll { it.type == 'coldround.round.cancelled' }");
    assertEquals(
        List.of(id + "/" + dropped.key()), told.stream().map(e -> e.get("subject")).toList());
    told.forEach(EventSchemas::check);
  }

  @Test
  void thePlanStandsInTheMeasuresAskedFor() {
    Api.asPlanner()
        .queryParam("measures", "si")
        .get(ROUNDS + "/" + plan())
        .then()
        .body("travel.distance.unit", equalTo("km"));
  }

  @Test
  void planningCanBeStoppedAndTheBestSoFarStays() throws InterruptedException {
    Response accepted = post(ROUNDS, "{\"from\": \"%s\", \"seconds\": 600}".formatted(MONDAY));
    String id = accepted.jsonPath().getString("id");
    Instant until = Instant.now().plusSeconds(60);
    while (stops(read(id)).isEmpty() && Instant.now().isBefore(until)) {
      Thread.sleep(100);
    }
    JsonPath during = read(id);
    assertEquals("planning", during.getString("state"));
    assertFalse(stops(during).isEmpty(), "best so far while planning");
    post(ROUNDS + "/" + id + "/emergencies", "{\"unit\": \"u1\"}").then().statusCode(409);
    Api.asPlanner().delete(ROUNDS + "/" + id).then().statusCode(204);
    assertEquals("stopped", ended(id));
    assertFalse(stops(read(id)).isEmpty());
    post(ROUNDS + "/" + id + "/stop", "{}").then().statusCode(204);
    List<String> noted =
        Api.asPlanner()
            .get("/api/v1/audit?limit=500")
            .jsonPath()
            .getList("items.findAll { it.kind == 'rounds' && it.object == '" + id + "' }.action");
    assertTrue(noted.containsAll(List.of("asked to stop", "stopped")), noted.toString());
  }

  @Test
  void aServiceThatWasKilledLeavesTheLastBestPlan() throws Exception {
    String id = planned(1);
    sql(
        "update round_plan set state = 'planning', beat = ? where id = ?",
        Timestamp.from(Instant.now().minusSeconds(60)),
        id);
    JsonPath plan = read(id);
    assertEquals("interrupted", plan.getString("state"));
    assertFalse(stops(plan).isEmpty());
  }

  private void sql(String statement, Object... values) throws SQLException {
    try (Connection connection = database.getConnection();
        PreparedStatement prepared = connection.prepareStatement(statement)) {
      for (int i = 0; i < values.length; i++) {
        prepared.setObject(i + 1, values[i]);
      }
      assertTrue(prepared.executeUpdate() > 0);
    }
  }

  @Test
  void whatIsBookedStaysWhenTheRestIsPlannedAnew() throws Exception {
    String id = planned(1);
    JsonPath before = read(id);
    Map<String, Object> stop = before.getMap("days[1].rounds[0].stops[0]");
    String technician = before.getString("days[1].rounds[0].technician.code");
    String task = before.getString("days[1].rounds[0].stops[0].tasks[0].id");
    String unit = before.getString("days[1].rounds[0].stops[0].tasks[0].unit.id");
    Instant begins = OffsetDateTime.parse((String) stop.get("begins")).toInstant();
    sql(
        "insert into booking (task_id, unit_id, starts, technician, reference, version)"
            + " values (?, ?, ?, ?, 'theirs', 1)",
        task,
        UnitIds.number(unit).orElseThrow(),
        Timestamp.from(begins),
        technician);
    try {
      post(ROUNDS + "/" + id + "/replan", "{\"seconds\": 1, \"seed\": 99}").then().statusCode(202);
      assertEquals("planned", ended(id));
    } finally {
      sql("delete from booking where task_id = ?", task);
    }
    JsonPath after = read(id);
    assertEquals(1, after.getInt("revision"));
    List<Map<String, Object>> kept =
        stops(after).stream().filter(each -> each.get("id").equals(stop.get("id"))).toList();
    assertEquals("booked", kept.get(0).get("kept"));
    Instant again = OffsetDateTime.parse((String) kept.get(0).get("begins")).toInstant();
    assertTrue(Duration.between(begins, again).abs().toMinutes() <= 5, begins + " " + again);
  }

  @Test
  void anEmergencyIsPutInWithinASecondOfWork() throws Exception {
    String id = planned(1);
    JsonPath before = read(id);
    String unit = before.getString("days[0].rounds[0].stops[0].tasks[0].unit.id");
    String body =
        "{\"unit\": \"%s\", \"minutes\": 45, \"day\": \"%s\"}"
            .formatted(unit, before.getString("days[0].day"));
    long start = System.nanoTime();
    Response done = post(ROUNDS + "/" + id + "/emergencies", body);
    double seconds = (System.nanoTime() - start) / 1e9;
    done.then().statusCode(200).body("round.stops.tasks.flatten().task", hasItem("emergency"));
    System.out.printf("emergency over HTTP: %.2f s%n", seconds);
    JsonPath after = read(id);
    assertEquals(1, after.getInt("revision"));
    List<Object> there = ids(after);
    List<Object> gone = ids(before);
    gone.removeAll(there);
    there.removeAll(ids(before));
    assertEquals(1, there.size());
    assertTrue(done.jsonPath().getList("moved").containsAll(gone), "left out unsaid: " + gone);
    Api.asPlanner()
        .get(ROUNDS + "/" + id)
        .then()
        .body("days[0].rounds.stops.flatten().tasks.flatten().task", hasItem("emergency"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"from\": \"2031-02-30\"} | from",
        "{\"from\": \"2031-03-05\", \"to\": \"2031-03-01\"} | to",
        "{\"from\": \"2031-03-05\", \"to\": \"2031-06-01\"} | to",
        "{\"from\": \"2001-03-05\", \"to\": \"2001-03-06\"} | to",
        "{\"technicians\": [\"T1\", \"T99\"]} | technicians[1]",
        "{\"technicians\": []} | technicians",
        "{\"customers\": \"LMC\"} | customers",
        "{\"seconds\": 0} | seconds",
        "{\"seconds\": 1e99} | seconds",
        "{\"seed\": \"x\"} | seed",
        "{\"daysOff\": {\"T1\": [\"someday\"]}} | daysOff.T1[0]",
        "{\"daysOff\": {\"T99\": []}} | daysOff.T99",
        "{\"holidays\": [\"someday\"]} | holidays[0]",
        "{\"holidays\": 5} | holidays",
        "{\"starts\": {\"T1\": \"KVS/NOWHERE\"}} | starts.T1",
        "{\"starts\": {\"T99\": \"T1\"}} | starts.T99",
        "{\"ends\": {\"T1\": {\"latitude\": 99, \"longitude\": 0}}} | ends.T1",
        "{\"ends\": []} | ends",
        "[] | ''"
      })
  void aRequestThatCannotBePlannedSaysWhichField(String body, String field) {
    post(ROUNDS, body)
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors[0].field", equalTo(field))
        .body("detail", containsString(" "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | unit",
        "{\"unit\": \"nonsense\"} | unit",
        "{\"unit\": \"u1\", \"minutes\": -5} | minutes",
        "{\"unit\": \"u1\", \"skill\": \"magic\"} | skill",
        "{\"unit\": \"u1\", \"day\": \"2001-01-01\"} | day",
        "{\"unit\": \"u1\", \"day\": \"x\"} | day"
      })
  void anEmergencyThatCannotBeSaysWhichField(String body, String field) {
    String complete =
        body.contains("day") || body.equals("{}")
            ? body
            : body.replace("}", ", \"day\": \"" + MONDAY + "\"}");
    post(ROUNDS + "/" + plan() + "/emergencies", complete)
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors.field", hasItem(field));
  }

  @Test
  void nonsenseIsAProblemAndNothingElse() {
    post(ROUNDS, "{\"from\": ").then().statusCode(400).contentType("application/problem+json");
    post(ROUNDS, "null").then().statusCode(400).contentType("application/problem+json");
    for (String name : List.of("nonsense", "nonsense.csv", "nonsense.geojson", "nonsense.ics")) {
      Api.asPlanner()
          .get(ROUNDS + "/" + name)
          .then()
          .statusCode(404)
          .contentType("application/problem+json");
    }
    Api.asPlanner().delete(ROUNDS + "/nonsense").then().statusCode(404);
    Api.asPlanner().get(ROUNDS + "/" + plan() + ".ics?technician=T99").then().statusCode(400);
    post(
            ROUNDS + "/" + plan() + "/emergencies",
            "{\"unit\": \"%s\", \"minutes\": 1400, \"day\": \"%s\"}".formatted(anyUnit(), MONDAY))
        .then()
        .statusCode(409)
        .body("detail", containsString("1400"));
  }

  @Test
  void theSpreadsheetHasOneRowATask() {
    Response csv = Api.asPlanner().get(ROUNDS + "/" + plan() + ".csv");
    csv.then().statusCode(200).contentType(containsString("text/csv"));
    List<Object> tasks =
        new ArrayList<>(
            read(plan()).getList("days.rounds.flatten().stops.flatten().tasks.flatten().id"));
    tasks.addAll(read(plan()).getList("leftOut.tasks.flatten().id"));
    String text = new String(csv.asByteArray(), StandardCharsets.UTF_8);
    long lines = text.split("\r\n").length;
    assertEquals(tasks.size() + 1, lines);
  }

  @Test
  void whatIsReadAgainIsNotSentTwice() {
    for (String kind : List.of("", ".csv", ".geojson", ".ics")) {
      String address = ROUNDS + "/" + plan() + kind;
      String tag = Api.asPlanner().get(address).getHeader("ETag");
      Api.asPlanner().header("If-None-Match", tag).get(address).then().statusCode(304);
    }
  }

  @Test
  void theMapIsGeoJson() {
    Response answer = Api.asPlanner().get(ROUNDS + "/" + plan() + ".geojson");
    answer.then().statusCode(200).contentType(containsString("application/geo+json"));
    JsonPath map = answer.jsonPath();
    assertEquals(List.of(), GeoJsonRules.broken(map.getMap("")));
    map.getList("features.findAll { it.properties.kind == 'round' }.geometry.type")
        .forEach(type -> assertEquals("LineString", type));
    // the Shenandoah Valley lies west of Greenwich and north of the equator: longitude first
    List<List<Number>> points =
        map.getList("features.findAll { it.geometry.type == 'Point' }.geometry.coordinates");
    assertFalse(points.isEmpty());
    points.forEach(
        point -> assertTrue(point.get(0).doubleValue() < -78 && point.get(1).doubleValue() > 37));
  }

  @Test
  void theCalendarIsReadBackByAnotherLibrary() throws Exception {
    JsonPath plan = read(plan());
    byte[] all = Api.asPlanner().get(ROUNDS + "/" + plan() + ".ics").asByteArray();
    assertEquals(stops(plan).size(), CalendarRules.events(all).size());
    String technician = plan.getString("days[0].rounds[0].technician.code");
    Response one =
        Api.asPlanner().queryParam("technician", technician).get(ROUNDS + "/" + plan() + ".ics");
    one.then().statusCode(200).contentType(containsString("text/calendar"));
    List<String> mine =
        plan.getList(
            "days.rounds.flatten().findAll { it.technician.code == '"
                + technician
                + "' }.stops.flatten().begins");
    assertEquals(
        mine.stream().map(OffsetDateTime::parse).map(OffsetDateTime::toInstant).sorted().toList(),
        CalendarRules.events(one.asByteArray()).stream().sorted().toList());
  }

  @Test
  void daysStartAndEndWhereAskedAndNobodyWorksOnAHoliday() throws InterruptedException {
    String body =
        """
        {"from": "%s", "seconds": 1, "holidays": ["%s"], "starts": {"T1": "KVS/CFS"},
         "ends": {"T1": {"latitude": 38.5, "longitude": -78.9}}}\
        """
            .formatted(MONDAY, MONDAY.plusDays(1));
    String id = post(ROUNDS, body).jsonPath().getString("id");
    assertEquals("planned", ended(id));
    JsonPath plan = read(id);
    assertFalse(plan.getList("days.day").contains(MONDAY.plusDays(1).toString()));
    List<Map<String, Object>> rounds =
        plan.getList("days.rounds.flatten().findAll { it.technician.code == 'T1' }");
    assertFalse(rounds.isEmpty());
    for (Map<String, Object> round : rounds) {
      assertEquals("KVS/CFS", ((Map<?, ?>) round.get("start")).get("place"));
      Number north = (Number) ((Map<?, ?>) round.get("end")).get("latitude");
      assertEquals(38.5, north.doubleValue());
    }
  }

  @Test
  void plannedDaysOffOfTheListAreKept() throws InterruptedException {
    LocalDate friday = MONDAY.plusDays(4);
    daysOff("T1", MONDAY + "/" + MONDAY.plusDays(1) + ";" + friday);
    daysOff("T2", MONDAY.minusYears(1) + "/" + MONDAY.plusYears(1));
    String id = planned(1);
    daysOff("T1", "-");
    daysOff("T2", "-");
    JsonPath plan = read(id);
    Set<Object> worked = new HashSet<>();
    for (Map<String, Object> day : plan.<Map<String, Object>>getList("days")) {
      String text = day.toString();
      if (text.contains("code=T1,")) {
        worked.add(day.get("day"));
      }
      assertFalse(text.contains("code=T2,"), text);
    }
    assertEquals(Set.of(MONDAY.plusDays(2).toString(), MONDAY.plusDays(3).toString()), worked);
    assertEquals(
        List.of("does not work on any day of the plan: hours and days off leave none."),
        plan.getList("notes.findAll { it.subject == 'technician T2' }.message"));
  }

  private static void daysOff(String technician, String days) {
    Api.asPlanner()
        .contentType("text/csv")
        .body("technician,days_off\n" + technician + "," + days + "\n")
        .post("/api/v1/imports/technicians")
        .then()
        .statusCode(200)
        .body("rows.changed", equalTo(1));
  }

  /** ANSI Y14.1 A and ISO 216 A4, in mm. */
  @ParameterizedTest
  @CsvSource({
    "en-US, 215.9, 279.4",
    "es-MX, 215.9, 279.4",
    "*, 215.9, 279.4",
    "de-DE, 210, 297",
    "en-GB, 210, 297"
  })
  void theRouteSheetsFitThePaperOfTheReader(String language, double width, double height)
      throws Exception {
    byte[] pdf =
        Api.asPlanner()
            .header("Accept-Language", language)
            .get(ROUNDS + "/" + plan() + "/sheet.pdf?measures=si")
            .then()
            .statusCode(200)
            .extract()
            .asByteArray();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PdfEdges.check(document, width, height);
    }
  }

  /** Read by PDFBox; that a reader of another family opens it is a step of .ci/packaged. */
  @Test
  void theRouteSheetsAreAFileToPrint() throws Exception {
    JsonPath plan = read(plan());
    byte[] pdf =
        Api.asPlanner()
            .get(ROUNDS + "/" + plan() + "/sheet.pdf")
            .then()
            .statusCode(200)
            .contentType("application/pdf")
            .extract()
            .asByteArray();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      List<String> names = plan.getList("days.rounds.flatten().technician.name");
      Map<String, Object> rest = plan.getMap("days[0].rounds.find { it.rest != null }.rest");
      String begins = rest.get("from").toString().substring(11, 16);
      assertTrue(text.contains("Break " + begins + " to "), begins);
      assertFalse(text.contains("fan fan"), "a part named twice");
      List<String> addresses = plan.getList("days.rounds.flatten().stops.flatten().site.address");
      List<String> tags =
          plan.getList("days.rounds.flatten().stops.flatten().tasks.flatten().unit.tag");
      names.forEach(name -> assertTrue(text.contains(name), name));
      addresses.forEach(address -> assertTrue(text.contains(address), address));
      tags.forEach(tag -> assertTrue(text.contains(tag), tag));
      for (String part :
          List.of(
              "Bring:",
              "Read on",
              "Visits:",
              "recovery kit, R-",
              "coil cleaner",
              "hang your own lock and tag",
              "psig")) {
        assertTrue(text.contains(part), part);
      }
      assertTrue(
          text.matches(
              ".*fan motor and capacitor of the nameplate(, (condenser|evaporator) [0-9.]+ A)+.*"),
          text);
      assertTrue(document.getNumberOfPages() >= names.size());
    }
    Api.asPlanner().get(ROUNDS + "/nonsense/sheet.pdf").then().statusCode(404);
    Api.asPlanner().get(ROUNDS + "/" + plan() + "/sheet.pdf?day=x").then().statusCode(400);
    Api.asPlanner()
        .get(ROUNDS + "/" + plan() + "/sheet.pdf?technician=T99")
        .then()
        .statusCode(404)
        .contentType("application/problem+json");
  }

  @Test
  void aPlanForOneCustomerAndOneTechnicianHasNoOthers() throws InterruptedException {
    Response accepted =
        post(
            ROUNDS,
            "{\"from\": \"%s\", \"seconds\": 1, \"customers\": [\"KVS\"], \"technicians\": [\"T2\"], \"daysOff\": {\"T2\": [\"%s\"]}}"
                .formatted(MONDAY, MONDAY));
    String id = accepted.jsonPath().getString("id");
    ended(id);
    JsonPath plan = read(id);
    assertEquals(
        Set.of("KVS"),
        Set.copyOf(plan.getList("days.rounds.flatten().stops.flatten().site.customer")));
    assertEquals(Set.of("T2"), Set.copyOf(plan.getList("days.rounds.flatten().technician.code")));
    assertFalse(plan.getList("days.day").contains(MONDAY.toString()));
    Api.asPlanner().get(ROUNDS + "/" + id).then().body("days.size()", greaterThan(0));
  }
}

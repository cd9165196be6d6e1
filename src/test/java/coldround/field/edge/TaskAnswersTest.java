package coldround.field.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.UnitLocks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A scheduling system books tasks, and says when they are done. */
@QuarkusTest
class TaskAnswersTest {

  private static final String BOOKING =
      "{'start': '2026-12-01T09:00:00-05:00', 'technician': 'T1', 'reference': 'WO-1'}";
  private static final String CLEANED =
      "{'date': '2026-10-12', 'work': ['condenser-coil-cleaned'], 'readings': ["
          + "{'quantity': 'head_pressure', 'value': 118, 'unit': 'psig'},"
          + "{'quantity': 'ambient', 'value': 70, 'unit': 'degF'}]}";

  @Inject EntityManager entities;
  @Inject UnitLocks units;

  private FieldFleet fleet;
  private String task;

  @BeforeEach
  void oneTask() {
    fleet = new FieldFleet();
    task = open("condenser-coil-cleaning");
    assertNotNull(task);
  }

  private String open(String code) {
    return asPlanner()
        .queryParam("unit", fleet.unit)
        .get("/api/v1/tasks")
        .jsonPath()
        .getString("items.find { it.task == '" + code + "' }.id");
  }

  private Response put(String what, String json, String... headers) {
    var call = asPlanner().contentType("application/json").body(fleet.json(json));
    for (int i = 0; i < headers.length; i += 2) {
      call = call.header(headers[i], headers[i + 1]);
    }
    return call.put("/api/v1/tasks/" + task + "/" + what);
  }

  @Test
  void aBookingIsKeptAsItCameAndShownWithItsTask() {
    put("booking", BOOKING)
        .then()
        .statusCode(201)
        .body(
            "start", equalTo("2026-12-01T09:00:00-05:00"),
            "technician", equalTo("T1"),
            "reference", equalTo("WO-1"),
            "unit", equalTo(fleet.unit));
    asPlanner()
        .queryParam("unit", fleet.unit)
        .get("/api/v1/tasks")
        .then()
        .body(
            "items.find { it.id == '" + task + "' }.state", equalTo("booked"),
            "items.find { it.id == '" + task + "' }.booking.start",
                equalTo("2026-12-01T09:00:00-05:00"),
            "items.findAll { it.id != '" + task + "' }.state", not(hasItem("booked")));
  }

  @Test
  void theSameBookingAgainChangesNothingAndAnotherTimeIsToldOnce() {
    Follower feed = new Follower();
    String tag = put("booking", BOOKING).header("ETag");
    assertEquals(tag, put("booking", BOOKING).then().statusCode(200).extract().header("ETag"));
    assertEquals(tag, asPlanner().get("/api/v1/tasks/" + task + "/booking").header("ETag"));
    List<Map<String, Object>> told = feed.read(task);
    // once, and once the days that moved with it: who follows has the due date that is listed
    assertEquals(List.of("coldround.task.booked", "coldround.task.changed"), types(told));
    Map<?, ?> moved = (Map<?, ?>) told.get(1).get("data");
    assertEquals("2026-12-01", moved.get("due"));
    assertEquals("booked", moved.get("state"));
    assertEquals(
        "2026-12-01",
        asPlanner()
            .queryParam("unit", fleet.unit)
            .get("/api/v1/tasks")
            .path("items.find { it.id == '" + task + "' }.due"));
    assertNotEquals(
        tag,
        put("booking", BOOKING.replace("09:00", "10:00"))
            .then()
            .statusCode(200)
            .extract()
            .header("ETag"));
    assertEquals(List.of("coldround.task.booked"), types(feed.read(task)));
  }

  private static List<Object> types(List<Map<String, Object>> changes) {
    return changes.stream().map(change -> change.get("type")).toList();
  }

  @Test
  void anotherReferenceIsAConflictUnlessTheCallerHasSeenTheFirst() {
    String tag = put("booking", BOOKING).header("ETag");
    String other = BOOKING.replace("WO-1", "WO-2");
    put("booking", other)
        .then()
        .statusCode(409)
        .contentType("application/problem+json")
        .body("known.reference", equalTo("WO-1"), "detail", containsString("WO-1"));
    put("booking", other, "If-Match", tag).then().statusCode(200);
    put("booking", BOOKING, "If-Match", tag)
        .then()
        .statusCode(412)
        .body("known.reference", equalTo("WO-2"));
    put("booking", BOOKING, "If-None-Match", "*").then().statusCode(412);
  }

  @Test
  void whoWaitedForAnotherCallHasNotSeenWhatItChanged() throws InterruptedException {
    String tag = put("booking", BOOKING).header("ETag");
    CompletableFuture<Response> waiting = new CompletableFuture<>();
    Thread other =
        new Thread(
            () ->
                waiting.complete(put("booking", BOOKING.replace("WO-1", "WO-2"), "If-Match", tag)));
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              units.hold(List.of(fleet.unit));
              other.start();
              // longer than it takes to come to the lock, shorter than it is waited for
              sleep(1000);
              assertFalse(waiting.isDone());
              entities
                  .createNativeQuery(
                      "update booking set reference = 'WO-3', version = version + 1"
                          + " where task_id = :task")
                  .setParameter("task", task)
                  .executeUpdate();
            });
    other.join();
    waiting.join().then().statusCode(412).body("known.reference", equalTo("WO-3"));
  }

  private static void sleep(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aBookingMayBeCalledOff() {
    put("booking", BOOKING, "If-Match", "\"nothing\"").then().statusCode(412);
    String tag = put("booking", BOOKING).header("ETag");
    Follower feed = new Follower();
    String address = "/api/v1/tasks/" + task + "/booking";
    asPlanner().header("If-Match", "\"other\"").delete(address).then().statusCode(412);
    asPlanner().header("If-Match", tag).delete(address).then().statusCode(204);
    asPlanner().delete(address).then().statusCode(204);
    asPlanner().get(address).then().statusCode(404);
    assertEquals(
        List.of("coldround.task.unbooked", "coldround.task.changed"), types(feed.read(task)));
    asPlanner()
        .queryParam("unit", fleet.unit)
        .get("/api/v1/tasks")
        .then()
        .body("items.find { it.id == '" + task + "' }.booking", nullValue());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{'start': 'tomorrow'} | 422 | /start",
        "{'start': '2026-12-01T09:00:00'} | 422 | /start",
        "{} | 422 | /start",
        "{'start': '2026-12-01T09:00:00Z', 'begin': 1} | 400 | /begin",
        "{'start': | 400 | /",
        "[] | 400 | /"
      })
  void nonsenseIsToldAtItsField(String json, int status, String field) {
    put("booking", json).then().statusCode(status).body("errors[0].field", equalTo(field));
    asPlanner().get("/api/v1/tasks/" + task + "/booking").then().statusCode(404);
  }

  @Test
  void aTaskThatNeverWasIsNotFound() {
    task = "u0-survey-0";
    put("booking", BOOKING).then().statusCode(404);
    put("completion", CLEANED).then().statusCode(404);
    asPlanner().get("/api/v1/tasks/" + task + "/completion").then().statusCode(404);
  }

  @Test
  void aCompletionStoresTheVisitScoresAnewAndTakesTheTaskFromTheList() {
    put("booking", BOOKING);
    double before = score();
    Follower feed = new Follower();
    put("completion", CLEANED)
        .then()
        .statusCode(201)
        .body(
            "completed", equalTo(true),
            "stillOpen", nullValue(),
            "visit.work", hasItem("condenser-coil-cleaned"),
            "visit.verdicts.quantity", hasItem("head_pressure"));
    assertNotEquals(before, score());
    assertNotEquals(task, open("condenser-coil-cleaning"));
    List<Map<String, Object>> told = feed.read(task);
    assertEquals(List.of("coldround.task.completed"), types(told));
    Map<?, ?> data = (Map<?, ?>) told.get(0).get("data");
    assertEquals("2026-10-12", ((Map<?, ?>) data.get("completion")).get("date"));
    assertEquals("WO-1", ((Map<?, ?>) data.get("booking")).get("reference"));
    asPlanner()
        .get("/api/v1/tasks/" + task + "/completion")
        .then()
        .statusCode(200)
        .body("date", equalTo("2026-10-12"), "visit", notNullValue());
    asPlanner()
        .get("/api/v1/units/" + fleet.unit + "/history")
        .then()
        .body(
            "items.findAll { it.what == 'visit' }.work.flatten()",
            hasItem("condenser-coil-cleaned"));
  }

  private double score() {
    return asPlanner()
        .get("/api/v1/units/" + fleet.unit + "/condition")
        .jsonPath()
        .getDouble("score");
  }

  @Test
  void theSameCompletionAgainChangesNothingAndAnotherVisitIsAConflict() {
    put("completion", CLEANED).then().statusCode(201);
    Follower feed = new Follower();
    put("completion", CLEANED).then().statusCode(200).body("completed", equalTo(true));
    assertTrue(feed.read(task).isEmpty());
    put("completion", CLEANED.replace("{'date'", "{'visit': 'other', 'date'"))
        .then()
        .statusCode(409)
        .body("known.date", equalTo("2026-10-12"));
    put("booking", BOOKING).then().statusCode(409).body("known.visit", notNullValue());
    put("completion", CLEANED, "If-None-Match", "*").then().statusCode(412);
    asPlanner().get("/api/v1/units/" + fleet.unit + "/visits/other").then().statusCode(404);
  }

  @Test
  void aVisitThatDidSomethingElseIsStoredAndLeavesTheTaskOpen() {
    Follower feed = new Follower();
    put("completion", CLEANED.replace("condenser-coil-cleaned", "drain-cleared"))
        .then()
        .statusCode(200)
        .body(
            "completed", equalTo(false),
            "stillOpen", containsString("It takes work condenser-coil-cleaned."),
            "visit.work", hasItem("drain-cleared"));
    assertEquals(task, open("condenser-coil-cleaning"));
    assertTrue(!types(feed.read(task)).contains("coldround.task.completed"));
    put("completion", CLEANED).then().statusCode(201).body("completed", equalTo(true));
  }

  @Test
  void aVisitThatClosedTheTaskBeforehandIsTakenAsItsCompletion() {
    fleet
        .visit(CLEANED.replace("{'date'", "{'unit': 'UNIT', 'visit': '1', 'date'"))
        .statusCode(201);
    Follower feed = new Follower();
    put("booking", BOOKING).then().statusCode(409);
    put("completion", CLEANED.replace("{'date'", "{'visit': '1', 'date'"))
        .then()
        .statusCode(201)
        .body("completed", equalTo(true));
    assertEquals(List.of("coldround.task.completed"), types(feed.read(task)));
  }

  @Test
  void aWrongVisitLeavesNothingBehind() {
    Follower feed = new Follower();
    put("completion", CLEANED.replace("118", "9999"))
        .then()
        .statusCode(422)
        .body("errors[0].field", equalTo("/readings/0/value"));
    put("completion", CLEANED.replace("{'date'", "{'unit': 'u0', 'date'"))
        .then()
        .statusCode(422)
        .body("errors[0].field", equalTo("/unit"));
    assertTrue(feed.read(task).isEmpty());
    asPlanner().get("/api/v1/tasks/" + task + "/completion").then().statusCode(404);
    assertEquals(task, open("condenser-coil-cleaning"));
  }

  @Test
  void anIdempotencyKeyGivesTheFirstReplyAgain() {
    String key = "done-" + task;
    String first = put("completion", CLEANED, "Idempotency-Key", key).asString();
    put("completion", CLEANED, "Idempotency-Key", key).then().statusCode(201).body(equalTo(first));
  }
}

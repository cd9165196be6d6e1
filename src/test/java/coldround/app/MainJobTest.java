package coldround.app;

import static org.hamcrest.Matchers.both;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A service manager uploads the lists and reads which unit to clean first, by when, and why. */
@QuarkusTest
class MainJobTest {

  private static final List<String> LISTS =
      List.of("customers", "sites", "units", "visits", "readings", "faults", "technicians");

  private static final Set<Class<?>> UPLOADED = new HashSet<>();

  @BeforeEach
  void theListsAreUploaded() throws Exception {
    if (!UPLOADED.add(getClass())) {
      return;
    }
    for (String kind : LISTS) {
      Response receipt = upload(kind);
      receipt.then().statusCode(200).body("rows.rejected", equalTo(0)).body("applied", is(true));
    }
  }

  private static Response upload(String kind) throws Exception {
    return Api.asPlanner()
        .contentType("text/csv")
        .body(Files.readAllBytes(Path.of("demo-data", kind + ".csv")))
        .post("/api/v1/imports/" + kind);
  }

  @Test
  void uploadingTheSameListsAgainChangesNothing() throws Exception {
    for (String kind : LISTS) {
      JsonPath receipt = upload(kind).jsonPath();
      assertTrue(receipt.getInt("rows.read") > 0, kind);
      assertEquals(receipt.getInt("rows.read"), receipt.getInt("rows.unchanged"), kind);
    }
  }

  @Test
  void theFleetIsListedWorstFirstAndEveryScoreAddsUp() {
    JsonPath page = Api.asPlanner().queryParam("limit", 500).get("/api/v1/units").jsonPath();
    List<Map<String, Object>> items = page.getList("items");
    assertTrue(items.size() > 80, "units in use: " + items.size());
    double before = -1;
    for (int i = 0; i < items.size(); i++) {
      double score = page.getDouble("items[" + i + "].score");
      List<Number> lost = page.getList("items[" + i + "].factors.lost");
      assertTrue(score >= before, "worst first");
      assertEquals(100 - lost.stream().mapToDouble(Number::doubleValue).sum(), score, 1e-3);
      before = score;
    }
  }

  @Test
  void followingNextUntilItEndsShowsEveryUnitOnce() {
    List<String> seen = new ArrayList<>();
    String after = "";
    do {
      JsonPath page =
          Api.asPlanner()
              .queryParam("limit", 7)
              .queryParam("after", after)
              .get("/api/v1/units")
              .jsonPath();
      seen.addAll(page.getList("items.unit.id"));
      after = page.getString("next");
    } while (after != null);
    assertEquals(Set.copyOf(seen).size(), seen.size());
    JsonPath all = Api.asPlanner().queryParam("limit", 500).get("/api/v1/units").jsonPath();
    assertEquals(all.getList("items.unit.id"), seen);
  }

  @Test
  void theWorstUnitSaysWhyInWordsWithNumbersAndSources() {
    String id = worst();
    Api.asPlanner()
        .get("/api/v1/units/" + id + "/condition")
        .then()
        .statusCode(200)
        .body("unit.id", equalTo(id))
        .body("factors", hasSize(4))
        .body("factors.reasons.flatten().text", everyItem(containsString(" ")))
        .body("factors.reasons.flatten().source", everyItem(containsString(".csv")))
        .body("range.low", notNullValue())
        .body("completeness.toDouble()", both(greaterThanOrEqualTo(0d)).and(lessThanOrEqualTo(1d)))
        .body("cautions", not(empty()));
  }

  @Test
  void anyReadIsNotSentTwice() {
    String address = "/api/v1/units/" + worst() + "/condition";
    String tag = Api.asPlanner().get(address).getHeader("ETag");
    assertFalse(tag.startsWith("W/"), tag);
    Api.asPlanner().header("If-None-Match", tag).get(address).then().statusCode(304);
    Api.asPlanner().header("If-None-Match", "\"other\"").get(address).then().statusCode(200);
  }

  @Test
  void everyTaskHasAWindowAndExactlyOneReasonThatGoverns() {
    JsonPath page = Api.asPlanner().queryParam("limit", 500).get("/api/v1/tasks").jsonPath();
    List<Map<String, Object>> tasks = page.getList("items");
    assertTrue(tasks.size() > 100, "tasks: " + tasks.size());
    for (Map<String, Object> task : tasks) {
      List<Map<String, Object>> reasons = reasons(task);
      List<Map<String, Object>> governing =
          reasons.stream().filter(reason -> Boolean.TRUE.equals(reason.get("governs"))).toList();
      assertEquals(1, governing.size(), task.toString());
      assertTrue(text(task, "earliest").compareTo(text(task, "due")) <= 0, task.toString());
      assertTrue(text(task, "due").compareTo(text(task, "latest")) <= 0, task.toString());
      assertFalse(text(governing.get(0), "source").isBlank(), task.toString());
    }
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> reasons(Map<String, Object> task) {
    return (List<Map<String, Object>>) task.get("reasons");
  }

  private static String text(Map<String, Object> object, String field) {
    return (String) object.get(field);
  }

  @Test
  void aDirtyCondenserIsToBeCleanedAndTheReasonIsGiven() {
    Api.asPlanner()
        .queryParam("limit", 500)
        .get("/api/v1/tasks")
        .then()
        .body(
            "items.findAll { it.task == 'condenser-coil-cleaning' }.reasons.flatten().code.size()",
            greaterThan(10));
  }

  @Test
  void tasksOfAnotherDayAreThoseThatCouldBeKnownThen() {
    String unit = worst();
    Api.asPlanner()
        .queryParam("asOf", "2025-06-01")
        .queryParam("unit", unit)
        .get("/api/v1/tasks")
        .then()
        .statusCode(200)
        .body("items.unit.id", everyItem(equalTo(unit)));
    Api.asPlanner()
        .queryParam("asOf", "2025-06-01")
        .get("/api/v1/units/" + unit + "/condition")
        .then()
        .body("asOf", equalTo("2025-06-01"));
  }

  @Test
  void theHistoryIsNewestFirst() {
    JsonPath page =
        Api.asPlanner()
            .queryParam("limit", 500)
            .get("/api/v1/units/" + worst() + "/history")
            .jsonPath();
    List<String> dates = page.getList("items.date");
    List<String> sorted = new ArrayList<>(dates);
    sorted.sort(java.util.Comparator.reverseOrder());
    assertEquals(sorted, dates);
    assertFalse(dates.isEmpty());
  }

  @Test
  void valuesAreToldInTheUnitsAskedFor() {
    String unit = worst();
    JsonPath us = Api.asPlanner().get("/api/v1/units/" + unit).jsonPath();
    JsonPath si =
        Api.asPlanner().queryParam("measures", "si").get("/api/v1/units/" + unit).jsonPath();
    assertEquals("lb", us.getString("charge.unit"));
    assertEquals("kg", si.getString("charge.unit"));
    assertEquals(us.getDouble("charge.value") * 0.45359237, si.getDouble("charge.value"), 1e-5);
  }

  @Test
  void nonsenseIsAnsweredWithAProblemThatSaysWhatIsExpected() {
    String unit = worst();
    for (String address :
        List.of(
            "/api/v1/units?limit=0",
            "/api/v1/units?limit=501",
            "/api/v1/units?order=worst",
            "/api/v1/units?after=@@@",
            "/api/v1/units?after=bm9uc2Vuc2U",
            "/api/v1/tasks?from=31/02/2015",
            "/api/v1/tasks?from=2026-02-01&to=2026-01-01",
            "/api/v1/tasks?after=bm9uc2Vuc2U",
            "/api/v1/units/" + unit + "/condition?asOf=tomorrow",
            "/api/v1/units/" + unit + "/condition?measures=metric",
            "/api/v1/units/" + unit + "/history?after=bm9uc2Vuc2U")) {
      Api.asPlanner()
          .urlEncodingEnabled(false)
          .get(address)
          .then()
          .statusCode(400)
          .contentType("application/problem+json")
          .body("errors[0].field", notNullValue())
          .body("detail", containsString(" "));
    }
    for (String id : List.of("u0", "nonsense", "-1", "u99999999999999", "u1%27")) {
      Api.asPlanner()
          .urlEncodingEnabled(false)
          .get("/api/v1/units/" + id + "/condition")
          .then()
          .statusCode(404)
          .contentType("application/problem+json");
    }
    Api.asPlanner()
        .urlEncodingEnabled(false)
        .get("/api/v1/units/%00/condition")
        .then()
        .statusCode(400)
        .contentType("application/problem+json");
  }

  private static String worst() {
    return Api.asPlanner().get("/api/v1/units").jsonPath().getString("items[0].unit.id");
  }
}

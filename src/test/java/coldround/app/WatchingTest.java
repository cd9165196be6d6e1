package coldround.app;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.Logged;
import coldround.feed.Cursor;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.junit.jupiter.api.Test;

@QuarkusTest
class WatchingTest {

  private static final Pattern METRIC =
      Pattern.compile("\\b(?:coldround|http_server|jvm|process|agroal)_[a-z_]+");

  @Inject Watching watching;
  @Inject EntityManager entities;

  private static String metrics() {
    return given().get("/q/metrics").then().statusCode(200).extract().asString();
  }

  private static double figure(String name) {
    return metrics()
        .lines()
        .filter(line -> line.startsWith(name + " "))
        .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no metric " + name));
  }

  private void fleet() {
    Api.send("customers", "customer,name\nWATCH,Watched\n,nameless\n");
    Api.send("sites", "customer,site,name\nWATCH,S1,Dock\n");
    Api.send("units", "customer,site,unit,kind,installed\nWATCH,S1,U1,chiller,2015-05-01\n");
    watching.look();
  }

  @Test
  void importsRejectsScoresAndTheFeedAreCounted() {
    fleet();
    double files = figure("coldround_imports{kind=\"customers\",outcome=\"applied\"}");
    double rejected = figure("coldround_import_rows{kind=\"customers\",result=\"rejected\"}");
    assertTrue(figure("coldround_scores") >= 1);
    assertTrue(figure("coldround_feed_position") >= 0);
    fleet();
    assertEquals(files + 1, figure("coldround_imports{kind=\"customers\",outcome=\"applied\"}"));
    assertEquals(
        rejected + 1, figure("coldround_import_rows{kind=\"customers\",result=\"rejected\"}"));
  }

  @Test
  void whatCannotBeReadThisTimeStaysAsItWasAndHindersNoOther() {
    fleet();
    Watching.Hooks hooks = watching.hooks();
    double files = figure("coldround_imports{kind=\"customers\",outcome=\"applied\"}");
    renamed("dead_letter", "dead_letter_aside");
    try (Logged logged = new Logged()) {
      fleet();
      assertTrue(logged.tells("figures of the web hooks stay"));
      assertEquals(hooks, watching.hooks());
      assertEquals(files + 1, figure("coldround_imports{kind=\"customers\",outcome=\"applied\"}"));
    } finally {
      renamed("dead_letter_aside", "dead_letter");
    }
    watching.look();
    assertEquals(hooks.letters(), watching.hooks().letters());
  }

  @Test
  void changesBehindASubscriberAreCountedAlsoFromWithinARow() {
    fleet();
    asPlanner().get("/api/v1/feed/snapshot?limit=1").then().statusCode(200);
    long first =
        number(
            "select max(position - changes + 1) from feed_event where changes > 2 and position is"
                + " not null");
    execute(
        "insert into subscription values ('watched', 'http://127.0.0.1:9/', '', '', '', '', null, "
            + first
            + ", 'active', '', 0, null, 0, current_timestamp, null, 'another',"
            + " current_timestamp + interval '4' second)");
    try {
      watching.look();
      long position = number("select min(position) from subscription where state = 'active'");
      assertEquals(changesBehind(position), watching.hooks().behind());
      assertTrue(watching.hooks().behind() > 1, "the rest of the row");
    } finally {
      execute("delete from subscription where id = 'watched'");
    }
  }

  private static long changesBehind(long position) {
    String cursor = new Cursor(position).text();
    long count = 0;
    int some;
    do {
      JsonPath page = asPlanner().get("/api/v1/feed?limit=500&after=" + cursor).jsonPath();
      some = page.getList("items").size();
      cursor = page.getString("next");
      count += some;
    } while (some > 0);
    return count;
  }

  private long number(String query) {
    return QuarkusTransaction.requiringNew()
        .call(() -> ((Number) entities.createNativeQuery(query).getSingleResult()).longValue());
  }

  private void execute(String statement) {
    QuarkusTransaction.requiringNew()
        .run(() -> entities.createNativeQuery(statement).executeUpdate());
  }

  private void renamed(String table, String as) {
    execute("alter table %s rename to %s".formatted(table, as));
  }

  @Test
  void everyMetricOfTheDashboardIsThereAndEveryPanelIsPlaced() throws IOException {
    fleet();
    asPlanner().contentType("application/json").body("{\"seconds\": 1}").post("/api/v1/rounds");
    watching.look();
    JsonNode spec =
        new ObjectMapper().readTree(Path.of("docs", "dashboard.json").toFile()).path("spec");
    String told = metrics();
    Set<String> named = new TreeSet<>();
    spec.path("panels")
        .findValuesAsText("query")
        .forEach(
            query -> {
              Matcher metric = METRIC.matcher(query);
              assertTrue(metric.find(), query);

              metric.reset();
              while (metric.find()) {
                named.add(metric.group());
              }
            });
    assertTrue(named.size() > 15, named.toString());
    assertEquals(
        List.of(),
        named.stream()
            .filter(name -> told.lines().noneMatch(line -> line.matches(name + "[{ ].*")))
            .toList());
    Set<String> placed = new TreeSet<>();
    spec.path("layouts")
        .findValuesAsText("$ref")
        .forEach(ref -> placed.add(ref.replace("#/spec/panels/", "")));
    Set<String> panels = new TreeSet<>();
    spec.path("panels").fieldNames().forEachRemaining(panels::add);
    assertEquals(panels, placed);
  }

  @Test
  void readinessTellsWhatItHasLookedAt() {
    fleet();
    given()
        .get("/q/health/ready")
        .then()
        .statusCode(200)
        .body("status", equalTo("UP"))
        .body("checks.name", hasItem("disk space"))
        .body("checks.find { it.name == 'disk space' }.data.storeMegabytes", greaterThan(200))
        .body("checks.find { it.name == 'feed' }.data.deadLetters", not(equalTo(null)))
        .body("checks.find { it.name == 'scores' }.data.units", greaterThan(0));
  }

  @Test
  void withoutRoomOnTheDiskItIsNotReadyAndSaysWhy() {
    HealthCheckResponse full = Readiness.space(10, 5000, 200);
    assertEquals(HealthCheckResponse.Status.DOWN, full.getStatus());
    assertTrue(full.getData().orElseThrow().get("reason").toString().contains("make room"));
    assertEquals(HealthCheckResponse.Status.UP, Readiness.space(200, 200, 200).getStatus());
  }

  @Test
  void eachAnswerAndProblemTellsTheIdOfItsCall() {
    asPlanner()
        .header("X-Request-Id", "mine-1")
        .get("/api/v1/units/none")
        .then()
        .statusCode(404)
        .header("X-Request-Id", equalTo("mine-1"))
        .body("instance", equalTo("urn:coldround:call:mine-1"));
    asPlanner()
        .header("traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01")
        .get("/api/v1/refrigerants")
        .then()
        .statusCode(200)
        .header("X-Request-Id", equalTo("0af7651916cd43dd8448eb211c80319c"));
    given()
        .get("/api/v1/units")
        .then()
        .statusCode(401)
        .header("X-Request-Id", matchesPattern("[0-9a-f-]{36}"))
        .body("instance", matchesPattern("urn:coldround:call:[0-9a-f-]{36}"));
    asPlanner()
        .header("X-Request-Id", "not usable <>")
        .header("traceparent", "00-00000000000000000000000000000000-b7ad6b7169203331-01")
        .get("/api/v1/refrigerants")
        .then()
        .header("X-Request-Id", matchesPattern("[0-9a-f-]{36}"));
  }
}

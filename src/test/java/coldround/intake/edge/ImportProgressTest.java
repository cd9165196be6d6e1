package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.anyOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.fleet.Kind;
import coldround.http.Problem;
import coldround.intake.IntakeTables;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files whose sender asks later, and what can be seen meanwhile. */
@QuarkusTest
@Timeout(120)
class ImportProgressTest {

  private static final int ROWS = 20_000;

  @Inject StoredRuns runs;
  @Inject FileImport imports;
  @Inject IntakeTables tables;

  private static Response send(String kind, String prefer, String text) {
    return asPlanner()
        .contentType("text/csv")
        .header("Prefer", prefer)
        .body(text)
        .post("/api/v1/imports/" + kind);
  }

  private static JsonPath ask(String place) {
    return asPlanner().get(place).then().statusCode(200).extract().jsonPath();
  }

  private static JsonPath awaitEnd(String place) {
    JsonPath now = ask(place);
    while (List.of("waiting", "reading", "assessing").contains(now.getString("state"))) {
      pause();
      now = ask(place);
    }
    return now;
  }

  private static void pause() {
    try {
      Thread.sleep(20);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String customers(int rows) {
    String prefix = UUID.randomUUID().toString().substring(0, 8);
    StringBuilder text = new StringBuilder("customer,name\n");
    for (int i = 0; i < rows; i++) {
      text.append(prefix).append(i).append(",Market ").append(i).append('\n');
    }
    return text.toString();
  }

  @Test
  void aLongUploadIsAnsweredAtOnceAndShowsItsProgress() {
    Response accepted = send("customers", "respond-async", customers(ROWS));
    accepted
        .then()
        .statusCode(202)
        .header("Preference-Applied", "respond-async")
        .header("Retry-After", "1")
        .body("kind", equalTo("customers"), "applied", equalTo(false))
        .body("state", anyOf(equalTo("waiting"), equalTo("reading")))
        .body("progress.rowsDone", notNullValue());
    String place = accepted.header("Location");
    place = place.substring(place.indexOf("/api/"));
    assertEquals("/api/v1/imports/" + accepted.path("id"), place);
    JsonPath seen = ask(place);
    boolean counted = false;
    while (!seen.getString("state").equals("finished")) {
      if (seen.getString("state").equals("reading") && seen.getLong("progress.rowsDone") > 0) {
        counted = true;
        assertTrue(seen.getDouble("progress.rowsPerSecond") > 0);
        assertTrue(seen.getDouble("progress.share") > 0);
        assertTrue(seen.getDouble("progress.share") <= 1);
      }
      pause();
      seen = ask(place);
    }
    assertTrue(counted, "no progress was seen of " + ROWS + " rows");
    assertEquals(ROWS, seen.getInt("rows.created"));
    assertTrue(seen.getBoolean("applied"));
  }

  @Test
  void whoWaitsLongEnoughGetsTheReceipt() {
    send("customers", "respond-async, wait=60", customers(3))
        .then()
        .statusCode(200)
        .header("Preference-Applied", "respond-async, wait=60")
        .header("Content-Location", containsString("/api/v1/imports/"))
        .body("state", equalTo("finished"), "rows.created", equalTo(3));
  }

  @Test
  void aRefusalIsToldToWhoAsksLater() {
    Response accepted = send("customers", "respond-async", "nonsense\n");
    accepted.then().statusCode(202);
    JsonPath end = awaitEnd("/api/v1/imports/" + accepted.path("id"));
    assertEquals("refused", end.getString("state"));
    assertEquals("urn:coldround:problem:wrong-header", end.getString("problem.type"));
    assertEquals(422, end.getInt("problem.status"));
    send("customers", "respond-async, wait=60", "nonsense\n")
        .then()
        .statusCode(422)
        .contentType("application/problem+json");
  }

  @Test
  void anImportThatTheServiceDidNotLiveToFinishIsToldAsInterrupted() {
    FileImport.Begun begun = imports.begin();
    runs.open(
        begun,
        new FileImport.Order(
            Kind.VISITS, tables.profile("standard").orElseThrow(), false, true, ""));
    runs.atStart(null);
    JsonPath end = ask("/api/v1/imports/" + begun.id());
    assertEquals("interrupted", end.getString("state"));
    assertTrue(end.getString("problem.detail").contains("Send it again"));
    runs.refused(begun.id(), Problem.conflict("of the test"));
    assertEquals("refused", ask("/api/v1/imports/" + begun.id()).getString("state"));
  }

  @Test
  void problemsAreGroupedByKindAndColumnAndFirstRowsAreKept() {
    String id =
        asPlanner()
            .contentType("text/csv")
            .body("site,customer,latitude\nS1,C,north\nS2,C,south\nS3,C,100\nS4,C,45\n,C,\n")
            .post("/api/v1/imports/sites?preview=true")
            .then()
            .statusCode(200)
            .body("problemGroups", hasSize(4))
            .body("problemGroups[0].code", equalTo("not-a-number"))
            .body("problemGroups[0].count", equalTo(2), "problemGroups[0].firstRow", equalTo(2))
            .body("problemGroups[0].firstValue", equalTo("north"))
            .body("problemGroups[0].column", equalTo("latitude"))
            .body("firstRows[0].latitude", equalTo("45"))
            .extract()
            .path("id");
    asPlanner()
        .get("/api/v1/imports/" + id)
        .then()
        .body("problemGroups[0].count", equalTo(2), "firstRows[0].site", equalTo("S4"));
  }

  /** RFC 7240: preferences by comma or in several headers, unknown ones passed over. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "respond-async                | true  | 0",
        "Respond-Async, wait=10       | true  | 10",
        "wait=10, respond-async       | true  | 10",
        "respond-async;x=1, foo=\"b\" | true  | 0",
        "respond-async, wait=99999999 | true  | 60",
        "respond-async, wait=soon     | true  | 0",
        "return=minimal               | false | 0",
        "respond-asyncx               | false | 0",
      })
  void preferencesAreReadByTheStandard(String header, boolean async, int wait) {
    assertEquals(new Preference(async, wait), Preference.of(List.of(header)));
    assertEquals(new Preference(async, wait), Preference.of(List.of(header.split(", *"))));
  }

  @Test
  void withoutAPreferenceTheReceiptIsWaitedFor() {
    assertEquals(new Preference(false, 0), Preference.of(null));
  }
}

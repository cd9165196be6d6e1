package coldround.scoring.edge;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.fleet.Fleet;
import coldround.fleet.UnitHistory;
import coldround.scoring.Ranking;
import coldround.scoring.Scoring;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Trials of weights, the history of scores, and what one visit did. */
@QuarkusTest
class ScoresTest {

  private static final String CUSTOMER = "SCORES";

  @Inject Fleet fleet;
  @Inject Scoring scoring;
  @Inject Ranking ranking;

  @BeforeEach
  void theListsAreUploaded() {
    Api.put("customers", "customer,name\nSCORES,Scores\n");
    Api.put("sites", "customer,site,jurisdiction,surroundings\nSCORES,S,US-VA,greasy\n");
    Api.put(
        "units",
        "customer,site,unit,kind,installed,refrigerant\n"
            + "SCORES,S,OLD,walk-in-cooler,1999-05-04,R-404A\n"
            + "SCORES,S,DIRTY,walk-in-cooler,2024-05-04,R-404A\n"
            + "SCORES,S,THIN,walk-in-cooler,,\n");
    Api.put(
        "visits",
        "customer,site,unit,visit,date,purpose,ambient [degF],head_pressure [psig],condenser_coil,work\n"
            + "SCORES,S,DIRTY,1/a,2025-03-01,planned,80,270,clean,condenser-coil-cleaned\n"
            + "SCORES,S,DIRTY,2,2026-05-20,planned,80,340,heavy,inspected\n"
            + "SCORES,S,DIRTY,3,2026-05-28,planned,80,262,clean,condenser-coil-cleaned\n");
  }

  private static String id(String tag) {
    return Api.asPlanner()
        .get("/api/v1/units?customer=" + CUSTOMER + "&unit=" + tag)
        .jsonPath()
        .getString("items[0].unit.id");
  }

  private static io.restassured.response.ValidatableResponse trial(String body, String query) {
    return Api.asPlanner()
        .contentType("application/json")
        .body(body)
        .post("/api/v1/scoring/trial?customer=" + CUSTOMER + query)
        .then();
  }

  @Test
  void onAgeAloneTheOldestUnitIsTheWorst() {
    String order = Api.asPlanner().get("/api/v1/units?customer=" + CUSTOMER).asString();
    trial("{\"weights\":{\"age\":100,\"refrigerant\":0,\"coil\":0,\"repeat-faults\":0}}", "")
        .statusCode(200)
        .body("units", equalTo(3))
        .body("items.find { it.unit.tag == 'OLD' }.rank.after", equalTo(1))
        .body("items.find { it.unit.tag == 'OLD' }.score.before", notNullValue());
    assertEquals(
        order,
        Api.asPlanner().get("/api/v1/units?customer=" + CUSTOMER).asString(),
        "nothing is saved");
  }

  @Test
  void aTrialIsPagedAndOneWithTheWeightsOfTheTableMovesNobody() {
    String ageOnly = "{\"weights\":{\"age\":100,\"refrigerant\":0,\"coil\":0,\"repeat-faults\":0}}";
    JsonPath first = trial(ageOnly, "&limit=1").extract().jsonPath();
    assertEquals(1, first.getList("items").size());
    JsonPath second =
        trial(ageOnly, "&limit=1&after=" + first.getString("next")).extract().jsonPath();
    assertTrue(!first.getString("items[0].unit.id").equals(second.getString("items[0].unit.id")));
    trial("{\"weights\":{\"age\":25,\"refrigerant\":20,\"coil\":25,\"repeat-faults\":30}}", "")
        .body("moved", equalTo(0))
        .body("next", nullValue());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | /weights",
        "[] | /weights",
        "{\"weights\":3} | /weights",
        "{\"weights\":{\"age\":50,\"refrigerant\":20,\"coil\":25,\"repeat-faults\":30}} | /weights",
        "{\"weights\":{\"age\":100}} | /weights/coil",
        "{\"weights\":{\"age\":-25,\"refrigerant\":70,\"coil\":25,\"repeat-faults\":30}} | /weights/age",
        "{\"weights\":{\"age\":\"x\",\"refrigerant\":20,\"coil\":25,\"repeat-faults\":30}} | /weights/age",
        "{\"weights\":{\"youth\":25,\"refrigerant\":20,\"coil\":25,\"repeat-faults\":30}} | /weights/youth",
        "{\"weights\":{\"age\":1e999,\"refrigerant\":20,\"coil\":25,\"repeat-faults\":30}} | /weights/age",
      })
  void badWeightsAreRefusedWithTheFieldThatIsWrong(String body, String field) {
    trial(body, "")
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors.field", hasItem(field));
  }

  @ParameterizedTest
  @CsvSource({"'{', ''", "'', ''"})
  void aBodyThatIsNoJsonIsRefused(String body, String ignored) {
    trial(body, "").statusCode(400).contentType("application/problem+json");
  }

  @Test
  void theConditionSaysWhatToReadNext() {
    Api.asPlanner()
        .get("/api/v1/units/" + id("THIN") + "/condition")
        .then()
        .body("nextReadings.evidence", hasItems("installed", "refrigerant", "condenser-coil-grade"))
        .body("nextReadings[0].narrowsBy.toDouble()", org.hamcrest.Matchers.greaterThan(0d))
        .body(
            "nextReadings.reason.source", org.hamcrest.Matchers.everyItem(containsString(".csv")));
  }

  private void told(String id, String day) {
    UnitHistory history = fleet.history(id).orElseThrow();
    ranking.put(
        List.of(
            new Ranking.Place(
                id, scoring.assess(history, LocalDate.parse(day)).condition(), null, "")));
  }

  @Test
  void eachDayOnWhichTheScoreChangedIsKeptWithWhatChangedIt() {
    String id = id("DIRTY");
    told(id, "2026-05-19");
    told(id, "2026-05-20");
    told(id, "2026-05-28");
    Api.asPlanner()
        .get("/api/v1/units/" + id + "/scores?limit=500")
        .then()
        .statusCode(200)
        .body("items.date", hasItems("2026-05-28", "2026-05-20", "2026-05-19"))
        .body("items.find { it.date == '2026-05-28' }.events.what", contains("3"))
        .body("items.find { it.date == '2026-05-28' }.factors", hasSize(4))
        .body("items.find { it.date == '2026-05-20' }.events.what", contains("2"));
    JsonPath days = Api.asPlanner().get("/api/v1/units/" + id + "/scores").jsonPath();
    double before = days.getDouble("items.find { it.date == '2026-05-28' }.before");
    double score = days.getDouble("items.find { it.date == '2026-05-28' }.score");
    assertTrue(score > before, "the cleaning helped: " + before + " to " + score);
    String coil = "items.find { it.date == '2026-05-28' }.factors.find { it.factor == 'coil' }.";
    assertTrue(days.getDouble(coil + "before") > days.getDouble(coil + "after"));
    JsonPath page = Api.asPlanner().get("/api/v1/units/" + id + "/scores?limit=1").jsonPath();
    JsonPath following =
        Api.asPlanner()
            .queryParam("limit", 1)
            .queryParam("after", page.getString("next"))
            .get("/api/v1/units/" + id + "/scores")
            .jsonPath();
    assertEquals(days.getString("items[1].date"), following.getString("items[0].date"));
  }

  @Test
  void theSameScoreOnALaterDayIsNoChange() {
    String id = id("OLD");
    told(id, "2026-01-01");
    int before =
        Api.asPlanner().get("/api/v1/units/" + id + "/scores").jsonPath().getList("items").size();
    told(id, "2026-01-01");
    told(id, "2026-01-01");
    int after =
        Api.asPlanner().get("/api/v1/units/" + id + "/scores").jsonPath().getList("items").size();
    assertEquals(before, after);
  }

  @Test
  void theEffectOfAVisitIsTheScoreWithoutItAndWithIt() {
    String address = "/api/v1/units/" + id("DIRTY") + "/visits/3/effect";
    JsonPath effect = Api.asPlanner().get(address).jsonPath();
    assertEquals("2026-05-28", effect.getString("date"));
    assertTrue(
        effect.getDouble("after.score") > effect.getDouble("before.score") + 5, effect.prettify());
    assertTrue(effect.getDouble("factors.find { it.factor == 'coil' }.before") > 10);
    // a number with a slash in it is a number too
    Api.asPlanner()
        .get("/api/v1/units/" + id("DIRTY") + "/visits/1/a/effect")
        .then()
        .statusCode(200)
        .body("visit", equalTo("1/a"));
  }

  @ParameterizedTest
  @CsvSource({
    "/api/v1/units/DIRTY/visits/99/effect, 404",
    "/api/v1/units/nowhere/visits/1/effect, 404",
    "/api/v1/units/nowhere/scores, 404",
    "/api/v1/units/DIRTY/scores?after=@@@, 400",
    "/api/v1/units/DIRTY/scores?after=bm9uc2Vuc2U, 400",
    "/api/v1/units/DIRTY/scores?limit=0, 400",
    "/api/v1/units/DIRTY/visits/3/effect?measures=x, 400",
  })
  void whatIsNotThereOrNonsenseIsSaid(String address, int status) {
    Api.asPlanner()
        .urlEncodingEnabled(false)
        .get(address.replace("DIRTY", id("DIRTY")))
        .then()
        .statusCode(status)
        .contentType("application/problem+json");
  }
}

package coldround.rounds.edge;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import coldround.Api;
import coldround.fleet.FleetWiping;
import coldround.pages.edge.OwnStore;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A dispatcher moves a stop of a plan by the interface: told first, taken then. */
@QuarkusTest
@TestProfile(OwnStore.class)
class MovesTest {

  private static final LocalDate MONDAY =
      LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.MONDAY));
  private static final String ROUNDS = "/api/v1/rounds";

  @Inject FleetWiping wiping;

  private static String plan;
  private static String stop;
  private static int revision;
  private static String tag;

  @BeforeEach
  void aSmallPlan() throws InterruptedException {
    if (plan != null) {
      revision = read().getInt("revision");
      return;
    }
    wiping.wipe();
    Api.put("customers", "customer\nMV\n");
    StringBuilder sites = new StringBuilder("customer,site,latitude,longitude,time_zone\n");
    StringBuilder units = new StringBuilder("customer,site,unit,kind,installed,refrigerant\n");
    StringBuilder visits =
        new StringBuilder("customer,site,unit,visit,date,contactor,door,drain,condenser_coil\n");
    for (int site = 0; site < 3; site++) {
      sites.append("MV,S%d,38.2%d,-79,America/New_York\n".formatted(site, site));
      for (int n = 0; n < 4; n++) {
        String unit = "MV,S%d,U%d%d,".formatted(site, site, n);
        units.append(unit + "walk-in-cooler,2010-04-01,R-404A\n");
        visits.append(unit + "1,2026-01-15,bad,bad,bad,blocked\n");
      }
    }
    Api.put("sites", sites.toString());
    Api.put("units", units.toString());
    Api.put("visits", visits.toString());
    Api.put(
        "technicians",
        "technician,name,latitude,longitude,hours,competences\n"
            + "M1,Ada,38.2,-79,Mo-Fr 07:00-16:00,electrical;refrigerant-handling\n"
            + "M2,Bea,38.2,-79,Mo-Fr 07:00-16:00,electrical;refrigerant-handling\n"
            + "M3,Cid,38.2,-79,Mo-Fr 07:00-16:00,\n");
    plan =
        post(ROUNDS, "{\"from\": \"%s\", \"seconds\": 1, \"seed\": 1}".formatted(MONDAY))
            .jsonPath()
            .getString("id");
    JsonPath read = read();
    while (List.of("waiting", "planning").contains(read.getString("state"))) {
      Thread.sleep(100);
      read = read();
    }
    stop = read.getString("days.rounds.flatten().stops.flatten().find { it.competences }.id");
    assertNotNull(stop, "nothing is planned");
    revision = 0;
  }

  private static Response post(String address, String body) {
    return Api.asPlanner().contentType("application/json").body(body).post(address);
  }

  private static JsonPath read() {
    Response answer = Api.asPlanner().get(ROUNDS + "/" + plan);
    tag = answer.getHeader("ETag");
    return answer.jsonPath();
  }

  private static String move(String technician, LocalDate to) {
    return "{\"stop\": \"%s\", \"technician\": \"%s\", \"day\": \"%s\", \"position\": 1}"
        .formatted(stop, technician, to);
  }

  @Test
  void whatAMoveCostsIsToldBeforeAnythingIsChanged() {
    JsonPath before = read();
    LocalDate friday = MONDAY.plusDays(4);
    post(ROUNDS + "/" + plan + "/moves?preview=true", move("M2", friday))
        .then()
        .statusCode(200)
        .body("moved", equalTo(false))
        .body("possible", equalTo(true))
        .body("more.currency", equalTo("USD"))
        .body("rounds.day", hasItem(friday.toString()));
    String old = tag;
    assertEquals(before.prettify(), read().prettify());
    assertEquals(old, tag);
  }

  @Test
  void aMoveIsTakenOnceAndCostsWhatWasTold() {
    LocalDate friday = MONDAY.plusDays(4);
    double before = read().getDouble("cost.total");
    double more =
        post(ROUNDS + "/" + plan + "/moves?preview=true", move("M2", friday))
            .jsonPath()
            .getDouble("more.total");
    read();
    String seen = tag;
    Api.asPlanner()
        .contentType("application/json")
        .header("If-Match", seen)
        .body(move("M2", friday))
        .post(ROUNDS + "/" + plan + "/moves")
        .then()
        .statusCode(200)
        .body("moved", equalTo(true));
    JsonPath after = read();
    assertEquals(before + more, after.getDouble("cost.total"), 0.02);
    assertEquals(revision + 1, after.getInt("revision"));
    String its =
        "days.find { it.day == '%s' }.rounds.find { it.technician.code == 'M2' }.stops[0].id"
            .formatted(friday);
    assertEquals(stop, after.getString(its));
    Api.asPlanner()
        .contentType("application/json")
        .header("If-Match", seen)
        .body(move("M1", MONDAY.plusDays(1)))
        .post(ROUNDS + "/" + plan + "/moves")
        .then()
        .statusCode(412)
        .contentType("application/problem+json")
        .body("type", containsString("changed"));
    assertEquals(revision + 1, read().getInt("revision"), "nothing moved by who had not seen it");
  }

  @Test
  void aRuleForbidsAndIsNamed() {
    Response refused = post(ROUNDS + "/" + plan + "/moves", move("M3", MONDAY));
    refused
        .then()
        .statusCode(409)
        .contentType("application/problem+json")
        .body("breaches.code", hasItem("competences"))
        .body("detail", containsString("Cid does not have"));
    assertEquals(revision, read().getInt("revision"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | stop",
        "{\"stop\": \"nonsense\"} | stop",
        "{\"stop\": \"STOP\", \"technician\": \"M99\"} | technician",
        "{\"stop\": \"STOP\", \"day\": \"2001-01-01\"} | day",
        "{\"stop\": \"STOP\", \"day\": \"someday\"} | day",
        "{\"stop\": \"STOP\", \"position\": 0} | position",
        "{\"stop\": \"STOP\", \"position\": -3} | position",
        "{\"stop\": \"STOP\", \"position\": 100000} | position"
      })
  void aMoveThatMakesNoSenseSaysWhichField(String body, String field) {
    post(ROUNDS + "/" + plan + "/moves", body.replace("STOP", stop))
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors[0].field", equalTo(field));
    assertEquals(revision, read().getInt("revision"));
  }

  @Test
  void aPlanThatIsNotThereIsNotFound() {
    post(ROUNDS + "/nowhere/moves", "{\"stop\": \"c1\"}")
        .then()
        .statusCode(404)
        .body("title", notNullValue());
  }
}

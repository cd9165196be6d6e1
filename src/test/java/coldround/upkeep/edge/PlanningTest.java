package coldround.upkeep.edge;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.fleet.Today;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Backtest, what-if and bundles over the API. */
@QuarkusTest
class PlanningTest {

  @Inject Today today;

  @BeforeEach
  void aSiteWithTwoNeglectedUnits() {
    LocalDate day = today.usually();
    Api.put("customers", "customer,name\nPLAN,Plan\n");
    Api.put(
        "sites",
        "customer,site,jurisdiction,surroundings,design_ambient [degF]\n"
            + "PLAN,S1,US-VA,greasy,95\nPLAN,S2,US-VA,greasy,95\n");
    Api.put(
        "units",
        "customer,site,unit,kind,installed,refrigerant,high_cutout [psig]\n"
            + "PLAN,S1,A,walk-in-cooler,2015-05-04,R-404A,400\n"
            + "PLAN,S1,B,walk-in-cooler,2016-05-04,R-404A,400\n"
            + "PLAN,S2,C,walk-in-cooler,2016-05-04,R-404A,400\n");
    StringBuilder visits =
        new StringBuilder(
            "customer,site,unit,visit,date,purpose,ambient [degF],head_pressure [psig],"
                + "condenser_coil,work,faults\n");
    for (String unit : List.of("S1,A", "S1,B", "S2,C")) {
      String key = "PLAN," + unit + ",";
      visits.append(
          key + "1," + day.minusDays(700) + ",planned,80,270,clean,condenser-coil-cleaned,\n");
      visits.append(key + "2," + day.minusDays(560) + ",survey,80,330,heavy,inspected,\n");
      visits.append(
          key
              + "3,"
              + day.minusDays(200)
              + ",breakdown,88,395,blocked,condenser-coil-cleaned,high-head-lockout\n");
    }
    Api.put("visits", visits.toString());
  }

  @Test
  void aNeglectedCoilWasDueBeforeItLockedOut() {
    LocalDate day = today.usually();
    Api.asPlanner()
        .queryParam("customer", "PLAN")
        .queryParam("from", day.minusDays(500).toString())
        .queryParam("until", day.toString())
        .get("/api/v1/upkeep/backtest")
        .then()
        .statusCode(200)
        .body("units", equalTo(3))
        .body("lockouts.recorded", equalTo(3))
        .body("lockouts.foreseen", equalTo(3))
        .body("lockouts.medianLeadDays", greaterThan(0f))
        .body("cleanings.needed", equalTo(3))
        .body("recordedLockouts.foreseen", everyItem(equalTo(true)));
  }

  @ParameterizedTest
  @CsvSource({"from=soon", "until=31/02/2026", "from=2026-01-01&until=2025-01-01"})
  void aSpanThatIsNoneIsRefused(String query) {
    Api.asPlanner()
        .get("/api/v1/upkeep/backtest?" + query)
        .then()
        .statusCode(400)
        .contentType("application/problem+json");
  }

  @Test
  void tasksOfASiteAreOfferedAsOneVisit() {
    JsonPath page =
        Api.asPlanner().queryParam("customer", "PLAN").get("/api/v1/upkeep/bundles").jsonPath();
    List<String> sites = page.getList("items.site");
    assertTrue(sites.contains("S1") && sites.contains("S2"), sites.toString());
    for (int i = 0; i < sites.size(); i++) {
      String item = "items[" + i + "].";
      int tasks = page.getList(item + "tasks").size();
      assertTrue(tasks > 1);
      // one trip less for each task but the first, at the row 'trip' of costs.csv
      assertTrue(page.getDouble(item + "saving.value") > 0);
      assertTrue(page.getString(item + "from").compareTo(page.getString(item + "to")) <= 0);
      assertTrue(page.getString(item + "reason.source").contains("costs.csv"));
    }
  }

  @Test
  void followingNextShowsEachBundleOnce() {
    List<String> all = bundles(500);
    assertEquals(all, bundles(1));
    assertEquals(all.size(), all.stream().distinct().count());
  }

  private static List<String> bundles(int limit) {
    List<String> seen = new ArrayList<>();
    String after = "";
    do {
      JsonPath page =
          Api.asPlanner()
              .queryParam("customer", "PLAN")
              .queryParam("limit", limit)
              .queryParam("after", after)
              .get("/api/v1/upkeep/bundles")
              .jsonPath();
      for (int i = 0; i < page.getList("items").size(); i++) {
        seen.add(page.getString("items[" + i + "].tasks.id"));
      }
      after = page.getString("next");
    } while (after != null);
    return seen;
  }

  private static ValidatableResponse whatIf(String body) {
    return Api.asPlanner()
        .contentType("application/json")
        .body(body)
        .post("/api/v1/upkeep/what-if")
        .then();
  }

  @Test
  void withoutCleaningsThereAreMoreLockoutsAndLessCleaning() {
    JsonPath answer =
        whatIf("{\"customer\":\"PLAN\",\"skipCleanings\":true}")
            .statusCode(200)
            .extract()
            .jsonPath();
    assertEquals(0, answer.getInt("changed.cleanings"));
    assertTrue(answer.getInt("asPlanned.cleanings") > 0);
    assertTrue(answer.getDouble("changed.lockouts") > answer.getDouble("asPlanned.lockouts"));
    assertTrue(answer.getString("capacitySource").contains("technician-week"));
  }

  @Test
  void aHotterSeasonIsNotCheaperAndNoChangeChangesNothing() {
    JsonPath hotter =
        whatIf("{\"customer\":\"PLAN\",\"hotter\":{\"value\":5,\"unit\":\"deltaF\"}}")
            .extract()
            .jsonPath();
    assertTrue(hotter.getDouble("changed.lockouts") >= hotter.getDouble("asPlanned.lockouts"));
    JsonPath none = whatIf("{\"customer\":\"PLAN\"}").extract().jsonPath();
    assertEquals(none.getMap("asPlanned").toString(), none.getMap("changed").toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"asOf\":\"2020-01-01\"} | /asOf",
        "{\"asOf\":\"soon\"} | /asOf",
        "{\"asOf\":\"9999-12-31\"} | /asOf",
        "{\"hotter\":5} | /hotter",
        "{\"hotter\":{\"value\":5,\"unit\":\"degF\"}} | /hotter",
        "{\"hotter\":{\"value\":1e9,\"unit\":\"deltaF\"}} | /hotter",
        "{\"skipCleanings\":\"yes\"} | /skipCleanings",
        "{\"technicians\":0} | /technicians",
        "{\"technicians\":\"two\"} | /technicians",
        "{\"rain\":true} | /rain",
      })
  void aChangeThatCannotBeReadIsRefusedWithItsField(String body, String field) {
    whatIf(body)
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors.field", hasItem(field))
        .body("errors.message", everyItem(notNullValue()));
  }

  @Test
  void severalWrongFieldsAreToldTogether() {
    whatIf("{\"technicians\":-1,\"skipCleanings\":3}").body("errors", hasSize(2));
    whatIf("[]").statusCode(400);
    whatIf("{").statusCode(400).contentType("application/problem+json");
  }
}

package coldround.intake.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.UnitHistory;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Identity and history: renames, corrections, confirmed values, units that are no longer listed.
 */
@QuarkusTest
class CorrectionsTest {

  private static final String UNITS = "customer,site,unit,previous_tag,kind,maker,charge [lb]\n";
  private static final String VISITS =
      "customer,site,unit,visit,date,ambient [degF],head_pressure [psig],note\n";

  @Inject Fleet fleet;

  private String customer;

  @BeforeEach
  void twoSites() {
    customer = "K" + UUID.randomUUID().toString().substring(0, 8);
    send("customers", "customer\n" + customer + "\n");
    send(
        "sites",
        "customer,site,time_zone\n%1$s,S1,America/Los_Angeles\n%1$s,S2,\n".formatted(customer));
    units("S1,A,,walk-in-cooler,Acme,10", "S1,B,,chiller,,", "S2,A,,chiller,,");
  }

  private static ValidatableResponse send(String kind, String text) {
    return asPlanner()
        .contentType("text/csv")
        .body(text)
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200);
  }

  private ValidatableResponse units(String... rows) {
    return send("units", UNITS + rows(rows));
  }

  private ValidatableResponse visits(String... rows) {
    return send("visits", VISITS + rows(rows));
  }

  private String rows(String... rows) {
    StringBuilder text = new StringBuilder();
    for (String row : rows) {
      text.append(customer).append(',').append(row).append('\n');
    }
    return text.toString();
  }

  private List<UnitHistory> histories() {
    List<UnitHistory> found = new ArrayList<>();
    fleet.eachHistory(new FleetFilter(customer, "", "", "", ""), found::add);
    return found;
  }

  private Map<String, String> idsByTag(String site) {
    Map<String, String> ids = new java.util.TreeMap<>();
    histories().stream()
        .filter(one -> one.unit().site().equals(site))
        .forEach(one -> ids.put(one.unit().tag(), one.unit().id()));
    return ids;
  }

  private static ValidatableResponse corrections(String query) {
    return asPlanner().get("/api/v1/corrections" + query).then().statusCode(200);
  }

  @Test
  void theLaterUploadWinsAndTheFormerValueIsKeptWithDayAndImport() {
    String first = visits("S1,A,1,2026-05-01,70,171,first").extract().path("id");
    String second = visits("S1,A,1,2026-05-01,,117,-").extract().path("id");
    String unit = idsByTag("S1").get("A");
    corrections("?unit=" + unit)
        .body("items", hasSize(2), "next", nullValue())
        .body("items.origin", equalTo(List.of("import", "import")))
        .body("items.importId", equalTo(List.of(second, second)))
        .body("items.changed", org.hamcrest.Matchers.everyItem(notNullValue()))
        .body("items.column", equalTo(List.of("note", "head_pressure")))
        .body("items.former", equalTo(List.of("first", "171 psig")))
        .body("items.later", equalTo(List.of("", "117 psig")))
        .body("items[0].kind", equalTo("visits"), "items[0].item", equalTo("1"))
        .body("items[0].unit", equalTo(unit));
    corrections("?import=" + second).body("items", hasSize(2));
    corrections("?import=" + first).body("items", hasSize(0));
    visits("S1,A,1,2026-05-01,,117,-").body("rows.unchanged", equalTo(1));
    corrections("?unit=" + unit).body("items", hasSize(2));
  }

  @Test
  void correctionsComeByPage() {
    visits("S1,A,1,2026-05-01,70,101,", "S1,A,1,2026-05-01,70,102,", "S1,A,1,2026-05-01,70,103,");
    String unit = idsByTag("S1").get("A");
    String next =
        corrections("?limit=1&unit=" + unit)
            .body("items.former", equalTo(List.of("102 psig")))
            .extract()
            .path("next");
    corrections("?limit=1&unit=" + unit + "&after=" + next)
        .body("items.former", equalTo(List.of("101 psig")), "next", nullValue());
    asPlanner().get("/api/v1/corrections?after=nonsense").then().statusCode(400);
    asPlanner().get("/api/v1/corrections?limit=0").then().statusCode(400);
  }

  @Test
  void whatIsNotOfAUnitHasItsHistoryToo() {
    String id =
        send("sites", "customer,site,time_zone\n" + customer + ",S1,America/Denver\n")
            .body("rows.changed", equalTo(1))
            .extract()
            .path("id");
    corrections("?import=" + id)
        .body("items", hasSize(1), "items[0].kind", equalTo("sites"))
        .body("items[0].item", equalTo(customer + "/S1"))
        .body("items[0].former", equalTo("America/Los_Angeles"));
  }

  @Test
  void aRenamedUnitKeepsItsHistoryAndItsFormerTagIsRemembered() {
    visits("S1,A,1,2026-05-01,70,117,");
    String id = idsByTag("S1").get("A");
    units("S1,A-1,A,walk-in-cooler,,").body("rows.changed", equalTo(1));
    assertEquals(id, idsByTag("S1").get("A-1"));
    assertEquals(1, histories().get(0).visits().size());
    corrections("?unit=" + id)
        .body("items", hasSize(1), "items[0].column", equalTo("unit"))
        .body("items[0].former", equalTo("A"), "items[0].later", equalTo("A-1"));
    units("S1,A-1,A,walk-in-cooler,,").body("rows.unchanged", equalTo(1));
  }

  @Test
  void tagsThatMoveUpOneByOneAreRenamedWhateverTheirOrder() {
    Map<String, String> before = idsByTag("S1");
    String[] rows = {"S1,B,A,walk-in-cooler,,", "S1,C,B,chiller,,"};
    units(rows).body("rows.changed", equalTo(2), "rows.rejected", equalTo(0));
    Map<String, String> after = idsByTag("S1");
    assertEquals(before.get("A"), after.get("B"));
    assertEquals(before.get("B"), after.get("C"));
    units(rows).body("rows.unchanged", equalTo(2), "rows.rejected", equalTo(0));
    assertEquals(after, idsByTag("S1"));
  }

  @Test
  void twoUnitsThatAreBothThereAreNotTakenForOne() {
    units("S1,B,A,walk-in-cooler,,")
        .body("rows.rejected", equalTo(1), "problems[0].code", equalTo("tag-taken"));
  }

  @Test
  void unitsThatVanishedFromTheListAreToldAndStay() {
    String id =
        units("S1,B,,chiller,,")
            .body("vanished.count", equalTo(1), "vanished.units[0].tag", equalTo("A"))
            .body("vanished.units[0].site", equalTo("S1"))
            .body("vanished.units[0].id", equalTo(idsByTag("S1").get("A")))
            .body("vanished.siteCount", equalTo(1), "vanished.sites[0].site", equalTo("S2"))
            .body("vanished.sites[0].units", equalTo(1))
            .extract()
            .path("id");
    assertEquals(3, histories().size());
    asPlanner()
        .get("/api/v1/imports/" + id)
        .then()
        .body("vanished.count", equalTo(1), "vanished.units[0].tag", equalTo("A"));
  }

  @Test
  void aUnitOnARejectedRowARetiredOneAndARenamedOneHaveNotVanished() {
    send(
            "units",
            "customer,site,unit,kind,retired\n%s,S1,B,chiller,2020-01-31\n".formatted(customer))
        .body("vanished.count", equalTo(1));
    units("S1,A,,boat,,", "S2,A2,A,chiller,,")
        .body("rows.rejected", equalTo(1), "vanished.count", equalTo(0))
        .body("vanished.siteCount", equalTo(0));
  }

  @Test
  void otherKindsOfListHaveNothingToVanish() {
    visits("S1,A,1,2026-05-01,70,117,").body("vanished", nullValue());
  }

  @Test
  void aSuspectReadingThatIsConfirmedTakesPartInScoring() {
    send(
        "units",
        "customer,site,unit,kind,refrigerant\n" + customer + ",S1,R,walk-in-cooler,R-134a\n");
    // R-134a condenses near 165 degF under that: a split of 105 degF is above what is believed
    visits("S1,R,7/a,2026-05-01,60,321,");
    String unit = idsByTag("S1").get("R");
    asPlanner()
        .get("/api/v1/units/" + unit)
        .then()
        .body("latestReadings.find { it.quantity == 'head_pressure' }.suspect", notNullValue());
    String before = asPlanner().get("/api/v1/units/" + unit + "/condition").asString();
    confirm(unit, "{\"visit\":\"7/a\",\"quantity\":\"head_pressure\"}", 200)
        .body("confirmed", equalTo(true), "suspect", nullValue(), "value", equalTo(321));
    String after = asPlanner().get("/api/v1/units/" + unit + "/condition").asString();
    assertNotEquals(before, after);
    confirm(unit, "{\"visit\":\"7/a\",\"quantity\":\"head_pressure\"}", 200)
        .body("confirmed", equalTo(true));
    corrections("?unit=" + unit)
        .body("items", hasSize(1), "items[0].origin", equalTo("confirmation"))
        .body("items[0].former", equalTo("321 psig"), "items[0].later", equalTo("321 psig!"));
    visits("S1,R,7/a,2026-05-01,60,321,").body("rows.unchanged", equalTo(1));
    confirm(unit, "{\"visit\":\"7/a\",\"quantity\":\"head_pressure\",\"confirmed\":false}", 200)
        .body("suspect", notNullValue(), "confirmed", nullValue());
    assertEquals(before, asPlanner().get("/api/v1/units/" + unit + "/condition").asString());
  }

  private static ValidatableResponse confirm(String unit, String body, int status) {
    return asPlanner()
        .contentType("application/json")
        .body(body)
        .post("/api/v1/units/" + unit + "/confirmations")
        .then()
        .statusCode(status);
  }

  @Test
  void aConfirmationOfNothingIsAProblem() {
    send(
        "visits",
        VISITS.replace("head_pressure [psig]", "suction_pressure [psig]")
            + rows("S1,A,1,2026-05-01,70,n/t: port blocked,"));
    String unit = idsByTag("S1").get("A");
    confirm(unit, "{\"visit\":\"1\",\"quantity\":\"suction_pressure\"}", 409)
        .body("detail", containsString("port blocked"));
    confirm(unit, "{\"visit\":\"1\",\"quantity\":\"head_pressure\"}", 404);
    confirm(unit, "{\"visit\":\"9\",\"quantity\":\"ambient\"}", 404);
    confirm("u0", "{\"visit\":\"1\",\"quantity\":\"ambient\"}", 404);
    confirm("nonsense", "{\"visit\":\"1\",\"quantity\":\"ambient\"}", 404);
    confirm(unit, "{\"visit\":\"1\"}", 400).body("errors[0].field", equalTo("quantity"));
    confirm(unit, "{\"visit\":\"1\",\"quantity\":\"ambient\",\"sure\":true}", 400);
  }

  /** The day at the site: 03:30 in Greenwich is the evening before in Los Angeles (RFC 3339). */
  @ParameterizedTest
  @CsvSource({
    "S1, 2026-05-02T03:30:00Z, 2026-05-01",
    "S1, 2026-05-02T07:30Z, 2026-05-02",
    "S1, 2026-05-01T23:30:00-07:00, 2026-05-01",
    "S1, 2026-05-02 03:30, 2026-05-02",
    "S2, 2026-05-02T12:00:00+0200, 2026-05-02",
  })
  void aMomentIsADayInTheTimeZoneOfTheSite(String site, String written, String day) {
    visits(site + ",A,1," + written + ",70,117,").body("rows.created", equalTo(1));
    UnitHistory history =
        histories().stream().filter(one -> !one.visits().isEmpty()).findFirst().orElseThrow();
    assertEquals(day, history.visits().get(0).date().toString());
  }

  @Test
  void aTimeThatIsNoneIsToldAndNotGuessed() {
    visits("S1,A,1,2026-05-02T25:30:00Z,70,117,")
        .body("rows.rejected", equalTo(1), "problems[0].code", equalTo("not-a-date"));
  }
}

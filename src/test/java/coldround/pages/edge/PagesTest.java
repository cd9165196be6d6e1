package coldround.pages.edge;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@TestProfile(OwnStore.class)
class PagesTest {

  private static final int UNITS = 60;
  private static String imported;

  @Inject SampleFleet fleet;

  private void filled() {
    fleet.clear();
    fleet.put(UNITS);
  }

  private static ValidatableResponse page(String address) {
    return Api.asPlanner().get(address).then().statusCode(200).contentType("text/html");
  }

  @Test
  void anEmptyInstanceSaysHowToFillIt() {
    fleet.clear();
    page("/")
        .body(
            allOf(
                containsString("No unit yet"),
                containsString("/imports/templates/customers.csv"),
                containsString("/api/v1/imports/customers")));
  }

  @Test
  void theWorstUnitComesFirstWithItsPointsDrawn() {
    filled();
    String body = page("/").extract().asString();
    List<String> tags = tags(body);
    assertEquals(50, tags.size());
    assertEquals("U-000", tags.get(0));
    assertTrue(body.contains("60 units"), "count of units found");
    // 90, 72, 81 and 63 % of 25, 20, 25 and 30 points
    assertTrue(body.contains("Points lost: 22.5 to age, 14.4 to refrigerant, 20.3 to coil"), body);
    assertTrue(body.contains("Thin evidence"));
  }

  private static List<String> tags(String body) {
    Matcher links = Pattern.compile("class=\"tag\" href=\"[^\"]+\">([^<]+)<").matcher(body);
    List<String> tags = new ArrayList<>();
    while (links.find()) {
      tags.add(links.group(1));
    }
    return tags;
  }

  @Test
  void theListGoesOnBehindTheLastOneAndEnds() {
    filled();
    String first = page("/?kind=").extract().asString();
    Matcher next = Pattern.compile("href=\"([^\"]+)\" rel=\"next\"").matcher(first);
    assertTrue(next.find());
    String address = next.group(1).replace("&amp;", "&");
    String second =
        given()
            .urlEncodingEnabled(false)
            .auth()
            .preemptive()
            .oauth2(Api.TOKEN)
            .get(address)
            .then()
            .statusCode(200)
            .extract()
            .asString();
    List<String> all = new ArrayList<>(tags(first));
    all.addAll(tags(second));
    assertEquals(UNITS, all.stream().distinct().count());
    assertFalse(second.contains("rel=\"next\""));
  }

  /** A person is shown a page, a program is told in the words of programs. */
  @ParameterizedTest
  @CsvSource({
    "/nowhere, 404, There is no page at this address",
    "/units, 404, There is no page at this address",
    "/demo-fleet/load, 405, is done by a button",
    "/api/v1/nowhere, 404, the description is at /q/openapi"
  })
  void whoGoesAstrayIsToldInWords(String address, int status, String says) {
    boolean page = !address.startsWith("/api/");
    Api.asPlanner()
        .header("Accept", "text/html,application/xhtml+xml,*/*;q=0.8")
        .get(address)
        .then()
        .statusCode(status)
        .contentType(page ? "text/html" : "application/problem+json")
        .body(containsString(says));
    Api.asPlanner().get(address).then().statusCode(status).contentType("application/problem+json");
  }

  @ParameterizedTest
  @CsvSource({
    "q=u-007, 1 unit",
    "q=hospital thornfield, 60 units",
    "kind=chiller, 20 units",
    "refrigerant=R-22, 15 units",
    "kind=chiller&refrigerant=R-22, 5 units",
    "customer=LONG, 60 units",
    "customer=NOBODY, 0 units",
    "customer=LONG&site=MAIN, 60 units"
  })
  void unitsAreFoundBy(String search, String count) {
    filled();
    page("/?" + search).body(containsString("<b>" + count + "</b>"));
  }

  @Test
  void whatIsRenamedIsFoundByItsNewWordsAlone() {
    Api.put("customers", "customer,name\nRN,Kestrel Valley\n");
    Api.put("sites", "customer,site,name\nRN,RS,High school\n");
    Api.put("units", "customer,site,unit,kind\nRN,RS,RU-1,chiller\n");
    found("kestrel ru-1", true);
    Api.put("customers", "customer,name\nRN,Osprey Hills\n");
    found("kestrel", false);
    found("osprey ru-1", true);
    Api.put("sites", "customer,site,name\nRN,RS,Lower school\n");
    found("osprey high", false);
    found("osprey lower", true);
    Api.put(
        "units", "customer,site,unit,kind,previous_tag,maker\nRN,RS,RU-9,chiller,RU-1,Norwell\n");
    found("osprey ru-1", false);
    found("ru-9 norwell LOWER chiller", true);
  }

  private static void found(String words, boolean yes) {
    String body = Api.asPlanner().queryParam("q", words).get("/").asString();
    assertEquals(yes, body.contains("<b>1 unit</b>"), words);
  }

  @Test
  void aSearchThatFindsNothingSaysSoAndKeepsWhatWasTyped() {
    filled();
    page("/?q=zeppelin")
        .body(allOf(containsString("No unit fits"), containsString("value=\"zeppelin\"")));
  }

  @Test
  void dueFirstPutsTheEarliestDateOnTopAndNothingDueLast() {
    filled();
    assertEquals("U-000", tags(page("/?order=due").extract().asString()).get(0));
    assertEquals("U-059", tags(page("/?order=name&q=u-05").extract().asString()).get(9));
  }

  @Test
  void whatIsTypedIsNeverTakenForHtml() {
    filled();
    Api.asPlanner()
        .queryParam("q", "<script>alert(1)</script>")
        .get("/")
        .then()
        .statusCode(200)
        .body(allOf(not(containsString("<script>")), containsString("&lt;script&gt;")));
    page("/").body(containsString("Main building &lt;kitchen&gt;"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"order=sideways", "measures=cubits", "after=%25%25", "after=Zm9v"})
  void nonsenseIsAnsweredWithAPageThatSaysWhatIsWrong(String parameters) {
    filled();
    Response answer =
        given()
            .urlEncodingEnabled(false)
            .auth()
            .preemptive()
            .oauth2(Api.TOKEN)
            .get("/?" + parameters);
    answer.then().statusCode(400).contentType("text/html").body(containsString("To the fleet"));
    assertTrue(
        answer.asString().contains(parameters.split("=")[0] + ": This must be "),
        answer.asString());
  }

  /**
   * A walk-in cooler on a roof with a neglected coil, as a contractor's spreadsheets tell of it.
   */
  private static String importedUnit() {
    if (imported == null) {
      imported = importUnit();
    }
    return imported;
  }

  private static String importUnit() {
    Api.put("customers", "customer,name\nKV,Kestrel Valley\n");
    Api.put(
        "sites",
        "customer,site,name,jurisdiction,surroundings,design_ambient [degF]\n"
            + "KV,HGH,High school,US-VA,greasy,95\n");
    Api.put(
        "units",
        "customer,site,unit,kind,installed,refrigerant,charge [lb],high_cutout [psig]\n"
            + "KV,HGH,WIC-1,walk-in-cooler,2009-05-04,R-404A,8.5,400\n");
    Api.put(
        "visits",
        "customer,site,unit,visit,date,purpose,ambient [degF],head_pressure [psig],"
            + "suction_pressure [psig],condenser_coil,work,note\n"
            + "KV,HGH,WIC-1,1,2025-07-01,planned,80,270,40,light,condenser-coil-cleaned,\n"
            + "KV,HGH,WIC-1,2,2026-05-20,planned,80,318,n/t: port blocked by shelving,heavy,"
            + "inspected,Grease & dust <all over>\n");
    Api.put(
        "faults",
        "customer,site,unit,date,failure_mode\n"
            + "KV,HGH,WIC-1,2026-05-01,high-head-lockout\n"
            + "KV,HGH,WIC-1,2026-07-01,high-head-lockout\n");
    return Api.asPlanner().get("/api/v1/units?unit=WIC-1").jsonPath().getString("items[0].unit.id");
  }

  @Test
  void theUnitPageTellsScoreReasonsTasksAndHistory() {
    page("/units/" + importedUnit())
        .body(
            allOf(
                containsString("WIC-1"),
                containsString("Condenser coil cleaning"),
                containsString("Decides the date"),
                containsString("Alone would ask for"),
                containsString("Cautions for this work"),
                containsString("not taken: port blocked by shelving"),
                containsString("Grease &amp; dust &lt;all over&gt;"),
                containsString("limits.csv, row"),
                containsString("318 psig")));
  }

  @Test
  void theSplitIsDrawnWithItsCleaningCleanSplitAndLimit() {
    page("/units/" + importedUnit())
        .body(
            allOf(
                containsString("2 readings of the condensing split"),
                containsString("Coil cleaned 1 Jul 2025"),
                containsString(">clean split "),
                containsString(">limit ")));
  }

  @Test
  void theReadersMeasuresAreKeptInLinks() {
    page("/units/" + importedUnit() + "?measures=si")
        .body(allOf(containsString("2193 kPag"), not(containsString("318 psig"))));
    filled();
    page("/?measures=si").body(containsString("?measures=si\">U-000<"));
  }

  // R-404A condensing at 100 °F: 237 to 238 psig by makers' pressure-temperature charts, from
  // memory
  @Test
  void theRoofCalculatorTellsWhatToExpectAndJudgesWhatWasRead() {
    page("/refrigerants")
        .body(allOf(containsString("Work it out"), containsString("value=\"30\"")));
    page("/refrigerants?refrigerant=r12&ambient=70&split=30")
        .body(
            allOf(
                containsString("100.0 °F"),
                containsString("117 psig"),
                not(containsString("Split read"))));
    page("/refrigerants?refrigerant=R-404A&ambient=70&split=30&head=290")
        .body(
            allOf(
                containsString("Clean the coil"),
                containsString("What to check next"),
                containsString("roof-checks.csv"),
                containsString("limits.csv, row excess-limit")));
    page("/refrigerants?refrigerant=R-404A&ambient=21&split=17&measures=si")
        .body(allOf(containsString("38.0 °C"), containsString("kPag")));
  }

  @ParameterizedTest
  @CsvSource({
    "refrigerant=R-9999&ambient=70&split=30, This must be a refrigerant of the list",
    "refrigerant=R-404A&ambient=warm&split=30, This must be a number",
    "refrigerant=R-404A&ambient=70&split=-3, This must be above zero",
    "refrigerant=R-404A&ambient=70&split=400, saturation table runs from",
    "refrigerant=R-404A&ambient=70&split=30&head=NaN, This must be a number",
    "refrigerant=R-404A&ambient=70&split=30&head=4000, id=\"head-wrong\">",
    "refrigerant=R-404A&ambient=70&split=30&elevation=99999, This must lie from",
    "refrigerant=<script>&ambient=70&split=30, &lt;script&gt;",
  })
  void theRoofCalculatorSaysWhatItCannotUse(String typed, String told) {
    Api.asPlanner()
        .get("/refrigerants?" + typed)
        .then()
        .statusCode(400)
        .contentType("text/html")
        .body(
            allOf(
                containsString(told),
                containsString("Work it out"),
                not(containsString("<script>"))));
  }

  @Test
  void theCalendarTellsWeeksTheirLoadAndWhyATaskSitsThere() {
    importedUnit();
    page("/upkeep?customer=KV")
        .body(
            allOf(
                containsString("Upkeep by weeks"),
                containsString("WIC-1"),
                containsString("tasks in 13 weeks"),
                containsString("30.0 h"),
                containsString("Figures and source")));
    page("/upkeep?customer=KV&from=2026-01-01&until=2026-07-31")
        .body(containsString("of which a cleaning was due before"));
    Api.asPlanner()
        .get("/upkeep?from=2026-01-01&until=2025-01-01")
        .then()
        .statusCode(400)
        .contentType("text/html")
        .body(containsString("This must lie after the day to plan on"));
  }

  @Test
  void theUnitPageSaysWhatToMeasureNext() {
    page("/units/" + importedUnit()).body(containsString("What to measure next visit"));
  }

  @Test
  void aUnitThatIsNotThereIsAPageToo() {
    Api.asPlanner()
        .get("/units/nowhere")
        .then()
        .statusCode(404)
        .contentType("text/html")
        .body(containsString("There is no unit nowhere."));
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "unit", "/enter", "/refrigerants", "/upkeep"})
  void noPageMayRunForeignOrInlineScript(String which) {
    String address = which.equals("unit") ? "/units/" + importedUnit() : which;
    String policy =
        page(address)
            .header("X-Content-Type-Options", equalTo("nosniff"))
            .header("Referrer-Policy", equalTo("same-origin"))
            .header("Cache-Control", containsString("no-store"))
            .extract()
            .header("Content-Security-Policy");
    assertTrue(policy.contains("default-src 'none'") && policy.contains("frame-ancestors 'none'"));
    assertFalse(policy.contains("unsafe"), policy);
    String body = Api.asPlanner().get(address).asString();
    assertFalse(
        body.contains(" style=") || body.contains("<style"), "style that the policy blocks");
  }
}

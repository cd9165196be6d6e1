package coldround.refrigerant.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class RefrigerantApiTest {

  private static final RestAssuredConfig DOUBLES =
      RestAssured.config()
          .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE));

  private static ValidatableResponse get(String path) {
    return asPlanner()
        .config(DOUBLES)
        .urlEncodingEnabled(false)
        .get("/api/v1/refrigerants" + path)
        .then();
  }

  // common practice, no source: 70 F ambient and a split of 30 F; 117 psig is the handbook's R-12
  @Test
  void r12AtSeventyAmbientAndThirtySplitIsExpectedAt117() {
    get("/R-12/expected-head?ambient=70&split=30&unit=degF")
        .statusCode(200)
        .contentType("application/json")
        .header("ETag", notNullValue())
        .body("ambient.value", equalTo(70))
        .body("condensingTemperature.value", equalTo(100))
        .body("condensingTemperature.unit", equalTo("degF"))
        .body("headPressure.value", is(closeTo(117.2, 0.5)))
        .body("headPressure.unit", equalTo("psig"))
        .body("headPressureAbsolute.unit", equalTo("psia"))
        .body("split.unit", equalTo("deltaF"))
        .body("curve", equalTo("midpoint"))
        .body("quality", equalTo("reference"))
        .body("reason.source", containsString("saturation-sources.csv"));
  }

  @Test
  void theSameInMetricUnits() {
    get("/r12/expected-head?ambient=21.1111111&split=16.6666667&unit=degC&measures=si")
        .statusCode(200)
        .body("condensingTemperature.value", is(closeTo(37.7778, 1e-3)))
        .body("condensingTemperature.unit", equalTo("degC"))
        .body("split.unit", equalTo("deltaK"))
        .body("headPressure.value", is(closeTo(808, 4)))
        .body("headPressure.unit", equalTo("kPag"));
  }

  // public chart of R-404A: at 85 F 189.5 psig bubble and 187.5 psig dew
  @Test
  void bubbleAndDewAtATemperature() {
    get("/R-404A/saturation?temperature=85&unit=degF")
        .statusCode(200)
        .body("refrigerant", equalTo("R-404A"))
        .body("temperature.value", equalTo(85))
        .body("bubblePressure.value", is(closeTo(189.5, 1)))
        .body("dewPressure.value", is(closeTo(187.5, 1)))
        .body("bubbleTemperature", nullValue())
        .body("missing", nullValue());
  }

  // handbook: R-22 at 40 F is 68.6 psig
  @Test
  void bubbleAndDewAtAPressure() {
    get("/HCFC-22/saturation?pressure=68.6&unit=psig")
        .statusCode(200)
        .body("pressure.value", is(closeTo(68.6, 1e-6)))
        .body("bubbleTemperature.value", is(closeTo(40, 0.2)))
        .body("dewTemperature.value", is(closeTo(40, 0.2)))
        .body("midpointTemperature.unit", equalTo("degF"));
  }

  // ICAO standard atmosphere: 1600 m is 83.5 kPa, so a gauge there reads 17.8 kPa more
  @Test
  void aGaugeReadsMoreWhereTheAirIsThin() {
    double sea = gaugeAt("");
    assertEquals(sea + 17.8, gaugeAt("&elevation=1600"), 0.1);
    assertEquals(sea + 17.8, gaugeAt("&elevation=5249.34&elevationUnit=ft"), 0.1);
  }

  private static double gaugeAt(String elevation) {
    return get("/R-134a/saturation?temperature=40&unit=degF&measures=si" + elevation)
        .statusCode(200)
        .extract()
        .jsonPath()
        .getDouble("dewPressure.value");
  }

  @Test
  void atTheEndOfABlendsTableOnlyWhatIsKnownIsTold() {
    get("/R-455A/saturation?temperature=-50&unit=degC")
        .statusCode(200)
        .body("bubblePressure.value", notNullValue())
        .body("midpointPressure", nullValue())
        .body("missing", hasItem(containsString("the saturation table runs from")));
  }

  @Test
  void anEstimatedCurveSaysHowFarItMayBeOff() {
    get("/R-502/saturation?temperature=0&unit=degC&measures=si")
        .body("quality", equalTo("fitted"))
        .body("uncertainty.value", is(closeTo(0.7, 1e-9)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/R-999/saturation?temperature=1&unit=degC | 404 | not-found | R-999",
        "/R-999 | 404 | not-found | R-999",
        "/R-12/saturation | 400 | bad-request | either pressure or temperature",
        "/R-12/saturation?pressure=1&temperature=1&unit=bar | 400 | bad-request | either pressure",
        "/R-12/saturation?pressure=ten&unit=psig | 400 | bad-request | is a number",
        "/R-12/saturation?pressure=NaN&unit=psig | 400 | bad-request | is a number",
        "/R-12/saturation?pressure=10 | 400 | bad-request | psig",
        "/R-12/saturation?pressure=10&unit=degF | 400 | bad-request | is a pressure",
        "/R-12/saturation?pressure=10&unit=inHg | 400 | bad-request | unit of measure",
        "/R-12/saturation?temperature=10&unit=psig | 400 | bad-request | degF, degC or K",
        "/R-12/saturation?temperature=10&unit=degF&elevation=20000 | 400 | bad-request | 11000",
        "/R-12/saturation?temperature=10&unit=degF&elevation=up | 400 | bad-request | is a number",
        "/R-12/saturation?temperature=10&unit=degF&elevation=1&elevationUnit=A | 400 | bad-request | is m, ft",
        "/R-12/saturation?temperature=10&unit=degF&measures=old | 400 | bad-request | us or si",
        "/R-12/saturation?temperature=1e308&unit=degF | 422 | outside-saturation-table | R-12",
        "/R-12/saturation?pressure=1e308&unit=psig | 422 | outside-saturation-table | R-12",
        "/R-12/saturation?pressure=-20&unit=psig | 422 | outside-saturation-table | gauge or absolute",
        "/R-12/saturation?temperature=-500&unit=degC | 422 | outside-saturation-table | Check",
        "/R-744/expected-head?ambient=85&split=20&unit=degF | 422 | outside-saturation-table | gas cooler",
        "/R-413A/saturation?temperature=10&unit=degF | 422 | no-saturation-curve | R-413A",
        "/R-12/expected-head?split=30&unit=degF | 400 | bad-request | ambient",
        "/R-12/expected-head?ambient=70&unit=degF | 400 | bad-request | split",
        "/R-12/expected-head?ambient=70&split=30 | 400 | bad-request | unit",
        "/R-12/expected-head?ambient=70&split=-3&unit=degF | 400 | bad-request | above zero",
        "/R-12/expected-head?ambient=1e308&split=1e308&unit=degF | 422 | outside-saturation-table | R-12",
        "?limit=0 | 400 | bad-request | limit",
        "?after=%25%25 | 400 | bad-request | after"
      })
  void nonsenseIsRefusedWithWhatToMend(String path, int status, String type, String says) {
    get(path)
        .statusCode(status)
        .contentType("application/problem+json")
        .body("type", equalTo("urn:coldround:problem:" + type))
        .body("detail", containsString(says));
  }

  @Test
  void aRefrigerantIsToldWithItsPhaseOutDates() {
    get("/r22?jurisdiction=US")
        .statusCode(200)
        .body("designation", equalTo("R-22"))
        .body("family", equalTo("HCFC"))
        .body("safetyGroup", equalTo("A1"))
        .body("gwp.ar4", equalTo(1810))
        .body("boilingBubble.value", is(closeTo(-41.4, 0.1)))
        .body("boilingBubble.unit", equalTo("degF"))
        .body("composition.'R-22'.value", equalTo(100))
        .body("phaseOut.schedule", everyItem(is(oneOf("US", "*"))))
        .body("phaseOut.find { it.rule == 'US-HCFC22-PROD' }.from", equalTo("2020-01-01"))
        .body(
            "phaseOut.find { it.rule == 'US-HCFC22-PROD' }.legalReference",
            containsString("40 CFR 82.16(d)"));
  }

  @Test
  void withoutAJurisdictionTheRulesOfAllAreTold() {
    get("/R-404A")
        .body("phaseOut.schedule", hasItem("EU"))
        .body("phaseOut.schedule", hasItem("US"))
        .body("phaseOut.find { it.rule == 'EU-FG-SERV2500-ALL' }.gwpLimit", is(2500))
        .body("phaseOut.find { it.rule == 'US-TT26-RCU' }.decides", equalTo("assumed"))
        .body("phaseOut.find { it.rule == 'US-TT26-RCU' }.source", containsString("assumed"));
  }

  @Test
  void designationsWithBracketsAndOtherNamesAreFound() {
    get("/R-1234ze(E)").statusCode(200).body("safetyGroup", equalTo("A2L"));
    get("/carbon%20dioxide").statusCode(200).body("designation", equalTo("R-744"));
  }

  @Test
  void theListPagesThroughAllOfThem() {
    List<String> seen = new ArrayList<>();
    String after = "";
    do {
      var page = get("?limit=40&jurisdiction=US" + after).statusCode(200).extract().jsonPath();
      seen.addAll(page.getList("items.designation"));
      after = page.getString("next") == null ? "" : "&after=" + page.getString("next");
    } while (!after.isEmpty());
    assertEquals(86, seen.size());
    assertEquals(86, seen.stream().distinct().count());
    get("?limit=1").header("Link", containsString("rel=\"next\"")).body("items", hasSize(1));
  }

  @Test
  void anUnchangedAnswerIsNotSentTwice() {
    String tag = get("/R-12").extract().header("ETag");
    asPlanner()
        .header("If-None-Match", tag)
        .get("/api/v1/refrigerants/R-12")
        .then()
        .statusCode(304);
  }
}

package coldround.pages.edge;

import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.Api;
import coldround.scoring.FleetLine;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The form of a visit as a plain form, without any script. */
@QuarkusTest
@TestProfile(DemoStore.class)
class VisitFormTest {

  @Inject SampleFleet fleet;

  private String unit;
  private String number;

  @BeforeEach
  void choose() {
    FleetLine line = fleet.all().get(5);
    unit = line.unitId();
    number = "field-" + UUID.randomUUID();
  }

  private Response send(String language, String seen, Map<String, ?> fields) {
    return Api.asPlanner()
        .header("Accept-Language", language)
        .redirects()
        .follow(false)
        .contentType("application/x-www-form-urlencoded; charset=UTF-8")
        .formParam("number", number)
        .formParam("seen", seen)
        .formParam("measures", "us")
        .formParam("date", "2026-05-12")
        .formParams(fields)
        .post("/units/" + unit + "/visits");
  }

  private io.restassured.path.json.JsonPath stored() {
    return Api.asPlanner().get("/api/v1/units/" + unit + "/visits/" + number).jsonPath();
  }

  private String seen() {
    String page =
        Api.asPlanner().get("/units/" + unit + "/visits/" + number + "/correct").asString();
    return page.replaceAll("(?s).*name=\"seen\" value=\"([^\"]*)\".*", "$1");
  }

  // decimal signs of languages: Unicode CLDR
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "en-US | 37.5 | 37.5",
        "de-DE | 37,5 | 37.5",
        "de-DE | 37.5 | 37.5",
        "en-US | 37,5 | 37.5",
        "* | 37.5 | 37.5",
        "de-DE | -3,5 | -3.5"
      })
  void aNumberIsReadInTheLanguageOfItsReader(String language, String typed, double value) {
    send(language, "", Map.of("read.box", typed)).then().statusCode(303);
    assertEquals(value, stored().getDouble("readings[0].value"), 1e-9);
  }

  @Test
  void theSameSentTwiceIsOneVisitAndBackAndAgainCorrectsIt() {
    send("en", "", Map.of("read.box", "37", "note", "first")).then().statusCode(303);
    send("en", "", Map.of("read.box", "37", "note", "first")).then().statusCode(303);
    send("en", "", Map.of("read.box", "38", "note", "")).then().statusCode(303);
    assertEquals(38, stored().getDouble("readings[0].value"), 1e-9);
    assertEquals(null, stored().getString("note"));
  }

  @Test
  void aNumberOfOnesOwnIsKeptAndNeverTakesOverAnotherVisit() {
    String own = "W-" + UUID.randomUUID();
    send("en", "", Map.of("own", own, "read.box", "37")).then().statusCode(303);
    number = own;
    assertEquals(37, stored().getDouble("readings[0].value"), 1e-9);
    // the same once more, as after a lost answer
    number = "field-" + UUID.randomUUID();
    send("en", "", Map.of("own", own, "read.box", "37")).then().statusCode(303);
    // somebody else's paper with the same number
    send("en", "", Map.of("own", own, "read.box", "44"))
        .then()
        .statusCode(409)
        .body(
            allOf(
                containsString("has a visit " + own + " already"),
                containsString("Stands by now: <b>37</b>"),
                containsString("value=\"44\""),
                containsString("name=\"number\" value=\"" + own + "\"")));
    number = own;
    assertEquals(37, stored().getDouble("readings[0].value"), 1e-9);
  }

  @Test
  void severalMotorsOfAKindAreToldByTheirParts() {
    send(
            "de-DE",
            "",
            Map.of(
                "motor.1.of",
                "evaporator_fan",
                "motor.1.part",
                "fan 2",
                "motor.1.value",
                "0,9",
                "motor.2.of",
                "evaporator_fan",
                "motor.2.part",
                "fan 3",
                "motor.2.why",
                "no access"))
        .then()
        .statusCode(303);
    assertEquals("fan 2", stored().getString("readings[0].part"));
    assertEquals(0.9, stored().getDouble("readings[0].value"), 1e-9);
    assertEquals("no access", stored().getString("readings[1].notTaken"));
    String form =
        Api.asPlanner().get("/units/" + unit + "/visits/" + number + "/correct").asString();
    assertEquals(true, form.contains("name=\"motor.1.value\" value=\"0.9\""));
    // the rows the other way round: one corrected, one taken back
    send(
            "en",
            seen(),
            Map.of("motor.4.of", "evaporator_fan", "motor.4.part", "fan 2", "motor.4.value", "1.1"))
        .then()
        .statusCode(303);
    assertEquals(1, stored().getList("readings").size());
    assertEquals(1.1, stored().getDouble("readings[0].value"), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "evaporator_fan, , 0.9, ''",
    "evaporator_fan, fan 2, lots, ''",
    "evaporator_fan, fan 2, 0.9, no access",
    "gearbox, fan 2, 0.9, ''"
  })
  void aMotorThatMakesNoSenseIsToldAtItsRow(String of, String part, String value, String why) {
    send(
            "en",
            "",
            Map.of(
                "motor.3.of", of,
                "motor.3.part", part == null ? "" : part,
                "motor.3.value", value,
                "motor.3.why", why))
        .then()
        .statusCode(422)
        .body(
            allOf(
                containsString("id=\"motor.3.value-wrong\""),
                containsString("value=\"" + value + "\"")));
    Api.asPlanner().get("/api/v1/units/" + unit + "/visits/" + number).then().statusCode(404);
  }

  @Test
  void whatIsNotTakenIsStoredWithItsReason() {
    send("en", "", Map.of("why.head_pressure", "port blocked or seized")).then().statusCode(303);
    assertEquals("port blocked or seized", stored().getString("readings[0].notTaken"));
  }

  @Test
  void theSecondOfTwoEditorsIsToldWhatStandsByNow() {
    send("en", "", Map.of("read.box", "37")).then().statusCode(303);
    String both = seen();
    send("en", both, Map.of("read.box", "39")).then().statusCode(303);
    send("en", both, Map.of("read.box", "41", "note", "mine"))
        .then()
        .statusCode(409)
        .body(
            allOf(
                containsString("Somebody else has changed this visit"),
                containsString("Stands by now: <b>39</b>"),
                containsString("value=\"41\""),
                containsString(">mine</textarea>")));
    assertEquals(39, stored().getDouble("readings[0].value"), 1e-9);
    send("en", seen(), Map.of("read.box", "41", "note", "mine")).then().statusCode(303);
    assertEquals(41, stored().getDouble("readings[0].value"), 1e-9);
  }

  @Test
  void aReplyThatNeverArrivedDoesNoHarmToACorrection() {
    send("en", "", Map.of("read.box", "37")).then().statusCode(303);
    String before = seen();
    send("en", before, Map.of("read.box", "39")).then().statusCode(303);
    send("en", before, Map.of("read.box", "39")).then().statusCode(303);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "read.head_pressure | lots",
        "read.head_pressure | 1e9",
        "read.box | 9999",
        "found.condenser_coil | filthy",
        "work | dancing",
        "faults | gremlins",
        "purpose | fun",
        "date | yesterday",
        "date | 2999-01-01",
        "technician | T23456789T23456789T23456789T23456789T23456789T23456789T23456789"
            + "T23456789T23456789T23456789T23456789T23456789T23456789T23456789T23456789"
      })
  void nonsenseIsToldAtItsFieldAndComesBack(String field, String value) {
    Map<String, String> fields = Map.of("note", "still <here>", field, value);
    Response answer =
        field.equals("date")
            ? Api.asPlanner()
                .formParam("number", number)
                .formParams(fields)
                .post("/units/" + unit + "/visits")
            : send("en", "", fields);
    answer
        .then()
        .statusCode(422)
        .body(
            allOf(
                containsString("id=\"" + field + "-wrong\""),
                containsString("still &lt;here&gt;</textarea>")));
    Api.asPlanner().get("/api/v1/units/" + unit + "/visits/" + number).then().statusCode(404);
  }

  @Test
  void aTrialStoresNothing() {
    send("en", "", Map.of("read.ambient", "70", "read.head_pressure", "330", "act", "try"))
        .then()
        .statusCode(200)
        .body(containsString("class=\"say "));
    Api.asPlanner().get("/api/v1/units/" + unit + "/visits/" + number).then().statusCode(404);
  }

  @Test
  void aStrangerStoresNothingAndSeesNothingOfTheFleet() {
    RestAssured.given()
        .formParam("number", number)
        .formParam("date", "2026-05-12")
        .formParam("note", "typed for half an hour")
        .post("/units/" + unit + "/visits")
        .then()
        .statusCode(401)
        .body(
            allOf(
                containsString("Your login has run out"),
                containsString("typed for half an hour"),
                not(containsString(fleet.all().get(5).tag()))));
    Api.asPlanner().get("/api/v1/units/" + unit + "/visits/" + number).then().statusCode(404);
  }

  @Test
  void aLongNoteIsTaken() {
    send("en", "", Map.of("note", "x".repeat(8000))).then().statusCode(303);
    assertEquals(8000, stored().getString("note").length());
    send("en", "", Map.of("note", "x".repeat(8001))).then().statusCode(422);
  }

  @Test
  void aUnitOrVisitThatIsNotThereIsTold() {
    for (String address :
        new String[] {"/units/u999999/visits/new", "/units/" + unit + "/visits/none/correct"}) {
      Api.asPlanner()
          .get(address)
          .then()
          .statusCode(404)
          .contentType(equalTo("text/html;charset=UTF-8"));
    }
  }
}

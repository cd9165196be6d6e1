package coldround.replacement.edge;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class PlansTest {

  private static final Set<Class<?>> LOADED = new HashSet<>();

  @BeforeEach
  void theDemoFleet() throws IOException {
    if (LOADED.add(getClass())) {
      for (String kind : List.of("customers", "sites", "units", "visits", "readings", "faults")) {
        Api.asPlanner()
            .contentType("text/csv")
            .body(Files.readAllBytes(Path.of("demo-data/" + kind + ".csv")))
            .post("/api/v1/imports/" + kind)
            .then()
            .statusCode(200);
      }
    }
  }

  private static ValidatableResponse ask(String body) {
    return Api.asPlanner()
        .contentType("application/json")
        .body(body)
        .post("/api/v1/replacement-plans")
        .then();
  }

  private static String usual(String more) {
    return "{\"customers\": [\"LMC\"], \"asOf\": \"2026-07-01\", \"runs\": 200,"
        + " \"limit\": {\"value\": 40000, \"unit\": \"USD\"}"
        + more
        + "}";
  }

  @Test
  void aPlanIsMadeAndKeptAsMade() {
    var made =
        ask(usual(""))
            .statusCode(201)
            .header("Location", notNullValue())
            .body("years", hasSize(10), "years[0].year", equalTo(2027))
            .body("units.size()", greaterThan(5), "comparison", hasSize(3))
            .body("status", equalTo("proven"), "gap.toDouble()", lessThanOrEqualTo(1e-4))
            .body("units[0].reasons[0].source", notNullValue())
            .body("assumptions.source.flatten()", notNullValue())
            .extract();
    String again = Api.asPlanner().get(made.header("Location")).then().extract().asString();
    assertEquals(made.asString(), again);
  }

  @Test
  void theLimitIsKeptWithWhatIsCarriedOver() {
    List<Float> spend =
        ask(usual(""))
            .statusCode(201)
            .extract()
            .jsonPath()
            .getList("years.replacements.value", Float.class);
    double left = 0;
    for (float year : spend) {
      assertTrue(year <= 40000 + left + 0.01, year + " of " + (40000 + left));
      left += 40000 - year;
    }
  }

  @Test
  void theSameQuestionHasTheSameAnswer() {
    var first = ask(usual("")).extract().jsonPath();
    var again = ask(usual("")).extract().jsonPath();
    assertEquals(first.getList("units"), again.getList("units"));
    assertEquals(first.getList("comparison"), again.getList("comparison"));
  }

  @Test
  void theReportPrintsOnTwoToSixPages() throws IOException {
    String place = ask(usual("")).extract().header("Location");
    byte[] pdf =
        Api.asPlanner()
            .get(place + ".pdf")
            .then()
            .statusCode(200)
            .contentType("application/pdf")
            .extract()
            .asByteArray();
    Files.write(Path.of("target/replacement-plan.pdf"), pdf);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      int pages = document.getNumberOfPages();
      assertTrue(pages >= 2 && pages <= 6, pages + " pages");
      String text = new PDFTextStripper().getText(document);
      assertTrue(text.contains("Larkmeadow Farmstead Cheese Cooperative"), text);
      assertTrue(text.contains("What was assumed"));
    }
    Api.asPlanner()
        .get(place + ".html")
        .then()
        .statusCode(200)
        .contentType(containsString("text/html"))
        .body(containsString("<svg"));
    Api.asPlanner()
        .get(place + ".csv")
        .then()
        .statusCode(200)
        .contentType(containsString("text/csv"))
        .body(containsString("replace_in"));
  }

  @Test
  void aNominalPlanComesToTheSameYearsWithoutLimits() {
    String real = "{\"customers\": [\"LMC\"], \"asOf\": \"2026-07-01\", \"runs\": 2}";
    String nominal =
        "{\"customers\": [\"LMC\"], \"asOf\": \"2026-07-01\", \"runs\": 2, \"basis\": \"nominal\"}";
    assertEquals(
        ask(real).statusCode(201).extract().jsonPath().getList("units.replaceIn"),
        ask(nominal).statusCode(201).extract().jsonPath().getList("units.replaceIn"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "horizon": 0                                          | /horizon
          "horizon": 21                                         | /horizon
          "discountRate": {"value": -200, "unit": "%/a"}        | /discountRate
          "discountRate": {"value": 7, "unit": "USD"}           | /discountRate
          "basis": "guess"                                      | /basis
          "carryOver": 1.5                                      | /carryOver
          "must": [{"unit": "u-none", "by": 2028}]              | /must/0/unit
          "factors": {"price": 0.1}                             | /factors/price
          "factors": {"faults": 5}                              | /factors/faults
          "limit": {"value": -1, "unit": "USD"}                 | /limit
          "firstYear": 1990                                     | /firstYear
          "mustNot": [{"unit": "u-none"}]                       | /mustNot/0/unit
          "runs": 1000000                                       | /runs
          "limits": [{"value": 1, "unit": "USD"}]               | /limits
          """)
  void aBadFieldIsNamed(String field, String at) {
    ask(usual(", " + field))
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors.field", org.hamcrest.Matchers.hasItem(at));
  }

  @ParameterizedTest
  @CsvSource({
    "'{}'",
    "'{\"customers\": [\"NOBODY\"]}'",
    "'{\"customers\": [null]}'",
    "'null'",
    "'[]'"
  })
  void customersMustBeKnown(String body) {
    ask(body).statusCode(400).contentType("application/problem+json");
  }

  @Test
  void aLimitBelowWhatMustBeReplacedIsAConflict() {
    String unit =
        Api.asPlanner()
            .get("/api/v1/units?customer=LMC&limit=1")
            .jsonPath()
            .getString("items[0].id");
    String idle = unit == null ? "" : unit;
    String id = idle.isEmpty() ? firstUnit() : idle;
    ask("{\"customers\": [\"LMC\"], \"limit\": {\"value\": 100, \"unit\": \"USD\"}, \"must\":"
            + " [{\"unit\": \""
            + id
            + "\", \"by\": 2027}], \"firstYear\": 2027}")
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:no-plan"))
        .body("errors[0].field", equalTo("2027"))
        .body("errors[0].message", containsString("raised"));
  }

  @Test
  void dearerUnitsAreReplacedLaterOrNotAtAll() {
    var cheap = ask(usual(", \"factors\": {\"price\": 0.5}")).statusCode(201).extract();
    var dear = ask(usual(", \"factors\": {\"price\": 3}")).statusCode(201).extract();
    assertEquals(3f, dear.jsonPath().getFloat("factors.price"));
    assertTrue(replaced(cheap.jsonPath()) > replaced(dear.jsonPath()));
    String report =
        Api.asPlanner().get(dear.header("Location") + ".html").then().extract().asString();
    assertTrue(report.contains("new units 3.00 times"), report);
  }

  private static long replaced(io.restassured.path.json.JsonPath plan) {
    return plan.getList("units.replaceIn").stream().filter(java.util.Objects::nonNull).count();
  }

  @Test
  void thePageAnswersAndKeepsAReport() {
    String page =
        Api.asPlanner()
            .get("/replacement?customer=LMC&limit=40000&price=120")
            .then()
            .statusCode(200)
            .header("Content-Security-Policy", containsString("script-src 'self'"))
            .body(containsString("new units 1.20 times"), containsString("<svg"))
            .extract()
            .asString();
    assertTrue(page.contains("Year by year"), page);
    String kept =
        Api.asPlanner()
            .redirects()
            .follow(false)
            .formParam("customer", "LMC")
            .formParam("limit", "40000")
            .post("/replacement")
            .then()
            .statusCode(303)
            .extract()
            .header("Location")
            .replaceAll(".*kept=", "");
    Api.asPlanner().get("/api/v1/replacement-plans/" + kept + ".html").then().statusCode(200);
  }

  @ParameterizedTest
  @CsvSource({
    "customer=NOBODY, 400, no customer",
    "customer=LMC&horizon=0, 400, from 1 to 20",
    "customer=LMC&horizon=x, 400, from 1 to 20",
    "customer=LMC&rate=-200, 400, is a rate",
    "customer=LMC&price=x, 400, /factors/price",
    "customer=LMC&limit=-5, 400, /limit"
  })
  void thePageSaysWhatIsWrong(String query, int status, String words) {
    Api.asPlanner()
        .get("/replacement?" + query)
        .then()
        .statusCode(status)
        .contentType(containsString("text/html"))
        .body(containsString(words));
  }

  private static String firstUnit() {
    return ask(usual("")).extract().jsonPath().getString("units[0].unit.id");
  }

  @Test
  void anUnknownPlanIsNotFound() {
    for (String end : List.of("", ".csv", ".pdf", ".html")) {
      Api.asPlanner().get("/api/v1/replacement-plans/none" + end).then().statusCode(404);
    }
  }
}

package coldround.replacement.edge;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.PdfEdges;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
      PdfEdges.check(document, 215.9, 279.4);
      int pages = document.getNumberOfPages();
      assertTrue(pages >= 2 && pages <= 6, pages + " pages");
      String text = new PDFTextStripper().getText(document);
      assertTrue(text.contains("Larkmeadow Farmstead Cheese Cooperative"), text);
      assertTrue(text.contains("What was assumed"));
    }
    byte[] german =
        Api.asPlanner().header("Accept-Language", "de-DE").get(place + ".pdf").asByteArray();
    try (PDDocument document = Loader.loadPDF(german)) {
      PdfEdges.check(document, 210, 297);
    }
    Api.asPlanner()
        .get(place + ".html")
        .then()
        .statusCode(200)
        .contentType(containsString("text/html"))
        .body(containsString("<svg"), containsString("size: Letter"));
    Api.asPlanner()
        .header("Accept-Language", "de-DE")
        .get(place + ".html")
        .then()
        .body(containsString("size: A4"));
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
    ask("{\"customers\": [\"LMC\"], \"asOf\": \"2026-07-01\", " + field + "}")
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors.field", hasItem(at));
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

  // the unit is due two years after the year in which its price is least and the limit lacks most
  @ParameterizedTest
  @CsvSource({"0, 2027", "0, 2029", "1, 2027", "1, 2029", "0.5, 2032"})
  void aLimitBelowWhatMustBeReplacedIsAConflictThatNamesTheUnit(double carryOver, int by) {
    var unit = ask(usual("")).extract().jsonPath();
    String name = unit.getString("units[0].unit.site") + " " + unit.getString("units[0].unit.tag");
    ask("{\"customers\": [\"LMC\"], \"asOf\": \"2026-07-01\", \"firstYear\": 2027,"
            + " \"limit\": {\"value\": 100, \"unit\": \"USD\"}, \"carryOver\": "
            + carryOver
            + ", \"must\": [{\"unit\": \""
            + unit.getString("units[0].unit.id")
            + "\", \"by\": "
            + by
            + "}]}")
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:no-plan"))
        .body("errors", not(empty()))
        .body("errors.message", everyItem(containsString("would have to be raised by")))
        .body("errors.message", hasItem(containsString(name + " (")))
        .body("errors.message", hasItem(containsString("must be replaced by " + by)));
  }

  @Test
  void aUnitThatMustAndMustNotGoIsNamed() {
    String id = firstUnit();
    ask(usual(
            ", \"must\": [{\"unit\": \""
                + id
                + "\", \"by\": 2028}], \"mustNot\": [{\"unit\": \""
                + id
                + "\", \"before\": 2030}]"))
        .statusCode(422)
        .body("errors[0].field", equalTo(id))
        .body("errors[0].message", containsString("must not be replaced before 2030"));
  }

  private static void put(String kind, String rows) {
    Api.asPlanner()
        .contentType("text/csv")
        .body(rows)
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200)
        .body("rows.rejected", equalTo(0));
  }

  @Test
  void aUnitWithoutAPriceThatCanBeUsedIsNamed() {
    put("customers", "customer,name\nNOPRICE,Priced elsewhere\n");
    put("sites", "customer,site,name,jurisdiction\nNOPRICE,A,Shop,US\n");
    put(
        "units",
        "customer,site,unit,kind,replacement_cost [EUR]\nNOPRICE,A,W1,walk-in-cooler,9000\n");
    ask("{\"customers\": [\"NOPRICE\"]}")
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:no-replacement-cost"))
        .body("errors", hasSize(1))
        .body("errors[0].message", containsString("W1: replacement_cost is in EUR"));
  }

  @Test
  void ofAUnitWithoutHistoryIsSaidWhatWasAssumed() {
    put("customers", "customer,name\nNEWCOMER,Nothing known\nBARE,No units\n");
    put("sites", "customer,site,name,jurisdiction\nNEWCOMER,A,Shop,US\n");
    put("units", "customer,site,unit,kind\nNEWCOMER,A,W1,walk-in-cooler\n");
    ask("{\"customers\": [\"NEWCOMER\"], \"runs\": 10}")
        .statusCode(201)
        .body("status", equalTo("proven"))
        .body(
            "units[0].reasons.text",
            hasItems(
                containsString("No record of faults, so the usual rate of its kind is taken"),
                containsString("Age unknown, taken as"),
                containsString("its charge is not on record"),
                containsString("as usual for its kind, its size not being known")));
    ask("{\"customers\": [\"BARE\"]}")
        .statusCode(422)
        .body("type", equalTo("urn:coldround:problem:nothing-to-plan"));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-50, -20, 0, 100})
  void ratesAtTheEndsOfTheirRangeAreAnswered(double rate) {
    ask(usual(", \"discountRate\": {\"value\": " + rate + ", \"unit\": \"%/a\"}"))
        .statusCode(201)
        .body("units.size()", greaterThan(5));
  }

  @Test
  void aMisspeltFieldIsNotPassedOver() {
    ask(usual(", \"limts\": []"))
        .statusCode(400)
        .body("errors[0].field", equalTo("/limts"))
        .body("errors[0].message", containsString("carryOver"));
  }

  /**
   * The example of the manual, asked of the service: the same sentences, whatever the figures are
   * on the day of the test, as a fleet's usual rates of faults change from day to day.
   */
  @Test
  void theManualsExampleIsWhatTheServiceAnswers() throws IOException {
    String manual = Files.readString(Path.of("docs/replacement.md"));
    Matcher request =
        Pattern.compile("POST /api/v1/replacement-plans\n(\\{.*?)\n```", Pattern.DOTALL)
            .matcher(manual);
    assertTrue(request.find(), "no request in the manual");
    String report =
        Api.asPlanner()
            .get(ask(request.group(1)).statusCode(201).extract().header("Location") + ".html")
            .then()
            .extract()
            .asString();
    List<String> quoted = manual.lines().filter(line -> line.startsWith("> ")).toList();
    String sentences = String.join(" ", quoted).replace("> ", "");
    assertTrue(sentences.length() > 100, "the manual quotes nothing");
    for (String sentence : sentences.split("(?<=\\.) ")) {
      assertTrue(figuresOut(report).contains(figuresOut(sentence)), sentence + " not in " + report);
    }
  }

  private static String figuresOut(String text) {
    return text.replaceAll("\\d[\\d,.]*\\d|\\d", "#").replaceAll("\\s+", " ");
  }

  @Test
  void theDescriptionTellsWhatIsAnsweredWithAnExample() {
    String post = "paths.'/api/v1/replacement-plans'.post.";
    String body = "content.'application/json'.";
    Api.asPlanner()
        .get("/q/openapi?format=json")
        .then()
        .statusCode(200)
        .body(post + "responses", not(hasKey("200")))
        .body(post + "responses", hasKey("422"))
        .body(post + "responses.'201'." + body + "schema.'$ref'", endsWith("PlanView"))
        .body(post + "responses.'201'." + body + "example.units[0].reasons", hasSize(1))
        .body(post + "requestBody." + body + "schema.'$ref'", endsWith("PlanRequest"))
        .body(post + "requestBody." + body + "example.customers[0]", equalTo("LMC"))
        .body("components.schemas.PlanView.properties.units", notNullValue());
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
    "customer=NOBODY, 400, This must be one of the customers in the list",
    "customer=LMC&horizon=0, 400, from 1 to 20",
    "customer=LMC&horizon=x, 400, from 1 to 20",
    "customer=LMC&rate=-200, 400, This must be a rate from",
    "customer=LMC&price=x, 400, price-wrong",
    "customer=LMC&limit=-5, 400, limit-wrong"
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

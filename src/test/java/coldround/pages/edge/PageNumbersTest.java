package coldround.pages.edge;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.scoring.FleetLine;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every page as a browser of a language with a decimal comma is given it. */
@QuarkusTest
@TestProfile(DemoStore.class)
class PageNumbersTest {

  // what others wrote, typed or named, and what the browser does not read out
  private static final String OTHERS =
      "(?s)<(textarea|code|pre|option|script|style)\\b.*?</\\1>"
          + "|<(p|span|td) class=\"[^\"]*\\b(?:source|note|theirs)\\b[^\"]*\">.*?</\\2>";
  private static final Pattern POINT = Pattern.compile(".{0,30}\\d\\.\\d.{0,30}");
  private static final String GROUPED = "\\d{1,3}(?:\\.\\d{3})+";
  // laws and books are quoted with the numbers that they have there
  private static final Pattern QUOTED =
      Pattern.compile("CFR|table \\d|(median|mean) \\d+\\.\\d \\(");

  @Inject SampleFleet fleet;

  private static String german(String address) {
    Response answer = Api.asPlanner().header("Accept-Language", "de-DE,de;q=0.9").get(address);
    assertEquals(200, answer.statusCode(), address);
    assertTrue(answer.headers().getValues("Vary").toString().contains("Accept-Language"), address);
    return answer.asString();
  }

  private String address(String address) {
    FleetLine worst = fleet.all().get(0);
    return address.replace("UNIT", worst.unitId());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/?order=due",
        "/?measures=si",
        "/units/UNIT",
        "/units/UNIT?measures=si",
        "/units/UNIT/visits/new",
        "/upkeep",
        "/refrigerants?refrigerant=R-404A&ambient=70&split=30&head=290",
        "/replacement",
        "/rounds",
        "/imports",
        "/accounts"
      })
  void noNumberIsLeftWithAPoint(String address) {
    assertEquals(List.of(), left(german(address(address)), GROUPED + "(?= USD)"));
  }

  /** What is left of other languages in a page of a German reader. */
  private static List<String> left(String page, String amounts) {
    String spoken = String.join("\n", spoken(page));
    String text = page.replaceAll(OTHERS, " ").replaceAll("(?s)<[^>]*>", " ") + spoken;
    return POINT
        .matcher(text.replaceAll(amounts, "an amount"))
        .results()
        .map(found -> found.group())
        .filter(found -> !QUOTED.matcher(found).find())
        .distinct()
        .toList();
  }

  // the customer's report, on the screen and on paper, has amounts without their currency
  @Test
  void aReportHasTheNumbersOfItsReader() throws IOException {
    String report = CustomerPlan.made();
    assertEquals(List.of(), left(german(report + ".html"), GROUPED + "(?!\\d)"));
    String english = Api.asPlanner().get(report + ".html").asString();
    String amount = english.replaceAll("(?s).*<td class=\"n\">(\\d+,\\d{3})</td>.*", "$1");
    assertTrue(amount.matches("\\d+,\\d{3}"), amount);
    Response pdf = Api.asPlanner().header("Accept-Language", "de-DE").get(report + ".pdf");
    try (PDDocument document = Loader.loadPDF(pdf.asByteArray())) {
      String paper = new PDFTextStripper().getText(document);
      assertTrue(paper.contains(amount.replace(',', '.')), amount);
      assertFalse(paper.contains(amount), amount);
    }
  }

  private static List<String> spoken(String page) {
    return Pattern.compile(" aria-label=\"([^\"]*)\"")
        .matcher(page)
        .results()
        .map(found -> found.group(1))
        .toList();
  }

  @Test
  void theSameNumbersAreThereInBothLanguages() {
    String address = address("/units/UNIT");
    String english = Api.asPlanner().get(address).asString();
    String number = english.replaceAll("(?s).*<p class=\"score big\"><b>([\\d.]+)</b>.*", "$1");
    assertTrue(number.contains("."), number);
    assertTrue(german(address).contains("<b>" + number.replace('.', ',') + "</b>"), number);
  }

  @Test
  void programsAreAnsweredInTheirOwnFormat() {
    Api.asPlanner()
        .header("Accept-Language", "de-DE")
        .get("/api/v1/units?limit=1")
        .then()
        .body(containsString("\"score\":"), not(containsString("Accept-Language")));
    double score =
        Api.asPlanner()
            .header("Accept-Language", "de-DE")
            .get("/api/v1/units?limit=1")
            .jsonPath()
            .getDouble("items[0].score");
    assertTrue(score > 0 && score < 100, String.format(Locale.ROOT, "%f", score));
  }

  @Test
  void aNumberOfAFormIsReadBackAsItWasShown() {
    String unit = fleet.all().get(7).unitId();
    String number = "field-" + UUID.randomUUID();
    Map<String, String> fields =
        Map.of("number", number, "date", "2026-05-12", "measures", "us", "read.box", "37,525");
    Api.asPlanner()
        .header("Accept-Language", "de-DE")
        .redirects()
        .follow(false)
        .formParams(fields)
        .post("/units/" + unit + "/visits")
        .then()
        .statusCode(303);
    String form = german("/units/" + unit + "/visits/" + number + "/correct");
    assertTrue(form.contains("name=\"read.box\" value=\"37,525\""));
    String seen = form.replaceAll("(?s).*name=\"seen\" value=\"([^\"]*)\".*", "$1");
    Api.asPlanner()
        .header("Accept-Language", "de-DE")
        .redirects()
        .follow(false)
        .formParams(fields)
        .formParam("seen", seen)
        .formParam("note", "nothing else")
        .post("/units/" + unit + "/visits")
        .then()
        .statusCode(303);
    assertEquals(
        37.525,
        Api.asPlanner()
            .get("/api/v1/units/" + unit + "/visits/" + number)
            .jsonPath()
            .getDouble("readings[0].value"),
        1e-9);
  }
}

package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import coldround.PdfEdges;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import java.net.URL;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Rounds as a dispatcher's screen, a technician's phone and paper show them. */
@QuarkusTest
@TestProfile(DemoStore.class)
class RoundsInBrowserTest {

  private static Browser browser;
  private static boolean looked;
  private static String plan;

  @TestHTTPResource("/")
  URL home;

  @BeforeEach
  void enter() throws Exception {
    if (!looked) {
      looked = true;
      browser = Browser.open().orElse(null);
    }
    assumeTrue(browser != null, "no chromium on this machine");
    if (plan == null) {
      plan = PlannedRounds.plan("\"seconds\": 3").getString("id");
    }
    browser.light("light");
    browser.screen(1280, 900);
    browser.go(home + "enter?token=" + Api.TOKEN);
    browser.complaints();
  }

  @AfterAll
  static void leave() throws Exception {
    if (browser != null) {
      browser.close();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "rounds, rounds, 390, light",
    "rounds, rounds, 1280, dark",
    "round, rounds/PLAN, 390, light",
    "round, rounds/PLAN, 1280, light",
    "round, rounds/PLAN, 1280, dark",
    "sheet, rounds/PLAN/sheet?technician=T1, 390, light",
    "sheet, rounds/PLAN/sheet?technician=T1, 1280, light"
  })
  void aPageFitsItsScreenAndAnybodyCanUseIt(String name, String address, int width, String light)
      throws Exception {
    browser.screen(width, 900);
    browser.light(light);
    browser.go(home + address.replace("PLAN", plan));
    browser.shoot(name + "-" + width + "-" + light);
    assertEquals(List.of(), browser.violations());
    assertEquals(0, browser.overflow());
    assertEquals(List.of(), browser.complaints());
    browser.loaded().forEach(each -> assertTrue(each.startsWith(home.toString()), each));
  }

  @ParameterizedTest
  @CsvSource({"en-US, 215.9, 279.4", "de-DE, 210, 297"})
  void theSheetPrintsOnThePaperOfTheReader(String language, double width, double height)
      throws Exception {
    browser.language(language);
    try {
      browser.go(home + "rounds/" + plan + "/sheet");
      try (PDDocument document = Loader.loadPDF(browser.printed())) {
        PdfEdges.check(document, width, height);
      }
    } finally {
      browser.language("en-US");
    }
  }

  @Test
  void theMapShowsEveryRoundOfTheDayAndTheListEveryStop() {
    browser.go(home + "rounds/" + plan);
    JsonPath read = Api.asPlanner().get("/api/v1/rounds/" + plan).jsonPath();
    int rounds = read.getList("days[0].rounds").size();
    assertEquals(rounds, browser.driver().findElements(By.cssSelector(".map .way")).size());
    assertEquals(rounds, browser.driver().findElements(By.cssSelector("svg.times")).size());
    assertEquals(
        read.getList("days[0].rounds.stops.flatten()").size(),
        browser.driver().findElements(By.cssSelector(".stop-of")).size());
  }

  @Test
  void roundsArePlannedFromThePage() {
    browser.go(home.toString());
    browser.follow(() -> browser.driver().findElement(By.linkText("Rounds")).click());
    By plans = By.cssSelector("form[action='/rounds'] button");
    browser.follow(() -> browser.driver().findElement(plans).click());
    assertFalse(browser.driver().findElement(By.cssSelector(".verdict")).getText().isBlank());
    String address = browser.driver().getCurrentUrl();
    assertTrue(address.contains("/rounds/"), address);
    String id = address.replaceAll(".*/rounds/", "");
    Api.asPlanner().delete("/api/v1/rounds/" + id).then().statusCode(204);
  }

  @ParameterizedTest
  @CsvSource({"390, light", "1280, dark"})
  void aStopIsMovedByKeyboardAloneAfterItsCostIsShown(int width, String light) throws Exception {
    browser.screen(width, 900);
    browser.light(light);
    AllowedMove wish = AllowedMove.in(plan);
    double before = cost();
    ask(wish);
    browser.shoot("move-" + width + "-" + light);
    assertEquals(List.of(), browser.violations());
    assertEquals(0, browser.overflow());
    assertEquals("What it would cost", element("#cost-head").getText());
    double more = number(element(".verdict .pairs dd").getText());
    assertEquals(before, cost(), 1e-9, "nothing is changed by asking");
    press(".ways button", Keys.ENTER);
    assertTrue(browser.driver().getCurrentUrl().contains("/rounds/" + plan + "?day="));
    assertEquals(before + more, cost(), 0.51, "shown in whole dollars");
    assertEquals(List.of(), browser.complaints());
  }

  /** What the move would cost, from the plan on, by keyboard. */
  private void ask(AllowedMove wish) {
    browser.go(home + "rounds/" + plan + "?day=" + wish.from());
    WebElement its =
        browser
            .driver()
            .findElement(By.cssSelector("form.move input[value='" + wish.stop() + "']"))
            .findElement(By.xpath(".."))
            .findElement(By.tagName("button"));
    String which = its.getAttribute("aria-label");
    browser.follow(() -> its.sendKeys(Keys.ENTER));
    assertEquals("Move " + which.replaceAll(".*, ", ""), element("h1").getText());
    choose("#technician", wish.technician());
    choose("#day", wish.day());
    press("form.move-form button", Keys.ENTER);
  }

  private static void choose(String list, String value) {
    List<String> values =
        element(list).findElements(By.tagName("option")).stream()
            .map(option -> option.getAttribute("value"))
            .toList();
    element(list).sendKeys(Keys.HOME);
    for (int i = 0; i < values.indexOf(value); i++) {
      element(list).sendKeys(Keys.ARROW_DOWN);
    }
    assertEquals(value, element(list).getAttribute("value"));
  }

  private static double cost() {
    return Api.asPlanner().get("/api/v1/rounds/" + plan).jsonPath().getDouble("cost.total");
  }

  private static double number(String text) {
    return Double.parseDouble(text.replaceAll("[^0-9.-]", ""));
  }

  private static WebElement element(String selector) {
    return browser.driver().findElement(By.cssSelector(selector));
  }

  private static void press(String selector, Keys key) {
    browser.follow(() -> element(selector).sendKeys(key));
  }

  @Test
  void twoWhoMoveTheSamePlanDoNotOverwriteEachOther() throws Exception {
    AllowedMove wish = AllowedMove.in(plan);
    ask(wish);
    JsonPath read = Api.asPlanner().get("/api/v1/rounds/" + plan).jsonPath();
    int last = read.getList("days").size() - 1;
    String other = read.getString("days[" + last + "].rounds[0].stops[0].id");
    Api.asPlanner()
        .contentType("application/json")
        .body("{\"stop\": \"" + other + "\"}")
        .post("/api/v1/rounds/" + plan + "/moves")
        .then()
        .statusCode(200);
    press(".ways button", Keys.ENTER);
    assertTrue(element("[role=alert]").getText().contains("Somebody else has changed the plan"));
    browser.complaints();
  }

  @Test
  void aMoveThatIsPressedTwiceIsDoneOnce() {
    AllowedMove wish = AllowedMove.in(plan);
    ask(wish);
    Map<String, String> sent =
        browser.driver().findElements(By.cssSelector(".verdict form input")).stream()
            .collect(
                Collectors.toMap(
                    its -> its.getAttribute("name"), its -> its.getDomProperty("value")));
    for (int press = 0; press < 2; press++) {
      Api.asPlanner()
          .redirects()
          .follow(false)
          .formParams(sent)
          .post("/rounds/" + plan + "/moves")
          .then()
          .statusCode(303);
    }
  }

  @Test
  void paperHasNoControls() throws Exception {
    browser.go(home + "rounds/" + plan + "/sheet?technician=T1");
    browser.paper(true);
    browser.screen(794, 1123);
    browser.shoot("sheet-paper");
    boolean controls = browser.shows(".head") || browser.shows(".crumbs");
    browser.paper(false);
    assertFalse(controls);
  }
}

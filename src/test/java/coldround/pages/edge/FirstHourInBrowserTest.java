package coldround.pages.edge;

import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import coldround.fleet.FleetWiping;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.FluentWait;

/** The first hour of a newcomer: the demo fleet there and back, and the first list of cleanings. */
@QuarkusTest
@TestProfile(FirstHourStore.class)
class FirstHourInBrowserTest {

  private static Browser browser;
  private static boolean looked;

  @TempDir Path folder;

  @Inject FleetWiping wiping;

  @TestHTTPResource("/")
  URL home;

  @BeforeEach
  void enter() throws IOException {
    if (!looked) {
      looked = true;
      browser = Browser.open().orElse(null);
    }
    assumeTrue(browser != null, "no chromium on this machine");
    wiping.wipe();
    browser.light("light");
    browser.screen(1280, 900);
    browser.go(home + "enter?token=" + Api.TOKEN);
    browser.complaints();
  }

  @AfterAll
  static void leave() throws IOException {
    if (browser != null) {
      browser.close();
    }
  }

  private static WebElement find(String selector) {
    return browser.driver().findElement(By.cssSelector(selector));
  }

  private void look(String name) throws IOException {
    browser.shoot(name);
    assertEquals(List.of(), browser.violations(), name);
    assertEquals(0, browser.overflow(), name);
    assertEquals(List.of(), browser.complaints(), name);
  }

  /** The page changes by itself while the import goes on. */
  private static void awaitTaken() {
    new FluentWait<>(browser.driver())
        .withTimeout(Duration.ofSeconds(120))
        .pollingEvery(Duration.ofMillis(100))
        .ignoring(WebDriverException.class)
        .until(page -> page.findElement(By.tagName("h1")).getText().endsWith(": taken"));
  }

  private void loadTheDemo() {
    browser.go(home.toString());
    browser.follow(() -> find("form[action='/demo-fleet/load'] button").sendKeys(Keys.ENTER));
    awaitTaken();
  }

  @ParameterizedTest
  @ValueSource(ints = {390, 1280})
  void theDemoFleetIsLoadedAndWipedFromThePage(int width) throws IOException {
    browser.screen(width, 844);
    browser.go(home.toString());
    look("empty-" + width);
    loadTheDemo();
    browser.go(home.toString());
    assertTrue(find(".found").getText().startsWith("89 units"), find(".found").getText());
    browser.go(home + "imports");
    browser.follow(
        () ->
            browser.driver().findElement(By.linkText("Wipe the demo fleet")).sendKeys(Keys.ENTER));
    look("wipe-" + width);
    browser.follow(() -> find("form[action='/demo-fleet/wipe'] button").sendKeys(Keys.ENTER));
    assertEquals("No unit yet", find("h1").getText());
    // pressed twice
    Api.asPlanner().redirects().follow(false).post("/demo-fleet/wipe").then().statusCode(303);
    assertEquals(new FleetWiping.Size(0, 0, 0, 0), wiping.size());
    assertTrue(conditionsEnded() >= 89, "the feed tells of every unit that its condition ended");
  }

  /** Reads the feed from its beginning to its end. */
  private static long conditionsEnded() {
    long ended = 0;
    String after = "";
    List<String> types;
    do {
      JsonPath page = Api.asPlanner().get("/api/v1/feed?limit=500&after={after}", after).jsonPath();
      types = page.getList("items.type");
      ended += types.stream().filter("coldround.condition.ended"::equals).count();
      after = page.getString("next");
    } while (!types.isEmpty());
    return ended;
  }

  @Test
  void whatTheDemoFleetDidNotBringKeepsItFromBeingWiped() {
    loadTheDemo();
    Api.asPlanner()
        .contentType("text/csv")
        .body("customer,name\nOWN,My first customer\n")
        .post("/api/v1/imports/customers")
        .then()
        .statusCode(200);
    Api.asPlanner()
        .post("/demo-fleet/wipe")
        .then()
        .statusCode(409)
        .body(containsString("that the demo fleet did not bring"));
    assertEquals(90, wiping.size().units());
    Api.asPlanner()
        .post("/demo-fleet/load")
        .then()
        .statusCode(409)
        .body(containsString("where there is no other fleet"));
  }

  @ParameterizedTest
  @ValueSource(ints = {390, 1280})
  void fromTheTemplatesToTheFirstListOfDueCleanings(int width) throws IOException {
    browser.screen(width, 844);
    browser.go(home.toString());
    browser.follow(
        () -> browser.driver().findElement(By.linkText("Import customers")).sendKeys(Keys.ENTER));
    fillAndTake("customers", Map.of("customer", "HARBOR", "name", "Harbor Grill"));
    next("Next: sites");
    fillAndTake("sites", Map.of("customer", "HARBOR", "site", "DOCK", "name", "Dock street"));
    next("Next: units");
    fillAndTake(
        "units",
        Map.of(
            "customer",
            "HARBOR",
            "site",
            "DOCK",
            "unit",
            "WIC-1",
            "kind",
            "walk-in-cooler",
            "refrigerant",
            "R-404A",
            "installed",
            "2012-04-30"));
    next("Next: visits");
    fillAndTake(
        "visits",
        Map.of(
            "customer",
            "HARBOR",
            "site",
            "DOCK",
            "unit",
            "WIC-1",
            "visit",
            "1",
            "date",
            LocalDate.now().minusDays(3).toString(),
            "condenser_coil",
            "heavy"));
    look("first-visits-" + width);
    next("See what is due");
    List<String> weeks =
        browser.driver().findElements(By.cssSelector(".week")).stream()
            .map(week -> week.getAttribute("textContent"))
            .toList();
    assertTrue(
        weeks.stream()
            .anyMatch(week -> week.contains("WIC-1") && week.contains("ondenser coil cleaning")),
        weeks.toString());
  }

  private static void next(String label) {
    browser.follow(() -> browser.driver().findElement(By.linkText(label)).sendKeys(Keys.ENTER));
  }

  /** Fills in one row of the template and sends it by the form. */
  private void fillAndTake(String kind, Map<String, String> said) throws IOException {
    String template = Api.asPlanner().get("/imports/templates/" + kind + ".csv").asString();
    String row =
        Stream.of(template.lines().findFirst().orElseThrow().split(","))
            .map(header -> said.getOrDefault(header.replaceAll("\\s*\\[.*", ""), ""))
            .collect(Collectors.joining(","));
    Path list = Files.writeString(folder.resolve(kind + ".csv"), template.strip() + "\n" + row);
    assertEquals(kind, find("#kind").getAttribute("value"));
    find("#file").sendKeys(list.toString());
    browser.follow(() -> find("#drop button").sendKeys(Keys.ENTER));
    browser.follow(() -> find("form[action$=take] button").sendKeys(Keys.ENTER));
    awaitTaken();
    assertEquals("1", find(".gauges div:nth-child(2) dd").getText(), kind);
  }
}

package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.net.URL;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;

/** Forms that are sent with nonsense, sent and come back to, or sent when nobody is logged in. */
@QuarkusTest
@TestProfile(DemoStore.class)
class BackInBrowserTest {

  private static Browser browser;
  private static boolean looked;

  @TestHTTPResource("/")
  URL home;

  @BeforeEach
  void enter() throws IOException {
    if (!looked) {
      looked = true;
      browser = Browser.open().orElse(null);
    }
    assumeTrue(browser != null, "no chromium on this machine");
    browser.screen(390, 844);
    browser.go(home + "enter?token=" + Api.TOKEN);
    browser.driver().executeScript("localStorage.clear(); sessionStorage.clear()");
  }

  @AfterAll
  static void leave() throws IOException {
    if (browser != null) {
      browser.close();
    }
  }

  private String address(String address) {
    return home + address;
  }

  private static WebElement field(String name) {
    return browser.driver().findElement(By.name(name));
  }

  /** As it is shown; a field for a day or a number holds what it cannot show. */
  private static String value(String name) {
    String shown = field(name).getDomProperty("value");
    return shown.isEmpty() ? field(name).getDomAttribute("value") : shown;
  }

  // a browser's own checks are switched off: what the service says is looked at; a day or a number
  // is set as a browser without such fields would send it
  private static void type(String name, String text) {
    browser
        .driver()
        .executeScript(
            "const field = arguments[0]; field.form.noValidate = true;"
                + " if (field.type !== 'search') field.type = 'text';"
                + " field.removeAttribute('maxlength'); field.value = arguments[1];"
                + " field.dispatchEvent(new Event('input', {bubbles: true}))",
            field(name),
            text);
  }

  private static void send(String name) {
    browser.follow(
        () -> browser.driver().executeScript("arguments[0].form.requestSubmit()", field(name)));
  }

  @ParameterizedTest
  @CsvSource({
    "accounts, name, ' ', This must name the person",
    "accounts, expires, never, This must be a day such as",
    "rounds, to, never, This must be a day such as",
    "upkeep, from, never, This must be a day such as",
    "upkeep, until, 2001-01-01, This must lie after",
    "refrigerants, ambient, warm, This must be a number",
    "replacement?customer=LMC, limit, -5, This must be an amount from 0",
    "accounts, expires, 2020-01-01, This must be a day to come",
    "rounds, to, 2020-01-01, This ",
    "replacement?customer=LMC, horizon, 99, This must be a number of years from 1 to",
    "replacement?customer=LMC, price, -1, This must be a number from 25 to 400"
  })
  void nonsenseIsToldAtTheFieldWithWhatWasTyped(String page, String name, String text, String says)
      throws IOException {
    browser.go(address(page));
    type(name, text);
    send(name);
    assertEquals(text.strip(), value(name).strip());
    assertEquals("true", field(name).getAttribute("aria-invalid"), page + ", " + name);
    String told = field(name).getAttribute("aria-describedby");
    List<String> sentences =
        List.of(told.split(" ")).stream()
            .map(id -> browser.driver().findElement(By.id(id)).getText())
            .toList();
    String wanted = says == null ? "" : says;
    assertTrue(
        sentences.stream().anyMatch(s -> !s.isBlank() && s.contains(wanted)), sentences + "");
    assertEquals(List.of(), browser.violations());
    assertEquals(0, browser.overflow());
    browser.complaints();
  }

  @ParameterizedTest
  @CsvSource({
    "'', q, zeppelin",
    "upkeep, from, 2025-11-25",
    "replacement?customer=LMC, limit, 12345",
    "rounds, to, 2020-05-04",
    "accounts, name, Portal of the north",
    "accounts, expires, 2020-05-31"
  })
  void whoGoesBackFindsWhatWasTyped(String page, String name, String text) {
    browser.go(address(page));
    type(name, text);
    send(name);
    browser.driver().navigate().back();
    browser.await("document.querySelector('[name=\"" + name + "\"]') !== null");
    browser.await("document.querySelector('[name=\"" + name + "\"]').value === '" + text + "'");
    assertEquals(text, value(name));
  }

  @Test
  void whatOneAccountTypedIsNothingToTheNext() {
    browser.go(address("accounts"));
    type("name", " ");
    type("expires", "2020-05-31");
    send("name");
    String other =
        Api.asPlanner()
            .contentType("application/json")
            .body("{\"name\": \"Second office\", \"role\": \"planner\"}")
            .post("/api/v1/accounts")
            .jsonPath()
            .getString("token");
    browser.go(home + "enter?token=" + other);
    browser.follow(() -> browser.driver().executeScript("history.go(-2)"));
    assertEquals("Accounts", browser.driver().findElement(By.tagName("h1")).getText());
    assertEquals("", value("expires"));
    type("expires", "2020-05-31");
    browser.follow(
        () -> browser.driver().findElement(By.cssSelector("form[action='/leave'] button")).click());
    Object kept =
        browser
            .driver()
            .executeScript(
                "return Object.keys(sessionStorage).filter(key =>"
                    + " key.startsWith('coldround.typed')).length");
    assertEquals(0L, kept);
  }

  @Test
  void aButtonThatIsPressedTwiceSendsOnce() {
    browser.go(address("accounts"));
    type("name", "Twice in a hurry");
    browser.follow(
        () ->
            browser
                .driver()
                .executeScript(
                    "const form = arguments[0].form; form.requestSubmit(); form.requestSubmit()",
                    field("name")));
    String said = browser.driver().findElement(By.tagName("main")).getText();
    assertTrue(said.contains("The token of Twice in a hurry"), said);
    List<String> names =
        Api.asPlanner().get("/api/v1/accounts?limit=500").jsonPath().getList("items.name");
    assertEquals(1, names.stream().filter("Twice in a hurry"::equals).count());
  }

  /** Forms that only ask are asked again by their address; the plan follows while it is typed. */
  @ParameterizedTest
  @CsvSource({"'', q, zeppelin & co, true", "replacement?customer=LMC, limit, 12345, false"})
  void whoAsksWhenTheLoginHasRunOutIsAnsweredAfterEntering(
      String page, String name, String text, boolean pressed) {
    browser.go(address(page));
    browser.driver().manage().deleteAllCookies();
    if (pressed) {
      type(name, text);
      send(name);
    } else {
      browser.follow(() -> type(name, text));
    }
    assertTrue(browser.driver().getCurrentUrl().startsWith(address("enter?to=")));
    browser.driver().findElement(By.name("token")).sendKeys(Api.TOKEN);
    browser.follow(() -> browser.driver().findElement(By.tagName("button")).click());
    assertTrue(browser.driver().getCurrentUrl().startsWith(address(page).replaceAll("\\?.*", "")));
    assertEquals(text, value(name));
    assertEquals(List.of(), browser.complaints());
  }

  @ParameterizedTest
  @CsvSource({"rounds, from, never", "accounts, name, Portal of the south"})
  void whoseLoginRanOutIsToldAndEntersBesideAndSendsAgain(String page, String name, String text) {
    browser.go(address(page));
    type(name, text);
    browser.driver().manage().deleteAllCookies();
    send(name);
    String said = browser.driver().findElement(By.tagName("main")).getText();
    assertTrue(said.contains("login has run out"), said);
    String expired = browser.driver().getWindowHandle();
    browser.driver().switchTo().newWindow(WindowType.TAB);
    browser.go(home + "enter?token=" + Api.TOKEN);
    browser.driver().close();
    browser.driver().switchTo().window(expired);
    browser.follow(() -> browser.driver().navigate().refresh());
    assertTrue(browser.driver().getPageSource().contains(text));
  }
}

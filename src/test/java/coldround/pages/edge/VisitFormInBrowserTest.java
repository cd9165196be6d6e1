package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import coldround.scoring.FleetLine;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.FluentWait;

/** A visit as it is entered with a phone in a glove, with and without a connection. */
@QuarkusTest
@TestProfile(DemoStore.class)
class VisitFormInBrowserTest {

  private static Browser browser;
  private static boolean looked;
  private static Wire wire;

  @Inject SampleFleet fleet;

  @TestHTTPResource("/")
  URL service;

  private String home;
  private FleetLine unit;

  @BeforeEach
  void enter() throws IOException {
    if (!looked) {
      looked = true;
      browser = Browser.open().orElse(null);
    }
    assumeTrue(browser != null, "no chromium on this machine");
    // one with amps on its plate, a cut-out and a record
    unit =
        fleet.all().stream()
            .filter(
                line -> line.kind().equals("walk-in-cooler") && line.refrigerant().equals("R-404A"))
            .findFirst()
            .orElseThrow();
    wire = wire == null ? new Wire(service) : wire;
    home = wire.home();
    wire.cut(false);
    browser.light("light");
    browser.screen(390, 844);
    browser.go(home + "enter?token=" + Api.TOKEN);
    browser.driver().executeScript("localStorage.clear()");
    browser.complaints();
  }

  @AfterAll
  static void leave() throws IOException {
    if (browser != null) {
      browser.close();
    }
    if (wire != null) {
      wire.close();
    }
  }

  private String form() {
    return home + "units/" + unit.unitId() + "/visits/new";
  }

  private int visits() {
    return Api.asPlanner()
        .get("/units/" + unit.unitId())
        .asString()
        .split("Visit field-", -1)
        .length;
  }

  private static WebElement find(String selector) {
    return browser.driver().findElement(By.cssSelector(selector));
  }

  private static void type(String name, String text) {
    WebElement field = browser.driver().findElement(By.name(name));
    field.clear();
    field.sendKeys(text);
  }

  private static void until(String script) {
    new FluentWait<>(browser.driver())
        .withTimeout(Duration.ofSeconds(60))
        .pollingEvery(Duration.ofMillis(50))
        .ignoring(WebDriverException.class)
        .until(page -> (Boolean) page.executeScript("return " + script));
  }

  private static void send() {
    browser.driver().executeScript("document.querySelector('.send button[value=send]').click()");
  }

  @ParameterizedTest
  @CsvSource({"390, 844, light", "390, 844, dark", "1280, 900, light", "320, 800, light"})
  void theFormFitsItsScreenAndAnybodyCanUseIt(int width, int height, String light)
      throws IOException {
    browser.screen(width, height);
    browser.light(light);
    browser.go(form());
    browser.shoot("visit-" + width + "-" + light);
    check();
    for (WebElement each :
        browser
            .driver()
            .findElements(
                By.cssSelector("main input:not([type=hidden]), main button, main summary"))) {
      if (each.isDisplayed()) {
        assertTrue(each.getSize().height >= 44, each.getAttribute("name") + each.getSize());
      }
    }
  }

  private void check() throws IOException {
    assertEquals(List.of(), browser.violations());
    assertEquals(0, browser.overflow());
    assertEquals(List.of(), browser.complaints());
    browser.loaded().forEach(each -> assertTrue(each.startsWith(home), each));
  }

  @Test
  void theReadingsAreAnsweredWhileTheyAreTypedAndWhenTheyAreSent() throws IOException {
    browser.go(form());
    type("read.ambient", "70");
    type("read.head_pressure", "330" + Keys.TAB);
    until("document.querySelector('#says-head_pressure .say') !== null");
    assertTrue(
        find("#says-head_pressure .grade").isDisplayed(), find("#says-head_pressure").getText());
    browser.shoot("visit-told-390");
    browser.follow(VisitFormInBrowserTest::send);
    assertTrue(browser.driver().getCurrentUrl().contains("/visits/field-"));
    assertEquals("The visit is stored", find("h1").getText());
    browser.shoot("visit-stored-390");
    check();
    browser.screen(1280, 900);
    browser.shoot("visit-stored-1280");
  }

  @Test
  void nonsenseIsToldAtTheFieldAndNothingIsLost() throws IOException {
    browser.go(form());
    type("read.head_pressure", "a lot");
    type("read.suction_pressure", "99999");
    type("note", "ladder is <loose>");
    send();
    until("document.querySelector('[aria-invalid]') !== null");
    assertEquals("a lot", find("[name='read.head_pressure']").getAttribute("value"));
    assertEquals("ladder is <loose>", find("[name=note]").getAttribute("value"));
    assertFalse(find("[id='read.head_pressure-wrong']").getText().isBlank());
    assertFalse(find("[id='read.suction_pressure-wrong']").getText().isBlank());
    browser.shoot("visit-wrong-390");
    browser.complaints();
    check();
    type("read.head_pressure", "228");
    type("read.suction_pressure", "34");
    browser.follow(VisitFormInBrowserTest::send);
    assertEquals("The visit is stored", find("h1").getText());
  }

  @Test
  void aVisitWithoutConnectionIsKeptAndArrivesOnce() throws IOException {
    browser.go(form());
    int before = visits();
    type("read.ambient", "71");
    type("read.head_pressure", "231");
    wire.cut(true);
    send();
    until("document.querySelector('.waiting') !== null && !document.querySelector('form.entry')");
    browser.shoot("visit-kept-390");
    assertEquals(before, visits());
    wire.cut(false);
    browser.driver().executeScript("window.dispatchEvent(new Event('online'))");
    until("document.querySelector('.waiting').textContent.includes('has arrived')");
    assertEquals(before + 1, visits());
    browser.follow(() -> find(".waiting a").click());
    assertEquals("The visit is stored", find("h1").getText());
    browser.complaints();
    browser.go(home);
    assertEquals(List.of(), browser.driver().findElements(By.cssSelector(".waiting")));
  }

  @Test
  void theFormOpensWithoutConnectionOnceItsUnitWasLookedAt() throws IOException {
    browser.go(home + "units/" + unit.unitId());
    until("navigator.serviceWorker.controller !== null");
    browser.go(home + "units/" + unit.unitId());
    browser
        .driver()
        .executeAsyncScript(
            "const done = arguments[0];"
                + "const look = async () => (await caches.match('/units/"
                + unit.unitId()
                + "/visits/new')) ? done(true) : setTimeout(look, 50); look();");
    wire.cut(true);
    browser.go(form());
    String first = find("[name=number]").getAttribute("value");
    browser.go(form());
    assertFalse(first.equals(find("[name=number]").getAttribute("value")), "a number of its own");
    browser.go(home + "?q=walk");
    assertEquals("No connection", find("h1").getText());
    browser.shoot("offline-390");
    assertEquals(List.of(), browser.violations());
    for (int width : new int[] {320, 390, 1280}) {
      browser.screen(width, 844);
      assertEquals(0, browser.overflow(), "at " + width);
    }
    wire.cut(false);
    browser.complaints();
  }

  @Test
  void whatWasTypedIsBackWhenThePageIs() {
    browser.go(form());
    type("read.box", "37.5");
    // at once, before the pause after which it is kept anyway
    browser.go(home);
    browser.go(form());
    assertEquals("37.5", find("[name='read.box']").getAttribute("value"));
  }

  @Test
  void sendingTwiceAndGoingBackStoreOneVisit() {
    browser.go(form());
    int before = visits();
    type("read.box", "36");
    browser.follow(
        () ->
            browser
                .driver()
                .executeScript(
                    "const b = document.querySelector('.send button[value=send]');"
                        + " b.click(); b.click();"));
    assertEquals(before + 1, visits());
    browser.follow(() -> browser.driver().navigate().back());
    until("document.getElementById('told').textContent.includes('has arrived')");
    assertEquals("", find("[name='read.box']").getDomProperty("value"));
    assertNotEquals("", find("[name='number']").getDomProperty("value"));
  }

  @Test
  void anExpiredLoginLosesNothing() {
    browser.go(form());
    int before = visits();
    type("read.box", "38");
    browser.driver().manage().deleteAllCookies();
    send();
    until("document.querySelector('.waiting') !== null");
    assertTrue(find(".waiting").getText().contains("login has run out"));
    browser.go(home + "enter?token=" + Api.TOKEN);
    until("document.querySelector('.waiting')?.textContent.includes('has arrived')");
    assertEquals(before + 1, visits());
    browser.complaints();
  }

  @Test
  void aVisitIsEnteredByKeyboardAlone() {
    browser.screen(1280, 900);
    browser.go(form());
    while (!"read.box".equals(browser.driver().switchTo().activeElement().getAttribute("name"))) {
      press(Keys.TAB);
    }
    press("35");
    browser.follow(() -> press(Keys.ENTER));
    assertTrue(find("main").getText().contains("35"), "the reading");
  }

  private static void press(CharSequence... keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }
}

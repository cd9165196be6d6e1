package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
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
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.FluentWait;

/** The roof calculator on a roof without a connection says what the service says. */
@QuarkusTest
@TestProfile(DemoStore.class)
class RoofInBrowserTest {

  private static Browser browser;
  private static Wire wire;
  private static boolean looked;

  @TestHTTPResource("/")
  URL service;

  @BeforeEach
  void enter() throws IOException {
    if (!looked) {
      looked = true;
      browser = Browser.open().orElse(null);
    }
    assumeTrue(browser != null, "no chromium on this machine");
    wire = wire == null ? new Wire(service) : wire;
    wire.cut(false);
    browser.screen(390, 844);
    browser.go(wire.home() + "enter?token=" + Api.TOKEN);
    browser.complaints();
  }

  @AfterAll
  static void leave() throws IOException {
    if (browser != null) {
      browser.close();
      wire.close();
    }
  }

  private static void until(String script) {
    new FluentWait<>(browser.driver())
        .withTimeout(Duration.ofSeconds(60))
        .pollingEvery(Duration.ofMillis(50))
        .ignoring(WebDriverException.class)
        .until(page -> (Boolean) page.executeScript("return " + script));
  }

  // what is shown, without the folds that the service adds
  private static List<String> shown() {
    return browser
        .driver()
        .findElements(
            By.cssSelector("#answer h2, #answer dt, #answer dd, #answer .said, #answer li"))
        .stream()
        .filter(each -> each.isDisplayed())
        .map(each -> each.getText().strip())
        .toList();
  }

  @ParameterizedTest
  @CsvSource({
    "R-404A, 70, 30, 290, 0, us",
    "r404a, 70, 30, 225, 0, us",
    "HFC-134a, 95, 25, 190, 5000, us",
    "R-22, 50, 30, 150, 0, us",
    "R-410A, 82.5, 20, 300, '', us",
    "R-448A, 70, 30, 262, 0, us",
    "R-407C, 24, 15, 1500, 1200, si",
    "R-290, 30, 12, 1700, 0, si",
    "R-404A, 70, 30, 400, 0, us",
    "R-404A, 70, 30, 130, 0, us",
    "R-404A, 70, 30, '', 0, us"
  })
  void thePhoneSaysWhatTheServiceSays(
      String gas, String ambient, String split, String head, String height, String measures)
      throws IOException {
    String asked =
        "refrigerants?refrigerant=%s&ambient=%s&split=%s&head=%s&elevation=%s&measures=%s"
            .formatted(gas, ambient, split, head, height, measures);
    browser.go(wire.home() + asked);
    List<String> service = shown();
    assertTrue(service.size() >= 4, service.toString());
    browser.driver().executeScript("document.querySelector('#answer').replaceChildren()");
    until("document.querySelector('form.roof').dataset.ready === 'yes'");
    browser
        .driver()
        .executeScript(
            "document.querySelector('form.roof [name=ambient]')"
                + ".dispatchEvent(new Event('input', {bubbles: true}))");
    assertEquals(service, shown());
  }

  @ParameterizedTest
  @CsvSource({"ambient, warm", "split, -3", "head, 9e9", "elevation, 99999", "refrigerant, R-9999"})
  void whatIsNonsenseIsToldAtItsFieldAndMendedThere(String name, String text) throws IOException {
    browser.go(wire.home() + "refrigerants?refrigerant=R-404A&ambient=70&split=30&head=290");
    until("document.querySelector('form.roof').dataset.ready === 'yes'");
    String right = type(name, text);
    assertEquals("true", field(name).getAttribute("aria-invalid"));
    String told = browser.driver().findElement(By.id(name + "-wrong")).getText();
    assertFalse(told.isBlank());
    assertEquals(List.of(), browser.violations());
    type(name, right);
    assertNull(field(name).getAttribute("aria-invalid"));
    until("document.querySelectorAll('#answer h2').length === 2");
  }

  private static WebElement field(String name) {
    return browser.driver().findElement(By.name(name));
  }

  private static String type(String name, String text) {
    return (String)
        browser
            .driver()
            .executeScript(
                "const [field, text] = arguments; const was = field.value; field.value = text;"
                    + " field.dispatchEvent(new Event('input', {bubbles: true})); return was",
                field(name),
                text);
  }

  @Test
  void onceLoadedItWorksWithoutConnection() throws IOException {
    browser.go(wire.home() + "refrigerants");
    until("navigator.serviceWorker.controller !== null");
    browser
        .driver()
        .executeAsyncScript(
            "const done = arguments[0]; const look = async () => (await"
                + " caches.match('/refrigerants')) && (await caches.match('/refrigerants/curves'))"
                + " ? done(true) : setTimeout(look, 50); look();");
    wire.cut(true);
    browser.go(wire.home() + "refrigerants?refrigerant=R-404A&ambient=70&split=30&head=330");
    until("document.querySelectorAll('#answer h2').length === 2");
    browser.shoot("roof-offline-390");
    assertEquals(List.of(), browser.violations());
    assertEquals(0, browser.overflow());
    wire.cut(false);
    browser.complaints();
  }
}

package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** A file on its way in, as it is dropped, looked at, mended and taken in a browser. */
@QuarkusTest
@TestProfile(DemoStore.class)
class ImportInBrowserTest {

  private static Browser browser;
  private static boolean looked;

  @TempDir Path folder;

  @TestHTTPResource("/")
  URL home;

  @BeforeEach
  void enter() throws IOException {
    if (!looked) {
      looked = true;
      browser = Browser.open().orElse(null);
    }
    assumeTrue(browser != null, "no chromium on this machine");
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

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static WebElement find(String selector) {
    return browser.driver().findElement(By.cssSelector(selector));
  }

  /** Goes on by the tabulator until that element has the focus. */
  private static void tabTo(String selector) {
    WebElement wanted = find(selector);
    for (int i = 0; i < 200; i++) {
      if (wanted.equals(browser.driver().switchTo().activeElement())) {
        return;
      }
      press(Keys.TAB);
    }
    throw new AssertionError("the keyboard does not reach " + selector);
  }

  private static void press(CharSequence... keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  // letter by letter a list forgets those before after a second, which a slow machine may take
  private static void choose(String list, String value) {
    List<String> values =
        find(list).findElements(By.tagName("option")).stream()
            .map(option -> option.getAttribute("value"))
            .toList();
    press(Keys.HOME);
    for (int i = 0; i < values.indexOf(value); i++) {
      press(Keys.ARROW_DOWN);
    }
    assertEquals(value, find(list).getAttribute("value"));
  }

  private void look(String name) throws IOException {
    browser.shoot(name);
    assertEquals(List.of(), browser.violations(), name);
    assertEquals(0, browser.overflow(), name);
    assertEquals(List.of(), browser.complaints(), name);
    browser.loaded().forEach(each -> assertTrue(each.startsWith(home.toString()), each));
  }

  @ParameterizedTest
  @CsvSource({"390, light", "390, dark", "1280, light", "1280, dark"})
  void aFileIsLookedAtMendedSavedAndTakenByKeyboardAlone(int width, String light)
      throws IOException {
    browser.screen(width, 844);
    browser.light(light);
    String shot = "-" + width + "-" + light;
    String code = "IMP" + width + light;
    Path list =
        file(
            "north office.csv",
            "customer;name;Zzz Quux\n" + code + ";Import & Sons;by phone\n;Nobody;no code\n");
    browser.go(home + "imports");
    look("import" + shot);
    tabTo("#kind");
    choose("#kind", "customers");
    find("#file").sendKeys(list.toString());
    tabTo("#drop button");
    browser.follow(() -> press(Keys.ENTER));
    assertEquals("north office.csv", find("h1").getText());
    assertEquals("1", find(".gauges div:nth-child(5) dd").getText());
    look("import-file" + shot);
    tabTo("#column-2");
    choose("#column-2", "note");
    tabTo("#name");
    press("office-" + width + light);
    tabTo("button[value=save]");
    browser.follow(() -> press(Keys.ENTER));
    assertTrue(find(".calm").getText().contains("office-" + width + light));
    assertTrue(find(".wide-table").getText().contains("by phone"));
    look("import-saved" + shot);
    tabTo("form[action$=take] button");
    browser.follow(() -> press(Keys.ENTER));
    assertEquals("Customers: taken", find("h1").getText());
    look("import-taken" + shot);
    String rejected = find("a[download]").getAttribute("href");
    String rows = Api.asPlanner().get(rejected).asString();
    assertTrue(rows.contains("Nobody") && rows.contains("problem"), rows);
    String stored = Api.asPlanner().get("/api/v1/exports/customers.csv").asString();
    assertTrue(stored.contains(code) && stored.contains("by phone"), stored);
  }

  @Test
  void aDroppedFileIsSent() {
    browser.go(home + "imports?kind=customers");
    browser.follow(
        () ->
            browser
                .driver()
                .executeScript(
                    "const put = new DataTransfer();put.items.add(new File(['customer,name\\n"
                        + "DROP,Dropped'],"
                        + " 'dropped.csv'));document.getElementById('drop').dispatchEvent(new"
                        + " DragEvent('drop', {dataTransfer: put, bubbles: true, cancelable:"
                        + " true}));"));
    assertEquals("dropped.csv", find("h1").getText());
    assertEquals("1", find(".gauges div:nth-child(2) dd").getText());
  }

  @ParameterizedTest
  @CsvSource({"empty.csv, '', true", "picture.csv, PNG, true", "letter.csv, Dear all, false"})
  void aFileThatIsNoListIsRefusedInASentence(String name, String text, boolean unreadable)
      throws IOException {
    byte[] bytes =
        text.equals("PNG")
            ? new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13, 0, 1, 2, 3}
            : text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    Path file = Files.write(folder.resolve(name), bytes);
    browser.go(home + "imports?kind=units");
    find("#file").sendKeys(file.toString());
    browser.follow(() -> find("#drop button").click());
    String said = find("[role=alert]").getText();
    assertTrue(said.contains("taken") && said.length() > 40, said);
    assertTrue(browser.driver().findElements(By.cssSelector("form[action$=take]")).isEmpty());
    assertFalse(said.contains("Exception"), said);
    if (unreadable) {
      assertEquals("true", find("#file").getAttribute("aria-invalid"));
      String why = find("#file-wrong").getText();
      assertTrue(why.contains("was not read") && !why.contains("Exception"), why);
    }
    assertEquals(List.of(), browser.violations());
    browser.shoot("import-refused-" + name.replace(".csv", ""));
  }
}

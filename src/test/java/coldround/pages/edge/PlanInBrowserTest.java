package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Api;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
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
import org.openqa.selenium.support.ui.FluentWait;

/** The budget as it is talked over with a customer, on a screen and on a phone. */
@QuarkusTest
@TestProfile(DemoStore.class)
class PlanInBrowserTest {

  private static Browser browser;
  private static boolean looked;

  @TestHTTPResource("/")
  URL home;

  @BeforeEach
  void enter() throws Exception {
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
  static void leave() throws Exception {
    if (browser != null) {
      browser.close();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "plan-empty, '', 390, light",
    "plan, ?customer=LMC&limit=40000, 390, light",
    "plan, ?customer=LMC&limit=40000, 1280, light",
    "plan, ?customer=LMC&limit=40000, 1280, dark"
  })
  void thePageFitsItsScreenAndAnybodyCanUseIt(String name, String query, int width, String light)
      throws Exception {
    browser.screen(width, 900);
    browser.light(light);
    browser.go(home + "replacement" + query);
    browser.shoot(name + "-" + width + "-" + light);
    assertEquals(List.of(), browser.violations());
    assertEquals(0, browser.overflow());
    assertEquals(List.of(), browser.complaints());
  }

  @Test
  void theAnswerFollowsTheKeysWithoutAButton() {
    browser.go(home + "replacement?customer=LMC&limit=40000");
    var price = browser.driver().findElement(By.id("price"));
    price.sendKeys(Keys.ARROW_UP, Keys.ARROW_UP);
    new FluentWait<>(browser.driver())
        .withTimeout(Duration.ofSeconds(30))
        .pollingEvery(Duration.ofMillis(20))
        .until(
            page -> page.findElement(By.id("answer")).getText().contains("new units 1.10 times"));
    assertTrue(browser.driver().getCurrentUrl().contains("price=110"));
  }
}

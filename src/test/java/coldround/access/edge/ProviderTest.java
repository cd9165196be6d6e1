package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldround.Logged;
import coldround.pages.edge.Browser;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.net.URL;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.jose4j.jwt.JwtClaims;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.FluentWait;

/** Persons who log in at a provider of OpenID Connect that is really asked. */
@QuarkusTest
@TestProfile(WithProvider.class)
class ProviderTest {

  @TestHTTPResource("/")
  URL home;

  private String email;

  @BeforeEach
  void aPersonOfItsOwn() {
    email = "kim-" + UUID.randomUUID() + "@contractor.example";
    OpenIdProvider.honest(email);
  }

  private static JsonPath account(String role, String login) {
    return TwoCustomers.account(role, ",'login':'" + login + "'");
  }

  /** A browser as far as it matters here: it goes where it is sent, and has cookies. */
  private static final class Visitor {
    private String state = "";
    private Map<String, String> cookies = Map.of();

    /** Where the provider sends back to. */
    String sentBack() {
      Response begun = given().redirects().follow(false).get("/enter/provider");
      assertEquals(302, begun.statusCode(), begun.asString());
      cookies = begun.getCookies();
      state = begun.getDetailedCookies().asList().get(0).toString();
      Response asked =
          given()
              .redirects()
              .follow(false)
              .urlEncodingEnabled(false)
              .get(begun.getHeader("Location"));
      assertEquals(302, asked.statusCode(), asked.asString());
      return asked.getHeader("Location");
    }

    Response back(String address) {
      return given()
          .redirects()
          .follow(false)
          .urlEncodingEnabled(false)
          .cookies(cookies)
          .get(address);
    }
  }

  private static Response loggedIn() {
    Visitor visitor = new Visitor();
    return visitor.back(visitor.sentBack());
  }

  private static Response page(String key, String address) {
    return given().redirects().follow(false).cookie("coldround", key).get(address);
  }

  @Test
  void whoIsKnownGetsASessionOfOursWithTheRoleOfTheAccount() {
    account("scheduler", email);
    // what the provider says of roles counts for nothing
    OpenIdProvider.PERSON.put("groups", List.of("planner"));
    OpenIdProvider.PERSON.put("realm_access", Map.of("roles", List.of("planner")));
    OpenIdProvider.PERSON.put("email", email.toUpperCase(java.util.Locale.ROOT));
    Visitor visitor = new Visitor();
    String back = visitor.sentBack();
    assertTrue(
        visitor.state.contains("HttpOnly") && visitor.state.contains("Path=/enter/provider"),
        visitor.state);
    Response entered = visitor.back(back);
    entered
        .then()
        .statusCode(200)
        .header("Cache-Control", containsString("no-store"))
        .body(containsString("0;url=/upkeep"));
    String cookie =
        entered.getHeaders().getValues("Set-Cookie").stream()
            .filter(its -> its.startsWith("coldround="))
            .findFirst()
            .orElseThrow();
    assertTrue(
        cookie.contains("HttpOnly")
            && cookie.contains("SameSite=Strict")
            && cookie.contains("Max-Age=43200"),
        cookie.substring(cookie.indexOf(';')));
    String key = entered.getCookie("coldround");
    page(key, "/upkeep").then().statusCode(200);
    page(key, "/accounts").then().statusCode(403);
    // nothing of the provider's stays with the browser
    entered.getDetailedCookies().asList().stream()
        .filter(its -> its.getName().startsWith("q_"))
        .forEach(its -> assertEquals(0, its.getMaxAge(), its.getName()));
    // a form of another page does not count
    given()
        .cookie("coldround", key)
        .header("Origin", "http://elsewhere.example")
        .formParam("name", "Forged")
        .post("/accounts")
        .then()
        .statusCode(401);
    // the answer of the provider opens once
    visitor.back(back).then().statusCode(401);
  }

  private static final Map<String, Consumer<JwtClaims>> BENT =
      Map.of(
          "issuer", claims -> claims.setIssuer("https://elsewhere.example"),
          "audience", claims -> claims.setAudience("another-client"),
          "expired",
              claims -> {
                claims.setIssuedAt(OpenIdProvider.secondsAgo(700));
                claims.setExpirationTime(OpenIdProvider.secondsAgo(300));
              },
          "nonce", claims -> claims.setClaim("nonce", "of-another-log-in"),
          "no nonce", claims -> claims.unsetClaim("nonce"),
          "no end", claims -> claims.unsetClaim("exp"),
          "key", claims -> OpenIdProvider.foreignKey = true);

  @ParameterizedTest
  @ValueSource(strings = {"issuer", "audience", "expired", "nonce", "no nonce", "no end", "key"})
  void whatTheProviderDidNotSayForUsNowOpensNothing(String wrong) {
    account("planner", email);
    OpenIdProvider.bent = BENT.get(wrong);
    Response refused = loggedIn();
    refused
        .then()
        .statusCode(401)
        .contentType("text/html")
        .body(containsString("does not hold"), containsString("href=\"/enter/provider\""));
    assertEquals(null, refused.getCookie("coldround"));
    assertFalse(refused.asString().contains("Exception"));
  }

  @Test
  void aCodeThatSomebodyElseWasGivenOpensNothing() {
    account("planner", email);
    String stolen = new Visitor().sentBack().replaceAll(".*code=([^&]+).*", "$1");
    Visitor thief = new Visitor();
    String own = thief.sentBack();
    // the provider knows whose it is by the verifier (RFC 7636)
    Response injected = thief.back(own.replaceAll("code=[^&]+", "code=" + stolen));
    injected.then().statusCode(401);
    // and an answer to a question that this browser has not asked begins anew
    given()
        .redirects()
        .follow(false)
        .urlEncodingEnabled(false)
        .get(new Visitor().sentBack())
        .then()
        .statusCode(302)
        .header("Location", containsString("/authorize?"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "nobody here | no account here has that log-in. Ask a planner",
        "not verified | did not say &#39;email&#39; of you, or had not verified it",
        "no address | did not say &#39;email&#39; of you",
        "revoked | is revoked. Ask a planner",
        "taken away | no account here has that log-in"
      })
  void whoHasNoOpenAccountIsToldWhomToAsk(String who, String says) {
    if (!who.equals("nobody here")) {
      String id = account("scheduler", email).getString("id");
      if (who.equals("revoked")) {
        asPlanner().post("/api/v1/accounts/" + id + "/revoke").then().statusCode(200);
      } else if (who.equals("taken away")) {
        asPlanner()
            .contentType("application/json")
            .body("{\"login\": \"\"}")
            .put("/api/v1/accounts/" + id + "/login")
            .then()
            .statusCode(200);
      }
    }
    if (who.equals("not verified")) {
      OpenIdProvider.PERSON.put("email_verified", false);
    } else if (who.equals("no address")) {
      OpenIdProvider.PERSON.remove("email");
    }
    Response refused = loggedIn();
    refused.then().statusCode(403).contentType("text/html").body(containsString(says));
    assertEquals(null, refused.getCookie("coldround"));
  }

  @Test
  void whatTheProviderGivesOpensNothingButTheWayIn() {
    account("planner", email);
    OpenIdProvider.SECRETS.clear();
    Visitor visitor = new Visitor();
    visitor.back(visitor.sentBack()).then().statusCode(200);
    String idToken =
        OpenIdProvider.SECRETS.stream()
            .filter(its -> its.startsWith("ey"))
            .findFirst()
            .orElseThrow();
    given().auth().preemptive().oauth2(idToken).get("/api/v1/units").then().statusCode(401);
    given()
        .redirects()
        .follow(false)
        .cookie("q_session", idToken)
        .get("/accounts")
        .then()
        .statusCode(303)
        .header("Location", endsWith("/enter"));
  }

  @Test
  void aRefusalAndAFaultOfTheProviderAreToldWithoutItsWords() {
    OpenIdProvider.denied = "access_denied";
    String away = loggedIn().then().statusCode(302).extract().header("Location");
    given()
        .urlEncodingEnabled(false)
        .get(away)
        .then()
        .statusCode(200)
        .body(
            containsString("You were not let in where you log in"),
            not(containsString("No entry")));
    OpenIdProvider.honest(email);
    OpenIdProvider.tokenFault = 500;
    loggedIn().then().statusCode(401).body(containsString("does not hold"));
  }

  @Test
  void leavingEndsTheSessionAndTellsWhereTheOtherOneEnds() {
    String id = account("scheduler", email).getString("id");
    String key = loggedIn().getCookie("coldround");
    page(key, "/upkeep").then().statusCode(200);
    Response left = given().redirects().follow(false).cookie("coldround", key).post("/leave");
    left.then().statusCode(303).header("Location", endsWith("/enter?left=yes"));
    page(key, "/upkeep").then().statusCode(303);
    given()
        .get("/enter?left=yes")
        .then()
        .body(containsString("/end?client_id=" + OpenIdProvider.CLIENT));
    // one whose log-in is changed is out as well
    String again = loggedIn().getCookie("coldround");
    page(again, "/upkeep").then().statusCode(200);
    asPlanner()
        .formParam("login", "other-" + email)
        .post("/accounts/" + id + "/login")
        .then()
        .statusCode(200)
        .body(containsString("Logs in as other-" + email));
    page(again, "/upkeep").then().statusCode(303);
    // what two write at once is not lost, and what cannot be is told at its field
    asPlanner()
        .formParam("login", "third-" + email)
        .formParam("seen", "as it was before")
        .post("/accounts/" + id + "/login")
        .then()
        .statusCode(412)
        .body(containsString("This account was changed meanwhile"))
        .body(containsString("value=\"third-" + email + "\""));
    asPlanner()
        .formParam("login", "x".repeat(256))
        .post("/accounts/" + id + "/login")
        .then()
        .statusCode(400)
        .body(containsString("aria-describedby=\"login-" + id + "-wrong\""));
  }

  @Test
  void aTokenOpensThePagesAsBefore() {
    Response entered =
        given().redirects().follow(false).formParam("token", coldround.Api.TOKEN).post("/enter");
    entered.then().statusCode(303).header("Location", endsWith("/"));
    page(entered.getCookie("coldround"), "/accounts")
        .then()
        .statusCode(200)
        .body(containsString("Logs in with Harbour House as"));
    page(entered.getCookie("coldround"), "/enter/provider").then().statusCode(303);
    asPlanner().get("/api/v1/accounts").then().statusCode(200);
    given().get("/api/v1/accounts").then().statusCode(401);
  }

  @Test
  void nothingOfALogInIsLogged() {
    account("scheduler", email);
    OpenIdProvider.SECRETS.clear();
    try (Logged logged = new Logged()) {
      Response entered = loggedIn();
      entered.then().statusCode(200);
      OpenIdProvider.bent = BENT.get("audience");
      loggedIn().then().statusCode(401);
      assertTrue(logged.tells("does not hold"), "the log was listened to");
      List<String> secrets = new ArrayList<>(OpenIdProvider.SECRETS);
      secrets.add(OpenIdProvider.SECRET);
      secrets.add(entered.getCookie("coldround"));
      assertEquals(List.of(), logged.giveAway(secrets));
    }
  }

  @Test
  void aRealBrowserComesBackFromAnotherSiteAndIsIn() throws Exception {
    account("planner", email);
    Browser browser = Browser.open().orElse(null);
    assumeTrue(browser != null, "no chromium on this machine");
    try (browser) {
      browser.go("http://localhost:" + home.getPort() + "/accounts");
      browser.driver().findElement(By.linkText("Log in with Harbour House")).click();
      new FluentWait<>(browser.driver())
          .withTimeout(Duration.ofSeconds(30))
          .until(driver -> !driver.findElements(By.linkText("Accounts")).isEmpty());
      browser.go("http://localhost:" + home.getPort() + "/accounts");
      assertEquals("Accounts · Coldround", browser.driver().getTitle());
    }
  }
}

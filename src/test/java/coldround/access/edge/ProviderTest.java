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

import coldround.Api;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
    ProviderVisitor visitor = new ProviderVisitor();
    String back = visitor.sentBack();
    assertTrue(
        visitor.state().contains("HttpOnly") && visitor.state().contains("Path=/enter/provider"),
        visitor.state());
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
    Response refused = ProviderVisitor.loggedIn();
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
    String stolen = new ProviderVisitor().sentBack().replaceAll(".*code=([^&]+).*", "$1");
    ProviderVisitor thief = new ProviderVisitor();
    String own = thief.sentBack();
    // the provider knows whose it is by the verifier (RFC 7636)
    Response injected = thief.back(own.replaceAll("code=[^&]+", "code=" + stolen));
    injected.then().statusCode(401);
    // and an answer to a question that this browser has not asked begins anew
    given()
        .redirects()
        .follow(false)
        .urlEncodingEnabled(false)
        .get(new ProviderVisitor().sentBack())
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
    Response refused = ProviderVisitor.loggedIn();
    refused.then().statusCode(403).contentType("text/html").body(containsString(says));
    assertEquals(null, refused.getCookie("coldround"));
  }

  @Test
  void whatTheProviderGivesOpensNothingButTheWayIn() {
    account("planner", email);
    OpenIdProvider.SECRETS.clear();
    ProviderVisitor visitor = new ProviderVisitor();
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
        .header("Location", endsWith("/enter?to=%2Faccounts"));
  }

  @Test
  void aRefusalAndAFaultOfTheProviderAreToldWithoutItsWords() {
    OpenIdProvider.denied = "access_denied";
    String away = ProviderVisitor.loggedIn().then().statusCode(302).extract().header("Location");
    given()
        .urlEncodingEnabled(false)
        .get(away)
        .then()
        .statusCode(200)
        .body(
            containsString("You were not let in where you log in"),
            not(containsString("No entry")));
  }

  /** What a token endpoint says when it cannot or will not, as RFC 6749, 5.2, has it or not. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "500 | server_error | 503 | does not answer | a fault of its own",
        "503 |  | 503 | does not answer | a fault of its own",
        "401 | invalid_client | 503 | does not answer | look at the client and its secret",
        "400 | invalid_grant | 401 | does not hold | does not hold (invalid_grant)"
      })
  void aTokenEndpointThatFailsIsToldAsWhatItIs(
      int fault, String error, int status, String page, String line) {
    OpenIdProvider.tokenFault = fault;
    OpenIdProvider.tokenError = error == null ? "" : error;
    try (Logged logged = new Logged()) {
      ProviderVisitor.loggedIn()
          .then()
          .statusCode(status)
          .contentType("text/html")
          .body(containsString(page), containsString("href=\"/enter/provider\""));
      assertTrue(logged.tells(line), line);
      assertEquals(List.of(), logged.giveAway("of nobody's business"));
      assertEquals(List.of(), logged.traces());
    }
  }

  @Test
  void leavingEndsTheSessionAndTellsWhereTheOtherOneEnds() {
    String id = account("scheduler", email).getString("id");
    String key = ProviderVisitor.loggedIn().getCookie("coldround");
    page(key, "/upkeep").then().statusCode(200);
    Response left = given().redirects().follow(false).cookie("coldround", key).post("/leave");
    left.then().statusCode(303).header("Location", endsWith("/enter?left=yes"));
    page(key, "/upkeep").then().statusCode(303);
    given()
        .get("/enter?left=yes")
        .then()
        .body(containsString("/end?client_id=" + OpenIdProvider.CLIENT));
    // one whose log-in is changed is out as well
    String again = ProviderVisitor.loggedIn().getCookie("coldround");
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
  void whatWasAskedBeforeTheLogInIsAnsweredAfterIt() {
    account("planner", email);
    String asked = "/refrigerants?refrigerant=R-404A&ambient=35%2C5&split=30";
    String wayIn = Api.wayIn(asked);
    Matcher link =
        Pattern.compile("href=\"(/enter/provider[^\"]*)\"")
            .matcher(given().urlEncodingEnabled(false).get(wayIn).asString());
    assertTrue(link.find());
    ProviderVisitor visitor = new ProviderVisitor();
    Response entered = visitor.back(visitor.sentBack(link.group(1)));
    entered
        .then()
        .statusCode(200)
        .body(containsString("0;url=" + asked.replace("&", "&amp;") + "\""));
    // it is told once: the next log-in without one leads home
    assertEquals(0, entered.getDetailedCookie("coldround-to").getMaxAge());
    // and one that was begun and left does not lead the next one away
    visitor.sentBack(link.group(1));
    visitor.back(visitor.sentBack()).then().statusCode(200).body(containsString("0;url=/\""));
    // who made a cookie up is led home too
    given()
        .cookie("coldround-to", "%2F%2Felsewhere.example")
        .get("/enter?error=denied")
        .then()
        .body(not(containsString("elsewhere")));
  }

  @Test
  void aRefusalOfTheProviderKeepsWhatWasAsked() {
    OpenIdProvider.denied = "access_denied";
    ProviderVisitor visitor = new ProviderVisitor();
    String back = visitor.sentBack("/enter/provider?to=%2Fupkeep%3Fweek%3D2026-W20");
    String refused = visitor.back(back).then().statusCode(302).extract().header("Location");
    visitor
        .back(refused)
        .then()
        .statusCode(200)
        .body(
            containsString("name=\"to\" value=\"/upkeep?week=2026-W20\""),
            containsString("href=\"/enter/provider?to=%2Fupkeep%3Fweek%3D2026-W20\""));
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

  /** Nor is what it says of the person, when what it says does not hold. */
  @ParameterizedTest
  @CsvSource({
    "issuer, its issuer is not this provider",
    "audience, its audience is not this client",
    "expired, it has expired",
    "nonce, a claim such as the nonce is missing or another",
    "no nonce, a claim such as the nonce is missing or another",
    "no end, it says no end",
    "key, its signature is wrong"
  })
  void nothingOfALogInIsLoggedButWhyItFailed(String wrong, String why) {
    account("scheduler", email);
    OpenIdProvider.SECRETS.clear();
    try (Logged logged = new Logged()) {
      Response entered = ProviderVisitor.loggedIn();
      entered.then().statusCode(200);
      OpenIdProvider.bent = BENT.get(wrong);
      ProviderVisitor.loggedIn().then().statusCode(401);
      assertTrue(logged.tells(why), why);
      List<String> secrets = new ArrayList<>(OpenIdProvider.SECRETS);
      secrets.add(OpenIdProvider.SECRET);
      secrets.add(entered.getCookie("coldround"));
      secrets.add(email);
      secrets.add((String) OpenIdProvider.PERSON.get("sub"));
      assertEquals(List.of(), logged.giveAway(secrets));
    }
  }

  @Test
  void aRealBrowserComesBackFromAnotherSiteAndIsIn() throws Exception {
    account("planner", email);
    Browser browser = Browser.open().orElse(null);
    assumeTrue(browser != null, "no chromium on this machine");
    try (browser) {
      // with what was asked before, although it comes back from another site
      browser.go("http://localhost:" + home.getPort() + "/upkeep?task=survey");
      browser.driver().findElement(By.linkText("Log in with Harbour House")).click();
      new FluentWait<>(browser.driver())
          .withTimeout(Duration.ofSeconds(30))
          .until(driver -> !driver.findElements(By.linkText("Accounts")).isEmpty());
      assertTrue(browser.driver().getCurrentUrl().endsWith("/upkeep?task=survey"));
      browser.go("http://localhost:" + home.getPort() + "/accounts");
      assertEquals("Accounts · Coldround", browser.driver().getTitle());
    }
  }
}

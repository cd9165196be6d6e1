package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.net.URL;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Page sessions of each role: where they begin, what the menu has, and what forms count. */
@QuarkusTest
class SessionsTest {

  @TestHTTPResource URL service;

  private static String token(String role) {
    String more = "";
    if (role.equals("customer")) {
      list("customers", "customer,name\nSESSCO,Session Grocers\n");
      more = ",'customer':'SESSCO'";
    } else if (role.equals("technician")) {
      list("technicians", "technician,name\nSESSTECH,Session Hand\n");
      more = ",'technician':'SESSTECH'";
    }
    return TwoCustomers.account(role, more).getString("token");
  }

  private static void list(String kind, String text) {
    asPlanner().contentType("text/csv").body(text).post("/api/v1/imports/" + kind);
  }

  private static Response entered(String token) {
    return given().redirects().follow(false).formParam("token", token).post("/enter");
  }

  private static RequestSpecification with(String key) {
    return given().redirects().follow(false).cookie("coldround", key);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "planner | / | Fleet,Upkeep,Rounds,Replacement,Import,Head pressure,Accounts",
        "technician | /rounds | Rounds,Head pressure",
        "customer | / | Fleet,Replacement,Head pressure",
        "scheduler | /upkeep | Upkeep,Head pressure"
      })
  void eachRoleBeginsWhereItsWorkIsAndFindsInTheMenuWhatItMayOpen(
      String role, String home, String menu) {
    Response entered = entered(token(role));
    entered.then().statusCode(303).header("Location", endsWith(home));
    String cookie = entered.getHeader("Set-Cookie");
    assertTrue(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "cookie");
    String key = entered.getCookie("coldround");
    String page = with(key).get(home).then().statusCode(200).extract().asString();
    String nav = page.substring(page.indexOf("<nav aria-label=\"Main\">"), page.indexOf("</nav>"));
    Matcher links = Pattern.compile("href=\"([^\"]+)\">([^<]+)<").matcher(nav);
    StringBuilder found = new StringBuilder();
    while (links.find()) {
      found.append(found.isEmpty() ? "" : ",").append(links.group(2));
      with(key).get(links.group(1)).then().statusCode(200);
    }
    assertEquals(menu, found.toString());
    if (!home.equals("/")) {
      with(key).get("/").then().statusCode(303).header("Location", endsWith(home));
    }
    if (!role.equals("planner")) {
      with(key)
          .get("/accounts")
          .then()
          .statusCode(403)
          .contentType("text/html")
          .body(containsString("The role of your account may not do this"));
    }
    with(key).post("/leave").then().statusCode(303);
    String wayIn = home.equals("/") ? "/enter" : "/enter?to=" + home.replace("/", "%2F");
    with(key).get(home).then().statusCode(303).header("Location", endsWith(wayIn));
  }

  /** Forms that ask, links, and what only looks like a page of ours. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/refrigerants?refrigerant=R-404A&ambient=35%2C5&split=30&head= | 200",
        "/?q=Lindgren+%26+Co&order=score | 200",
        "/replacement?customer=NOBODY&limit=25%2C000 | 400",
        "/units/unknown | 404"
      })
  void whatWasAskedIsAnsweredAfterLoggingIn(String asked, int status) {
    String wayIn = Api.wayIn(asked);
    String to = hidden(given().urlEncodingEnabled(false).get(wayIn).asString());
    assertEquals(asked, to);
    // a token that nobody has does not lose it
    String again =
        given().formParam("token", "mistyped").formParam("to", to).post("/enter").asString();
    assertEquals(asked, hidden(again));
    Response entered =
        given()
            .redirects()
            .follow(false)
            .formParam("token", token("planner"))
            .formParam("to", to)
            .post("/enter");
    entered.then().statusCode(303).header("Location", endsWith(service.getPort() + asked));
    String key = entered.getCookie("coldround");
    with(key).urlEncodingEnabled(false).get(asked).then().statusCode(status);
    // who has entered in another window is there already
    with(key)
        .urlEncodingEnabled(false)
        .get(wayIn)
        .then()
        .statusCode(303)
        .header("Location", endsWith(service.getPort() + asked));
  }

  private static String hidden(String page) {
    Matcher field = Pattern.compile("name=\"to\" value=\"([^\"]*)\"").matcher(page);
    return field.find() ? field.group(1).replace("&amp;", "&") : "";
  }

  @ParameterizedTest
  @CsvSource({
    "//elsewhere.example/",
    "https://elsewhere.example/",
    "/\\elsewhere.example",
    "/enter",
    "/api/v1/units",
    "/%0d%0aSet-Cookie:x"
  })
  void aPlaceThatIsNoPageOfOursLeadsHome(String to) {
    assertEquals("", hidden(given().queryParam("to", to).get("/enter").asString()));
    given()
        .redirects()
        .follow(false)
        .formParam("token", token("scheduler"))
        .formParam("to", to)
        .post("/enter")
        .then()
        .statusCode(303)
        .header("Location", endsWith(service.getPort() + "/upkeep"));
  }

  @Test
  void aFormCountsOnlyFromOurOwnPages() {
    String key = entered(token("planner")).getCookie("coldround");
    String own = "http://" + service.getHost() + ":" + service.getPort();
    for (String origin : List.of("http://elsewhere.example", "null", "http://localhost.evil")) {
      form(key, origin, "Forged").then().statusCode(401);
      given()
          .header("Origin", origin)
          .formParam("token", token("scheduler"))
          .post("/enter")
          .then()
          .statusCode(403);
    }
    with(key)
        .formParam("name", "Forged")
        .formParam("role", "planner")
        .post("/accounts")
        .then()
        .statusCode(401);
    form(key, own, "Meant")
        .then()
        .statusCode(200)
        .header("Cache-Control", containsString("no-store"))
        .body(containsString("The token of Meant"));
    String accounts = asPlanner().queryParam("limit", 500).get("/api/v1/accounts").asString();
    assertFalse(accounts.contains("Forged"));
  }

  private static Response form(String key, String origin, String name) {
    return with(key)
        .header("Origin", origin)
        .formParam("name", name)
        .formParam("role", "scheduler")
        .post("/accounts");
  }

  @Test
  void thePageOfAccountsMakesRenewsAndRevokes() {
    String made =
        asPlanner()
            .formParam("name", "Van <1>")
            .formParam("role", "scheduler")
            .formParam("customer", "left over from another role")
            .formParam("expires", "2098-12-31")
            .post("/accounts")
            .then()
            .statusCode(200)
            .body(containsString("The token of Van &lt;1&gt;"))
            .extract()
            .asString();
    Matcher token = Pattern.compile("class=\"token\">([^<]+)<").matcher(made);
    assertTrue(token.find());
    String id =
        asPlanner()
            .get("/api/v1/accounts")
            .jsonPath()
            .getString("items.find { it.name == 'Van <1>' }.id");
    given().auth().preemptive().oauth2(token.group(1)).get("/api/v1/feed").then().statusCode(200);
    asPlanner()
        .get("/accounts")
        .then()
        .body(containsString("Van &lt;1&gt;"), not(containsString(token.group(1))));
    asPlanner()
        .post("/accounts/" + id + "/renew")
        .then()
        .statusCode(200)
        .body(containsString("shown this once"));
    asPlanner()
        .formParam("seen", "as it was before")
        .post("/accounts/" + id + "/renew")
        .then()
        .statusCode(412)
        .body(containsString("This account was changed meanwhile"))
        .body(not(containsString("shown this once")));
    asPlanner()
        .post("/accounts/" + id + "/revoke")
        .then()
        .statusCode(200)
        .body(containsString("is revoked"));
    asPlanner()
        .formParam("name", "")
        .formParam("role", "boss")
        .post("/accounts")
        .then()
        .statusCode(400)
        .body(containsString("This must name the person or program"));
    asPlanner().get("/accounts?after=rubbish!").then().statusCode(400);
  }
}

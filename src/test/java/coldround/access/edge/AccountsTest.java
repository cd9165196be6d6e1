package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.access.Secret;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Accounts, their tokens and page sessions, from the first day to the last. */
@QuarkusTest
class AccountsTest {

  private static final String ACCOUNTS = "/api/v1/accounts";

  @Inject KnownSecrets known;

  private static JsonPath scheduler() {
    return TwoCustomers.account("scheduler", "");
  }

  private static ValidatableResponse feed(String token) {
    return given().auth().preemptive().oauth2(token).get("/api/v1/feed").then();
  }

  private static Response post(String address, String json) {
    return asPlanner().contentType("application/json").body(json.replace('\'', '"')).post(address);
  }

  private static String enter(String token) {
    Response entered = given().redirects().follow(false).formParam("token", token).post("/enter");
    assertEquals(303, entered.statusCode());
    return entered.getCookie("coldround");
  }

  private static int page(String key) {
    return given().redirects().follow(false).cookie("coldround", key).get("/upkeep").statusCode();
  }

  @Test
  void aTokenIsToldOnceAndOnlyItsHashIsKept() {
    Response made = post(ACCOUNTS, "{'name': 'Dispatch', 'role': 'scheduler'}");
    made.then()
        .statusCode(201)
        .header("Cache-Control", "no-store")
        .body("token", matchesPattern("cr_[A-Za-z0-9_-]{43}"))
        .body("state", equalTo("valid"))
        .body("lastUsed", nullValue());
    String token = made.jsonPath().getString("token");
    String id = made.jsonPath().getString("id");
    assertTrue(token.startsWith(made.jsonPath().getString("tokenPrefix")));
    asPlanner()
        .get(ACCOUNTS + "/" + id)
        .then()
        .statusCode(200)
        .body("token", nullValue())
        .body(not(containsString(token)));
    asPlanner().get(ACCOUNTS).then().body(not(containsString(token)));
    AccountRow row = row(id);
    assertEquals(new Secret(token).hash(), row.tokenHash);
    assertTrue(row.expires.isAfter(Instant.now().plusSeconds(364L * 86400)));
  }

  private static AccountRow row(String id) {
    return QuarkusTransaction.requiringNew().call(() -> AccountRow.findById(id));
  }

  @Test
  void theLastUseIsWrittenAtMostOnceAMinute() {
    JsonPath made = scheduler();
    String id = made.getString("id");
    feed(made.getString("token")).statusCode(200);
    Instant first = row(id).lastUsed;
    assertTrue(first != null);
    known.forget();
    feed(made.getString("token")).statusCode(200);
    assertEquals(first, row(id).lastUsed);
    QuarkusTransaction.requiringNew()
        .run(() -> AccountRow.update("lastUsed = ?1 where id = ?2", first.minusSeconds(61), id));
    known.forget();
    feed(made.getString("token")).statusCode(200);
    assertFalse(row(id).lastUsed.isBefore(first));
  }

  @Test
  void whatIsRevokedEndsAtOnceWithItsSessions() {
    JsonPath made = scheduler();
    String token = made.getString("token");
    String key = enter(token);
    feed(token).statusCode(200);
    assertEquals(200, page(key));
    for (int i = 0; i < 2; i++) {
      post(ACCOUNTS + "/" + made.getString("id") + "/revoke", "")
          .then()
          .statusCode(200)
          .body("state", equalTo("revoked"));
    }
    feed(token)
        .statusCode(401)
        .header(
            "WWW-Authenticate",
            allOf(containsString("Bearer error=\"invalid_token\""), containsString("revoked")))
        .body("detail", containsString("revoked"));
    assertEquals(303, page(key));
    given()
        .formParam("token", token)
        .post("/enter")
        .then()
        .statusCode(401)
        .body(containsString("This token is revoked"));
  }

  @Test
  void aNewTokenTakesThePlaceOfTheOldAndOfARevokedOne() {
    JsonPath made = scheduler();
    String address = ACCOUNTS + "/" + made.getString("id");
    String key = enter(made.getString("token"));
    Response renewed = post(address + "/renew", "{'expires': '2099-01-01T00:00:00Z'}");
    renewed.then().statusCode(200).body("expires", equalTo("2099-01-01T00:00:00Z"));
    feed(made.getString("token")).statusCode(401);
    assertEquals(303, page(key));
    feed(renewed.jsonPath().getString("token")).statusCode(200);
    post(address + "/revoke", "");
    String again = post(address + "/renew", "").jsonPath().getString("token");
    feed(again).statusCode(200);
  }

  @Test
  void theLogInOfAPersonIsOneAccountsAloneAndIsNoted() {
    String login = "Kim-" + java.util.UUID.randomUUID() + "@contractor.example";
    JsonPath first =
        post(ACCOUNTS, "{'name': 'Kim', 'role': 'scheduler', 'login': '" + login + "'}").jsonPath();
    assertEquals(login, first.getString("login"));
    post(
            ACCOUNTS,
            "{'name': 'Another', 'role': 'scheduler', 'login': '" + login.toLowerCase() + "'}")
        .then()
        .statusCode(400)
        .body("errors[0].field", equalTo("/login"))
        .body("errors[0].message", containsString("another account"));
    String second = scheduler().getString("id");
    put(second, "{'login': '" + login + "'}").then().statusCode(400);
    put(second, "{'login': '" + "x".repeat(256) + "'}").then().statusCode(400);
    String key = enter(first.getString("token"));
    assertEquals(200, page(key));
    // the same again changes nothing; another ends what is open
    put(first.getString("id"), "{'login': '" + login + "'}").then().statusCode(200);
    assertEquals(200, page(key));
    put(first.getString("id"), "{'login': ''}").then().statusCode(200).body("login", nullValue());
    assertEquals(303, page(key));
    feed(first.getString("token")).statusCode(200);
    put(second, "{'login': '" + login + "'}").then().statusCode(200).body("login", equalTo(login));
    asPlanner()
        .get("/api/v1/audit?limit=20")
        .then()
        .body("items.action", org.hamcrest.Matchers.hasItem("log-in changed"))
        .body(containsString("logs in as " + login));
    put("nobody", "{'login': 'a'}").then().statusCode(404);
  }

  private static Response put(String id, String json) {
    return asPlanner()
        .contentType("application/json")
        .body(json.replace('\'', '"'))
        .put(ACCOUNTS + "/" + id + "/login");
  }

  @Test
  void anExpiredTokenIsToldFromAnUnknownOne() {
    JsonPath made = scheduler();
    String key = enter(made.getString("token"));
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                AccountRow.update(
                    "expires = ?1 where id = ?2",
                    Instant.now().minusSeconds(1),
                    made.getString("id")));
    known.forget();
    feed(made.getString("token"))
        .statusCode(401)
        .contentType("application/problem+json")
        .header("WWW-Authenticate", containsString("expired"));
    feed("nobody-has-this-one")
        .statusCode(401)
        .header("WWW-Authenticate", containsString("Nobody has this token"));
    assertEquals(303, page(key));
    asPlanner()
        .get(ACCOUNTS + "/" + made.getString("id"))
        .then()
        .body("state", equalTo("expired"), "lastUsed", notNullValue());
  }

  @Test
  void theLastPlannerStays() {
    List<String> others =
        asPlanner()
            .queryParam("limit", 500)
            .get(ACCOUNTS)
            .jsonPath()
            .getList("items.findAll { it.role == 'planner' && it.id != 'planner' }.id");
    others.forEach(id -> post(ACCOUNTS + "/" + id + "/revoke", "").then().statusCode(200));
    post(ACCOUNTS + "/planner/revoke", "")
        .then()
        .statusCode(409)
        .body("detail", containsString("last planner"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | /name",
        "{'name': ' ', 'role': 'planner'} | /name",
        "{'name': 'x'} | /role",
        "{'name': 'x', 'role': 'boss'} | /role",
        "{'name': 'x', 'role': 'customer'} | /customer",
        "{'name': 'x', 'role': 'customer', 'customer': 'NOSUCHCO'} | /customer",
        "{'name': 'x', 'role': 'planner', 'customer': 'NOSUCHCO'} | /customer",
        "{'name': 'x', 'role': 'technician'} | /technician",
        "{'name': 'x', 'role': 'scheduler', 'technician': 'T1'} | /technician",
        "{'name': 'x', 'role': 'planner', 'expires': 'soon'} | /expires",
        "{'name': 'x', 'role': 'planner', 'expires': '2020-01-01T00:00:00Z'} | /expires",
        "{'name': 'x', 'role': 'planner', 'expires': '+999999999-01-01T00:00:00Z'} | /expires",
        "{'name': 'x', 'role': 'planner', 'token': 'mine'} | /token"
      })
  void aWrongFieldIsNamed(String json, String field) {
    post(ACCOUNTS, json)
        .then()
        .statusCode(400)
        .contentType("application/problem+json")
        .body("errors[0].field", equalTo(field));
  }

  @ParameterizedTest
  @CsvSource({"get,''", "post,/renew", "post,/revoke"})
  void anUnknownAccountIsNotFound(String method, String what) {
    asPlanner()
        .contentType("application/json")
        .request(method.toUpperCase(java.util.Locale.ROOT), ACCOUNTS + "/none" + what)
        .then()
        .statusCode(404);
  }
}

package coldround.access.edge;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.access.Secret;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class AccessTest {

  @Inject Accounts accounts;

  @Test
  void aProgramWithoutTokenIsAskedForOne() {
    given()
        .get("/api/v1/units")
        .then()
        .statusCode(401)
        .contentType("application/problem+json")
        .header("WWW-Authenticate", startsWith("Bearer"))
        .body("type", equalTo("urn:coldround:problem:not-known"))
        .body("status", equalTo(401));
  }

  @ParameterizedTest
  @ValueSource(strings = {"Bearer wrong", "Bearer", "Bearer ", "Basic eDp5", "Bearer \u00e9"})
  void aWrongTokenIsRefused(String header) {
    given().header("Authorization", header).get("/api/v1/units").then().statusCode(401);
  }

  @Test
  void aVisitorIsShownTheWayIn() {
    given()
        .redirects()
        .follow(false)
        .get("/")
        .then()
        .statusCode(303)
        .header("Location", containsString("/enter"));
    given().get("/enter").then().statusCode(200).body(containsString("Your token"));
  }

  @Test
  void theLinkOfTheFirstStartOpensThePagesUntilLeaving() {
    Response entered =
        given().redirects().follow(false).queryParam("token", Api.TOKEN).get("/enter");
    assertTrue(entered.statusCode() == 303, entered.statusLine());
    String cookie = entered.getHeader("Set-Cookie");
    assertTrue(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), cookie);
    String key = entered.getCookie("coldround");
    assertTrue(accounts.bySession(new Secret(key)).opens().isPresent());

    given()
        .cookie("coldround", key)
        .header("Origin", "http://elsewhere.example")
        .contentType("text/csv")
        .body("customer\nC1\n")
        .post("/api/v1/imports/customers")
        .then()
        .statusCode(401);

    given()
        .cookie("coldround", key)
        .redirects()
        .follow(false)
        .post("/leave")
        .then()
        .statusCode(303);
    assertFalse(accounts.bySession(new Secret(key)).opens().isPresent());
  }

  @Test
  void aWrongTokenInTheFormIsSaidSo() {
    given()
        .formParam("token", "wrong")
        .post("/enter")
        .then()
        .statusCode(401)
        .body(containsString("No account has this token"));
  }

  @Test
  void anUnknownAddressIsAProblemToo() {
    Api.asPlanner()
        .get("/api/v1/nowhere")
        .then()
        .statusCode(404)
        .contentType("application/problem+json");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/api/v1/subscriptions/%25/secret/a;b",
        "/api/v1/units/%25;b",
        "/api/v1/units;a/%25",
        "/units/%25;b"
      })
  void nothingIsAtAnAddressWithASemicolon(String address) {
    Api.put("customers", "customer,name\nSEMI,Semi\n");
    Map<String, String> roles =
        Map.of("planner", "", "scheduler", "", "customer", ",'customer':'SEMI'");
    roles.forEach(
        (role, more) ->
            given()
                .urlEncodingEnabled(false)
                .auth()
                .preemptive()
                .oauth2(TwoCustomers.account(role, more).getString("token"))
                .get(address)
                .then()
                .statusCode(404));
  }
}

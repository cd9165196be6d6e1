package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.Logged;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Everything that the service logs down to DEBUG while secrets pass by. */
@QuarkusTest
class SecretsInLogsTest {

  Logged logged;

  @BeforeEach
  void listen() {
    logged = new Logged();
  }

  @AfterEach
  void stop() {
    logged.close();
  }

  @Test
  void noTokenNorSessionKeyNorSecretOfAHookIsLogged() {
    JsonPath made = TwoCustomers.account("scheduler", "");
    String token = made.getString("token");
    String guess = "a-secret-typed-into-the-wrong-place";
    Response entered = given().redirects().follow(false).formParam("token", token).post("/enter");
    String key = entered.getCookie("coldround");
    given().cookie("coldround", key).get("/upkeep").then().statusCode(200);
    given().redirects().follow(false).get("/enter?token=" + token).then().statusCode(303);
    given().formParam("token", guess).post("/enter").then().statusCode(401);
    given().auth().preemptive().oauth2(guess).get("/api/v1/feed").then().statusCode(401);
    given().auth().preemptive().oauth2(token).get("/api/v1/feed").then().statusCode(200);
    String renewed =
        asPlanner()
            .contentType("application/json")
            .post("/api/v1/accounts/" + made.getString("id") + "/renew")
            .jsonPath()
            .getString("token");
    given().auth().preemptive().oauth2(token).get("/api/v1/feed").then().statusCode(401);
    JsonPath hook =
        given()
            .auth()
            .preemptive()
            .oauth2(renewed)
            .contentType("application/json")
            .body("{\"url\": \"http://127.0.0.1:9/hook\"}")
            .post("/api/v1/subscriptions")
            .jsonPath();
    asPlanner().delete("/api/v1/subscriptions/" + hook.getString("id"));
    asPlanner().post("/api/v1/accounts/" + made.getString("id") + "/revoke");
    given().cookie("coldround", key).header("Origin", "null").post("/leave");

    assertTrue(logged.tells("a token that nobody has was shown"), "the log was listened to");
    assertEquals(
        List.of(),
        logged.giveAway(List.of(token, renewed, key, guess, hook.getString("secret"), Api.TOKEN)));
  }
}

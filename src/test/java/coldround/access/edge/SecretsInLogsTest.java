package coldround.access.edge;

import static coldround.Api.asPlanner;
import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Everything that the service logs down to DEBUG while secrets pass by. */
@QuarkusTest
class SecretsInLogsTest {

  /** Of the service; the client of the tests writes down what it sends. */
  private static final List<Logger> LOGGERS =
      Stream.of("coldround", "io.quarkus", "io.vertx", "org.hibernate", "org.jboss", "io.agroal")
          .map(Logger::getLogger)
          .toList();

  final Queue<String> logged = new ConcurrentLinkedQueue<>();

  private final Handler listening =
      new Handler() {
        @Override
        public void publish(LogRecord entry) {
          StringWriter text = new StringWriter();
          text.append(entry.getLoggerName()).append(' ').append(entry.getMessage());
          if (entry.getParameters() != null) {
            for (Object parameter : entry.getParameters()) {
              text.append(' ').append(String.valueOf(parameter));
            }
          }
          if (entry.getThrown() != null) {
            entry.getThrown().printStackTrace(new PrintWriter(text, true));
          }
          logged.add(text.toString());
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
      };

  @BeforeEach
  void listen() {
    listening.setLevel(Level.ALL);
    for (Logger logger : LOGGERS) {
      logger.setLevel(Level.FINE);
      logger.addHandler(listening);
      logger.setUseParentHandlers(false);
    }
  }

  @AfterEach
  void stop() {
    for (Logger logger : LOGGERS) {
      logger.setUseParentHandlers(true);
      logger.removeHandler(listening);
      logger.setLevel(null);
    }
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

    assertTrue(
        logged.stream().anyMatch(line -> line.contains("a token that nobody has was shown")),
        "the log was listened to");
    List<String> secrets = List.of(token, renewed, key, guess, hook.getString("secret"), Api.TOKEN);
    assertEquals(
        List.of(),
        logged.stream()
            .filter(line -> secrets.stream().anyMatch(line::contains))
            // not the secret itself, should there be one
            .map(line -> line.substring(0, Math.min(60, line.length())))
            .distinct()
            .toList());
  }

  /** A database tells what is wrong with a row by the row; H2 takes both of these. */
  @Test
  void norIsARowThatTheStoreRefuses() {
    String type = "application/json";
    asPlanner()
        .contentType(type)
        .body("{\"url\": \"http://127.0.0.1:9/hook\", \"description\": \"a\\u0000b\"}")
        .post("/api/v1/subscriptions");
    asPlanner()
        .contentType(type)
        .body("{\"name\": \"a\\u0000b\", \"role\": \"scheduler\"}")
        .post("/api/v1/accounts");
    assertEquals(
        List.of(),
        logged.stream()
            .filter(line -> line.contains("whsec_") || line.matches("(?s).*[0-9a-f]{64}.*"))
            .map(line -> line.substring(0, Math.min(60, line.length())))
            .distinct()
            .toList());
  }
}

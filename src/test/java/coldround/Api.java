package coldround;

import static org.hamcrest.Matchers.equalTo;

import io.restassured.RestAssured;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;

/** Calls to the running service as the planner. */
public final class Api {

  /** The planner's token in tests, as in application.properties. */
  public static final String TOKEN = "the-token-of-the-tests";

  private Api() {}

  public static RequestSpecification asPlanner() {
    return RestAssured.given().auth().preemptive().oauth2(TOKEN);
  }

  /**
   * Sends a list and expects that it is read; rows of it may be refused.
   *
   * @param kind as in the path: customers, sites, units, visits
   */
  public static ValidatableResponse send(String kind, String csv) {
    return asPlanner()
        .contentType("text/csv; charset=utf-8")
        .body(csv.getBytes(StandardCharsets.UTF_8))
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200);
  }

  /** Sends a list and expects that every row of it is taken. */
  public static void put(String kind, String csv) {
    send(kind, csv).body("rows.rejected", equalTo(0));
  }

  /** Where who is not logged in is led from that page, which must be to another one. */
  public static String wayIn(String asked) {
    return RestAssured.given()
        .redirects()
        .follow(false)
        .urlEncodingEnabled(false)
        .get(asked)
        .then()
        .statusCode(303)
        .extract()
        .header("Location");
  }
}

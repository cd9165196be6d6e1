package coldround;

import io.restassured.RestAssured;
import io.restassured.specification.RequestSpecification;

/** Calls to the running service as the planner. */
public final class Api {

  /** The planner's token in tests, as in application.properties. */
  public static final String TOKEN = "the-token-of-the-tests";

  private Api() {}

  public static RequestSpecification asPlanner() {
    return RestAssured.given().auth().preemptive().oauth2(TOKEN);
  }
}

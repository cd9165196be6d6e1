package coldround.pages.edge;

import coldround.Api;

/** A replacement plan made for a customer of the demo fleet, with its report. */
final class CustomerPlan {

  private CustomerPlan() {}

  /** Address of the plan; ".html" and ".pdf" behind it are its report. */
  static String made() {
    return Api.asPlanner()
        .contentType("application/json")
        .body("{\"customers\": [\"LMC\"], \"limit\": {\"value\": 20000, \"unit\": \"USD\"}}")
        .post("/api/v1/replacement-plans")
        .then()
        .statusCode(201)
        .extract()
        .header("Location");
  }
}

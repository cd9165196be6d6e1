package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.Api;
import io.restassured.path.json.JsonPath;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;

/** Plans of rounds for the pages to show. */
final class PlannedRounds {

  private static final LocalDate MONDAY =
      LocalDate.now().with(TemporalAdjusters.next(DayOfWeek.MONDAY));
  private static final List<String> UNDER_WAY = List.of("waiting", "planning");

  private PlannedRounds() {}

  /**
   * A plan from next Monday on, as it is answered once it has been made.
   *
   * @param wishes other members of the body, such as "\"seconds\": 3"
   */
  static JsonPath plan(String wishes) throws InterruptedException {
    String id =
        Api.asPlanner()
            .contentType("application/json")
            .body("{\"from\": \"%s\", %s}".formatted(MONDAY, wishes))
            .post("/api/v1/rounds")
            .jsonPath()
            .getString("id");
    JsonPath plan;
    do {
      Thread.sleep(200);
      plan = Api.asPlanner().get("/api/v1/rounds/" + id).jsonPath();
    } while (UNDER_WAY.contains(plan.getString("state")));
    assertEquals("planned", plan.getString("state"));
    return plan;
  }
}

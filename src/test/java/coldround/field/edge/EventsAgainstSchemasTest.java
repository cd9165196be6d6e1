package coldround.field.edge;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.EventSchemas;
import coldround.feed.EventTypes;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** What the feed tells is what its published schemas say. */
@QuarkusTest
class EventsAgainstSchemasTest {

  static final List<String> TYPES = EventTypes.ALL;

  @Test
  void everythingThatHappensToATaskAndAScoreIsToldAsItsSchemaSays() {
    Follower feed = new Follower();
    FieldFleet fleet = new FieldFleet();
    fleet.head("1", "150", "70").statusCode(201);
    fleet.head("2", "250", "70").statusCode(201);
    String task = "/api/v1/tasks/" + task(fleet, "condenser-coil-cleaning");
    send(fleet, task + "/booking", "{'start': '2026-12-01T09:00:00-05:00', 'reference': 'WO-1'}");
    asPlanner().delete(task + "/booking").then().statusCode(204);
    send(fleet, task + "/booking", "{'start': '2026-12-02T09:00:00-05:00', 'reference': 'WO-2'}");
    send(
        fleet,
        task + "/completion",
        "{'unit': 'UNIT', 'visit': '3', 'date': '2026-05-13', 'work': ['condenser-coil-cleaned']}");
    FieldFleet.list(
        "units",
        "customer,site,unit,kind,retired\n"
            + fleet.customer
            + ",S1,U1,walk-in-cooler,2026-05-14\n");
    List<Map<String, Object>> events =
        feed.read().stream().filter(event -> TYPES.contains(event.get("type"))).toList();
    events.forEach(EventSchemas::check);
    Set<Object> seen =
        events.stream()
            .map(event -> event.get("type"))
            .collect(Collectors.toCollection(TreeSet::new));
    List<String> missing = new ArrayList<>(TYPES);
    missing.removeAll(seen);
    // rounds are held against theirs where they are planned
    missing.removeIf(type -> type.startsWith("coldround.round."));
    // and this where a backup is
    missing.remove(EventTypes.FEED_RESTORED);
    assertEquals(List.of(), missing, "kinds of change that nothing here brought about");
  }

  private static String task(FieldFleet fleet, String kind) {
    return asPlanner()
        .queryParam("unit", fleet.unit)
        .get("/api/v1/tasks")
        .jsonPath()
        .getString("items.find { it.task == '" + kind + "' }.id");
  }

  private static void send(FieldFleet fleet, String address, String json) {
    int status =
        asPlanner()
            .contentType("application/json")
            .body(fleet.json(json))
            .put(address)
            .statusCode();
    assertTrue(status == 200 || status == 201, address + " answered " + status);
  }

  @ParameterizedTest
  @FieldSource("TYPES")
  void eachSchemaIsThereForWhoeverMeetsAnEvent(String type) {
    RestAssured.get("/api/v1/schemas/" + type)
        .then()
        .statusCode(200)
        .contentType("application/schema+json");
  }

  @Test
  void aKindThatIsNoneHasNoSchema() {
    asPlanner().get("/api/v1/schemas/coldround.nothing").then().statusCode(404);
    asPlanner().get("/api/v1/schemas/..%2fapplication").then().statusCode(404);
  }
}

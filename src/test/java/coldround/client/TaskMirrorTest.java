package coldround.client;

import static coldround.Api.asPlanner;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import java.io.File;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample client has what the service has, however often it is killed. */
@QuarkusTest
class TaskMirrorTest {

  @TempDir Path folder;

  @Test
  void killedAgainAndAgainTheMirrorEndsUpWithTheTasksOfTheService() throws Exception {
    String customer = "M" + UUID.randomUUID().toString().substring(0, 8);
    list("customers", "customer\n" + customer + "\n");
    list("sites", "customer,site\n" + customer + ",S\n");
    for (int round = 0; round < 3; round++) {
      Process mirror = start();
      for (int n = 0; n < 5; n++) {
        addUnit(customer, round * 5 + n);
      }
      bookOne(customer, round);
      // wherever it is by now
      mirror.destroyForcibly();
      assertTrue(mirror.waitFor(30, TimeUnit.SECONDS));
    }
    Map<String, String> mirrored = new TreeMap<>();
    try (TaskMirror mirror = new TaskMirror(service(), Api.TOKEN, file())) {
      while (mirror.step(0) > 0) {
        // to the end
      }
      try (Statement statement = mirror.database().createStatement();
          ResultSet tasks = statement.executeQuery("select id, due, state from task")) {
        while (tasks.next()) {
          mirrored.put(tasks.getString(1), tasks.getString(2) + " " + tasks.getString(3));
        }
      }
    }
    Map<String, String> tasks = tasks();
    assertTrue(tasks.size() >= 15, "there are tasks");
    assertTrue(tasks.values().stream().anyMatch(task -> task.endsWith("booked")));
    assertEquals(tasks, mirrored);
  }

  private Path file() {
    return folder.resolve("mirror");
  }

  private static URI service() {
    return URI.create("http://localhost:" + RestAssured.port);
  }

  private Process start() throws Exception {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            TaskMirror.class.getName(),
            service().toString(),
            Api.TOKEN,
            file().toString())
        .redirectErrorStream(true)
        .redirectOutput(new File(folder.toFile(), "mirror.log"))
        .start();
  }

  private static void addUnit(String customer, int n) {
    list(
        "units",
        "customer,site,unit,kind,refrigerant,installed\n%s,S,U%d,walk-in-cooler,R-404A,2015-01-01\n"
            .formatted(customer, n));
  }

  private static void bookOne(String customer, int n) {
    String id =
        asPlanner()
            .queryParam("customer", customer)
            .get("/api/v1/tasks")
            .jsonPath()
            .getString("items[" + n + "].id");
    asPlanner()
        .contentType("application/json")
        .body("{\"start\": \"2026-12-01T09:00:00-05:00\", \"reference\": \"WO-" + n + "\"}")
        .put("/api/v1/tasks/" + id + "/booking");
  }

  private static void list(String kind, String text) {
    asPlanner()
        .contentType("text/csv")
        .body(text.getBytes(StandardCharsets.UTF_8))
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200);
  }

  private static Map<String, String> tasks() {
    Map<String, String> tasks = new TreeMap<>();
    String next = "";
    do {
      JsonPath page =
          asPlanner()
              .queryParam("limit", 500)
              .queryParam("after", next)
              .get("/api/v1/tasks")
              .jsonPath();
      page.<Map<String, Object>>getList("items")
          .forEach(
              task ->
                  tasks.put((String) task.get("id"), task.get("due") + " " + task.get("state")));
      next = page.getString("next");
    } while (next != null);
    return tasks;
  }
}

package coldround.description;

import static coldround.description.DescribedClient.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import coldround.description.DescribedClient.Answer;
import coldround.description.DescribedClient.Arguments;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A client made from the served description alone follows the feed: paths, parameters, media types
 * and bodies are those of the description, and each answer is held against it.
 */
@QuarkusTest
class SyncFromDescriptionTest {

  private DescribedClient client;
  private final String customer = "D" + UUID.randomUUID().toString().substring(0, 8);

  @BeforeEach
  void readTheDescription() {
    URI service = URI.create("http://localhost:" + RestAssured.port);
    client = new DescribedClient(service, Api.TOKEN, Described.running());
  }

  @Test
  void aClientMadeFromTheDescriptionFollowsTasksFromPlannedToDone() {
    Map<String, JsonNode> mirror = new TreeMap<>();
    String cursor = snapshot(mirror);
    cursor = follow(cursor, mirror);
    list("customers", "customer\n" + customer + "\n");
    list("sites", "customer,site\n" + customer + ",S\n");
    list(
        "units",
        "customer,site,unit,kind,refrigerant,installed\n"
            + customer
            + ",S,U,walk-in-cooler,R-404A,2015-01-01\n");
    cursor = follow(cursor, mirror);
    List<JsonNode> own = own(mirror);
    assertEquals(tasks(), own.stream().map(task -> task.get("id").asText()).sorted().toList());
    JsonNode cleaning =
        own.stream()
            .filter(task -> task.get("task").asText().equals("condenser-coil-cleaning"))
            .findFirst()
            .orElseThrow();
    String task = cleaning.get("id").asText();

    Answer booked =
        client
            .call(
                "bookTask",
                with("id", task).with("Idempotency-Key", customer).body(client.example("bookTask")))
            .is(201);
    client
        .call(
            "bookTask",
            with("id", task).with("Idempotency-Key", customer).body(client.example("bookTask")))
        .is(201);
    client
        .call(
            "bookTask",
            with("id", task)
                .with("If-Match", booked.headers().get("etag"))
                .body(((ObjectNode) client.example("bookTask")).put("reference", customer + "-2")))
        .is(200);
    cursor = follow(cursor, mirror);
    assertEquals("booked", mirror.get(task).get("state").asText());
    assertEquals(customer + "-2", mirror.get(task).at("/booking/reference").asText());

    ObjectNode visit = (ObjectNode) client.example("completeTask");
    visit.put("unit", cleaning.at("/unit/id").asText()).put("date", "2026-05-12");
    JsonNode done = client.call("completeTask", with("id", task).body(visit)).is(201).json();
    assertTrue(done.get("completed").asBoolean());
    ((ObjectNode) visit).put("visit", "another");
    client.call("completeTask", with("id", task).body(visit)).is(409);
    follow(cursor, mirror);
    assertTrue(!mirror.containsKey(task), "what is done is no longer open");
    assertEquals(
        tasks(), own(mirror).stream().map(each -> each.get("id").asText()).sorted().toList());
  }

  private void list(String kind, String csv) {
    client.call("importFile", with("kind", kind).body("text/csv", csv)).is(200);
  }

  private String snapshot(Map<String, JsonNode> mirror) {
    JsonNode page = client.call("readSnapshot", new Arguments()).is(200).json();
    String cursor = page.get("cursor").asText();
    page.get("items").forEach(task -> mirror.put(task.get("id").asText(), task));
    while (!page.get("next").isNull()) {
      page = client.call("readSnapshot", with("after", page.get("next").asText())).is(200).json();
      page.get("items").forEach(task -> mirror.put(task.get("id").asText(), task));
    }
    return cursor;
  }

  private String follow(String from, Map<String, JsonNode> mirror) {
    String cursor = from;
    while (true) {
      JsonNode page = client.call("readFeed", with("after", cursor)).is(200).json();
      cursor = page.get("next").asText();
      if (page.get("items").isEmpty()) {
        return cursor;
      }
      page.get("items").forEach(event -> apply(event, mirror));
    }
  }

  private static void apply(JsonNode event, Map<String, JsonNode> mirror) {
    String subject = event.get("subject").asText();
    JsonNode data = event.get("data");
    switch (event.get("type").asText()) {
      case "coldround.task.planned", "coldround.task.changed" -> mirror.put(subject, data);
      case "coldround.task.booked", "coldround.task.unbooked" -> {
        if (mirror.get(subject) instanceof ObjectNode task) {
          task.set("state", data.get("state"));
          task.set("booking", data.get("booking"));
        }
      }
      case "coldround.task.completed", "coldround.task.withdrawn" -> mirror.remove(subject);
      default -> {
        // scores and rounds are not followed here
      }
    }
  }

  private List<JsonNode> own(Map<String, JsonNode> mirror) {
    List<JsonNode> own = new ArrayList<>();
    mirror.values().stream()
        .filter(task -> task.at("/unit/customer").asText().equals(customer))
        .forEach(own::add);
    assertTrue(!own.isEmpty());
    return own;
  }

  private List<String> tasks() {
    List<String> ids = new ArrayList<>();
    client
        .call("listTasks", with("customer", customer))
        .is(200)
        .json()
        .get("items")
        .forEach(task -> ids.add(task.get("id").asText()));
    return ids.stream().sorted().toList();
  }
}

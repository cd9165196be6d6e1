package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A client that has read the description and nothing else gets along. */
@QuarkusTest
class DescribedClientTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Map<String, String> NONE = Map.of();

  private final ObjectNode examples = JSON.createObjectNode();
  private DescribedClient client;

  @BeforeEach
  void readTheDescription() throws IOException {
    URI service = URI.create("http://localhost:" + RestAssured.port);
    client = new DescribedClient(DescriptionTest.live(), service, Api.TOKEN);
  }

  /** The answer, which must be one that the description tells of. */
  private JsonNode call(String operation, Map<String, String> parameters, String body)
      throws IOException {
    DescribedClient.Answer answer = client.call(operation, parameters, body);
    assertTrue(answer.status() < 300, operation + ": " + answer.status() + " " + answer.body());
    assertFalse(answer.described().isMissingNode(), operation + " describes " + answer.status());
    if (answer.type().isEmpty()) {
      return null;
    }
    assertTrue(
        answer.described().path("content").has(answer.type()),
        operation + " describes " + answer.type() + ": " + answer.described());
    JsonNode read = answer.type().equals("application/json") ? JSON.readTree(answer.body()) : null;
    keep(operation, body, read);
    return read;
  }

  /** Real answers, which become the examples of the description. */
  private void keep(String operation, String body, JsonNode answer) throws IOException {
    ObjectNode example = examples.putObject(operation);
    if (body != null) {
      example.set("request", body.startsWith("{") ? JSON.readTree(body) : JSON.valueToTree(body));
    }
    if (answer != null) {
      example.set("response", shortened(answer.deepCopy()));
    }
  }

  private static JsonNode shortened(JsonNode answer) {
    if (answer instanceof ArrayNode list) {
      while (list.size() > 1) {
        list.remove(list.size() - 1);
      }
    }
    answer.forEach(DescribedClientTest::shortened);
    return answer;
  }

  @Test
  void itImportsAsksBooksCompletesFollowsAndSubscribes() throws IOException {
    String customer = "D" + UUID.randomUUID().toString().substring(0, 8);
    importFile("customers", "customer,name\n" + customer + ",Harbor Grocers\n");
    importFile(
        "sites", "customer,site,name,latitude,longitude\n" + customer + ",S1,Dock,45.5,-122.6\n");
    JsonNode receipt =
        importFile(
            "units",
            "customer,site,unit,kind,refrigerant,charge [lb],design_split [deltaF],installed\n"
                + customer
                + ",S1,U1,walk-in-cooler,R-404A,20,30,2015-01-01\n");
    call("getImport", Map.of("id", receipt.get("id").asText()), null);
    call("getRejectedRows", Map.of("id", receipt.get("id").asText()), null);
    JsonNode units = call("listUnits", Map.of("customer", customer), null);
    String unit = units.at("/items/0/unit/id").asText();
    String cursor = call("readSnapshot", Map.of("limit", "1"), null).get("cursor").asText();
    call(
        "recordVisit",
        Map.of("Idempotency-Key", UUID.randomUUID().toString()),
        """
        {"unit": "%s", "visit": "4711", "date": "2026-05-12", "purpose": "planned", "readings": [
          {"quantity": "head_pressure", "value": 290, "unit": "psig"},
          {"quantity": "ambient", "value": 78, "unit": "degF"}]}"""
            .formatted(unit));
    for (String read : new String[] {"getUnit", "getUnitHistory", "getCondition", "listScores"}) {
      call(read, Map.of("id", unit), null);
    }
    call("getVisit", Map.of("unit", unit, "visit", "4711"), null);
    call("getVisitEffect", Map.of("id", unit, "number", "4711"), null);
    String task =
        call("listTasks", Map.of("unit", unit), null).at("/items/0/id").asText();
    answers(task, unit);
    JsonNode feed = call("readFeed", Map.of("after", cursor), null);
    assertTrue(feed.get("items").size() >= 3);
    call("readSchema", Map.of("type", feed.at("/items/0/type").asText()), null);
    call("readTaskCalendar", Map.of("customer", customer), null);
    call("exportCsv", Map.of("kind", "units"), null);
    call("exportNdjson", Map.of("kind", "units"), null);
    subscribe();
    ofRefrigerants();
    Files.createDirectories(Path.of("target"));
    JSON.writerWithDefaultPrettyPrinter()
        .writeValue(Path.of("target", "openapi-examples.json").toFile(), examples);
  }

  private JsonNode importFile(String kind, String text) throws IOException {
    JsonNode receipt = call("importFile", Map.of("kind", kind), text);
    assertEquals(0, receipt.at("/rows/rejected").asInt());
    return receipt;
  }

  private void answers(String task, String unit) throws IOException {
    Map<String, String> it = Map.of("id", task);
    call("bookTask", it, "{\"start\": \"2026-12-01T09:00:00-05:00\", \"reference\": \"WO-1\"}");
    call("getBooking", it, null);
    call("cancelBooking", it, null);
    call(
        "completeTask",
        it,
        """
        {"unit": "%s", "visit": "4712", "date": "2026-05-13", "work": ["inspected"]}"""
            .formatted(unit));
    call("getCompletion", it, null);
  }

  private void subscribe() throws IOException {
    String id =
        call(
                "subscribe",
                NONE,
                "{\"url\": \"http://127.0.0.1:9/hook\", \"types\": [\"coldround.round.cancelled\"]}")
            .get("id")
            .asText();
    Map<String, String> it = Map.of("id", id);
    call("listSubscriptions", NONE, null);
    call("getSubscription", it, null);
    call("rotateSecret", it, null);
    call("resumeSubscription", it, null);
    call("listDeadLetters", it, null);
    call("sendDeadLettersAgain", it, null);
    call("unsubscribe", it, null);
  }

  private void ofRefrigerants() throws IOException {
    call("listRefrigerants", NONE, null);
    call("getRefrigerant", Map.of("designation", "R-404A"), null);
    call(
        "getSaturation",
        Map.of("designation", "R-404A", "temperature", "40", "unit", "degF"),
        null);
    call(
        "getExpectedHead",
        Map.of("designation", "R-404A", "ambient", "70", "split", "30", "unit", "degF"),
        null);
  }
}

package coldround.access.edge;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The log as programs read it: one object of JSON a line, found again by the id of its call. */
@QuarkusTest
@TestProfile(WithProvider.class)
class JsonLogTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  private static List<JsonNode> ofCall(String call) throws IOException {
    List<JsonNode> found = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of(WithProvider.LOG))) {
      JsonNode entry = JSON.readTree(line);
      assertTrue(entry.isObject(), "a line is an object");
      if (entry.path("mdc").path("call").asText().equals(call)) {
        found.add(entry);
      }
    }
    return found;
  }

  @Test
  void eachLineIsAnObjectWithTheIdOfItsCall() throws Exception {
    String call = "json-log-" + UUID.randomUUID();
    given()
        .header("X-Request-Id", call)
        .formParam("token", "a guess with a \"quote\"\nand a line")
        .post("/enter")
        .then()
        .statusCode(401)
        .header("X-Request-Id", call);
    long end = System.nanoTime() + 10_000_000_000L;
    while (ofCall(call).isEmpty() && System.nanoTime() < end) {
      Thread.sleep(50);
    }
    List<JsonNode> lines = ofCall(call);
    assertEquals(1, lines.size());
    JsonNode line = lines.get(0);
    assertEquals("WARN", line.path("level").asText());
    assertEquals("coldround.access.edge.Doorkeeper", line.path("loggerName").asText());
    assertTrue(line.path("message").asText().startsWith("a token that nobody has was shown from"));
    OffsetDateTime.parse(line.path("timestamp").asText());
    assertFalse(line.toString().contains("quote"), "what was shown is not told");
  }
}

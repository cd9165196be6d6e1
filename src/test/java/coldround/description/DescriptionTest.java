package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The description of the interface is complete, and what was published stays true. */
@QuarkusTest
class DescriptionTest {

  private static final ObjectMapper JSON =
      new ObjectMapper()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

  /** As published; -Dcoldround.publish=true writes it anew. */
  private static final Path PUBLISHED = Path.of("docs", "openapi.json");

  static JsonNode live() throws IOException {
    return JSON.readTree(
        RestAssured.given()
            .accept("application/json")
            .get("/q/openapi?format=json")
            .then()
            .statusCode(200)
            .extract()
            .asByteArray());
  }

  private static void each(JsonNode description, BiConsumer<String, JsonNode> operation) {
    for (var path : description.get("paths").properties()) {
      for (var method : path.getValue().properties()) {
        if (method.getValue().has("responses") && path.getKey().startsWith("/api/")) {
          operation.accept(method.getKey() + " " + path.getKey(), method.getValue());
        }
      }
    }
  }

  @Test
  void everyCallItsParametersItsProblemsAndItsExamplesAreDescribed() throws IOException {
    JsonNode description = live();
    assertTrue(description.get("openapi").asText().startsWith("3.1"));
    List<String> missing = new ArrayList<>();
    Set<String> ids = new HashSet<>();
    each(
        description,
        (where, operation) -> {
          if (!ids.add(operation.path("operationId").asText())) {
            missing.add(where + ": an operationId of its own");
          }
          if (operation.path("summary").asText().isEmpty()) {
            missing.add(where + ": summary");
          }
          for (JsonNode parameter : operation.path("parameters")) {
            if (parameter.path("description").asText().isEmpty()) {
              missing.add(where + ": description of " + parameter.path("name").asText());
            }
          }
          for (var body : operation.path("requestBody").path("content").properties()) {
            if (body.getValue().path("example").isMissingNode()) {
              missing.add(where + ": example of the body");
            }
          }
          responses(where, operation.get("responses"), missing);
        });
    assertEquals(List.of(), missing);
  }

  private static void responses(String where, JsonNode responses, List<String> missing) {
    boolean good = false;
    for (var response : responses.properties()) {
      String status = response.getKey();
      JsonNode content = response.getValue().path("content");
      if (status.startsWith("2")) {
        good = true;
        JsonNode json = content.path("application/json");
        if (!json.isMissingNode() && json.path("example").isMissingNode()) {
          missing.add(where + ": example of " + status);
        }
      } else if (!status.startsWith("3")
          && !content.path("application/problem+json").path("schema").has("$ref")) {
        missing.add(where + ": problem of " + status);
      }
    }
    if (!good || !responses.has("default")) {
      missing.add(where + ": good answer, or that of any other problem");
    }
  }

  @Test
  void whatIsPublishedInTheDocumentsIsWhatTheServiceSays() throws IOException {
    JsonNode live = live();
    JsonNode published = Files.exists(PUBLISHED) ? JSON.readTree(PUBLISHED.toFile()) : live;
    boolean newVersion = !version(live).equals(version(published));
    List<String> breaking = Breaking.changes(published, live);
    assertTrue(
        breaking.isEmpty() || newVersion,
        () ->
            "this breaks callers; raise quarkus.smallrye-openapi.info-version if it has to be: "
                + breaking);
    if (Boolean.getBoolean("coldround.publish")) {
      Files.writeString(PUBLISHED, text(live) + "\n");
    }
    assertEquals(
        text(JSON.readTree(PUBLISHED.toFile())),
        text(live),
        "publish it by: mvn test -Dtest=DescriptionTest -Dcoldround.publish=true");
  }

  /** Major version, and the minor one as long as the major one is 0. */
  private static String version(JsonNode description) {
    String[] parts = description.at("/info/version").asText().split("\\.");
    return parts[0].equals("0") ? "0." + parts[1] : parts[0];
  }

  /** Without what differs from run to run. */
  private static String text(JsonNode description) throws IOException {
    ObjectNode copy = description.deepCopy();
    copy.remove("servers");
    return JSON.writeValueAsString(JSON.treeToValue(copy, Object.class));
  }

  // each is a change that callers would trip over, made to the description on purpose
  @ParameterizedTest
  @CsvSource({
    "/paths, /api/v1/feed",
    "/paths/~1api~1v1~1feed, get",
    "/paths/~1api~1v1~1subscriptions/post/responses, 201",
    "/components/schemas/SubscriptionView/properties, secret",
    "/components/schemas/SubscriptionBody/properties, url"
  })
  void whatIsTakenAwayIsABreakingChange(String parent, String name) throws IOException {
    JsonNode before = live();
    JsonNode now = before.deepCopy();
    assertTrue(((ObjectNode) now.at(parent)).remove(name) != null, parent + " has " + name);
    assertTrue(!Breaking.changes(before, now).isEmpty());
    assertEquals(List.of(), Breaking.changes(now, before), "adding it is none");
  }

  @Test
  void whatMustBeSentBesidesAndAnotherTypeAreBreakingChanges() throws IOException {
    JsonNode before = live();
    ObjectNode needed = before.deepCopy();
    ((ObjectNode) needed.at("/paths/~1api~1v1~1feed/get/parameters/0")).put("required", true);
    assertEquals(1, Breaking.changes(before, needed).size());
    ObjectNode typed = before.deepCopy();
    ((ObjectNode) typed.at("/components/schemas/SubscriptionView/properties/tries"))
        .put("type", "string");
    assertTrue(!Breaking.changes(before, typed).isEmpty());
  }
}

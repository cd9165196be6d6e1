package coldround.description;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import io.restassured.RestAssured;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The description of a service: its calls, and whether a body is as it says. */
final class Described {

  static final String JSON = "application/json";
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch");

  /** One call as it is described. */
  record Call(String id, String method, String path, JsonNode operation) {
    JsonNode answer(int status) {
      JsonNode responses = operation.path("responses");
      return responses.has(Integer.toString(status))
          ? responses.get(Integer.toString(status))
          : responses.path("default");
    }

    boolean tells(int status) {
      return operation.path("responses").has(Integer.toString(status));
    }

    @Override
    public String toString() {
      return id;
    }
  }

  private final JsonNode document;
  private final JsonNode closed;
  private final Map<String, Call> calls = new LinkedHashMap<>();
  private final Map<JsonNode, JsonSchema> schemas = new LinkedHashMap<>();

  private Described(JsonNode document) {
    this.document = document;
    this.closed = document.path("components").deepCopy();
    close(closed);
    document
        .path("paths")
        .fields()
        .forEachRemaining(
            path ->
                path.getValue()
                    .fields()
                    .forEachRemaining(
                        method -> {
                          if (METHODS.contains(method.getKey())) {
                            add(path.getKey(), method.getKey(), method.getValue());
                          }
                        }));
  }

  private void add(String path, String method, JsonNode operation) {
    String id = operation.path("operationId").asText();
    calls.put(id, new Call(id, method.toUpperCase(), path, operation));
  }

  /** As the running service tells it to anybody. */
  static Described running() {
    String text =
        RestAssured.given()
            .accept(JSON)
            .get("/q/openapi?format=json")
            .then()
            .statusCode(200)
            .extract()
            .asString();
    try {
      return new Described(MAPPER.readTree(text));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  JsonNode document() {
    return document;
  }

  List<Call> calls() {
    return List.copyOf(calls.values());
  }

  Call call(String id) {
    Call call = calls.get(id);
    assertNotNull(call, "there is no call " + id);
    return call;
  }

  /** Readers may meet more than a schema says; we may not send what it does not tell of. */
  private static void close(JsonNode schema) {
    if (schema instanceof ObjectNode object
        && schema.path("properties").isObject()
        && !schema.has("additionalProperties")) {
      object.put("additionalProperties", false);
    }
    schema.forEach(Described::close);
  }

  /** What is wrong with a body by its schema; empty for nothing. */
  Set<String> faults(JsonNode schema, JsonNode body) {
    return schemas.computeIfAbsent(schema, this::compiled).validate(body).stream()
        .map(Object::toString)
        .collect(Collectors.toSet());
  }

  private JsonSchema compiled(JsonNode schema) {
    ObjectNode whole = schema.deepCopy();
    close(whole);
    whole.set("components", closed);
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
        .getSchema(whole, SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build());
  }
}

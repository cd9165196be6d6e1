package coldround;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import io.cloudevents.CloudEvent;
import io.cloudevents.jackson.JsonFormat;
import io.restassured.RestAssured;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Holds an event against CloudEvents 1.0 by the SDK of its authors, and its data against the schema
 * that it names, fetched from where it says.
 */
public final class EventSchemas {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Map<String, JsonSchema> SCHEMAS = new ConcurrentHashMap<>();

  private EventSchemas() {}

  public static void check(Map<String, Object> event) {
    try {
      byte[] text = JSON.writeValueAsBytes(event);
      CloudEvent read = new JsonFormat().deserialize(text);
      assertEquals(event.get("id"), read.getId());
      String address = read.getDataSchema().toString();
      assertTrue(address.endsWith("/" + read.getType()), address);
      JsonSchema schema = SCHEMAS.computeIfAbsent(address, EventSchemas::fetch);
      assertEquals(
          Set.of(), schema.validate(JSON.readTree(text).get("data")), () -> new String(text));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static JsonSchema fetch(String address) {
    String text =
        RestAssured.get(address)
            .then()
            .statusCode(200)
            .contentType("application/schema+json")
            .extract()
            .asString();
    try {
      JsonNode schema = JSON.readTree(text);
      close(schema);
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
          .getSchema(
              schema, SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Readers may meet more than a schema says; we may not say what it does not tell of. */
  private static void close(JsonNode schema) {
    if (schema instanceof ObjectNode object && schema.path("properties").isObject()) {
      object.put("additionalProperties", false);
    }
    schema.forEach(EventSchemas::close);
  }
}

package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What breaks a published description, and what does not. */
class BreaksTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String PUBLISHED =
      """
      {"openapi": "3.1.0", "info": {"version": "1.2.0"},
       "security": [{"token": []}],
       "paths": {"/a": {
         "get": {"operationId": "readA", "security": [],
          "parameters": [{"name": "q", "in": "query", "schema": {"type": "string", "enum": ["x", "y"]}},
                         {"name": "n", "in": "query", "schema": {"type": "number"}}],
          "responses": {"200": {"content": {"application/json": {"schema": {"$ref": "#/components/schemas/A"}},
                                            "text/csv": {"schema": {"type": "string"}}}},
                        "404": {}}},
         "put": {"operationId": "writeA",
          "requestBody": {"content": {"application/json": {"schema": {"$ref": "#/components/schemas/A"}}}},
          "responses": {"204": {}}}}},
       "webhooks": {"told": {"post": {"operationId": "tell",
          "requestBody": {"content": {"application/json": {"schema": {"$ref": "#/components/schemas/B"}}}},
          "responses": {"200": {}}}}},
       "components": {"schemas": {
         "A": {"type": "object", "required": ["id"], "properties": {
            "id": {"type": "string"}, "size": {"type": ["integer", "null"]},
            "state": {"type": "string", "enum": ["on", "off"]},
            "day": {"type": "string", "format": "date"},
            "parts": {"type": "array", "items": {"$ref": "#/components/schemas/A"}},
            "more": {"type": "object", "additionalProperties": {"type": "number"}},
            "other": {"anyOf": [{"$ref": "#/components/schemas/B"}, {"type": "null"}]}}},
         "B": {"type": "object", "required": ["b"], "properties": {"b": {"type": "string"}}}}}}
      """;

  private static JsonNode published() throws Exception {
    return JSON.readTree(PUBLISHED);
  }

  /** The description with another value at a JSON pointer; without any where none is given. */
  private static JsonNode with(String pointer, String value) throws Exception {
    JsonNode changed = published();
    int last = pointer.lastIndexOf('/');
    String name = pointer.substring(last + 1).replace("~1", "/");
    ObjectNode parent = (ObjectNode) changed.at(pointer.substring(0, last));
    if (value == null) {
      assertTrue(parent.has(name), pointer);
      parent.remove(name);
    } else {
      parent.set(name, JSON.readTree(value));
    }
    return changed;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "/paths/~1a||GET /a: removed",
        "/paths/~1a/put||PUT /a: removed",
        "/paths/~1a/get/operationId|\"getA\"|GET /a: operationId was readA",
        "/paths/~1a/get/security|[{\"token\": []}]|GET /a: needs a token now",
        "/paths/~1a/get/parameters|[]|GET /a parameter q: removed",
        "/paths/~1a/get/parameters|[{\"name\": \"q\", \"in\": \"query\", \"required\": true, \"schema\": {\"type\": \"string\"}}, {\"name\": \"n\", \"in\": \"query\"}]|GET /a parameter q: became required",
        "/paths/~1a/get/parameters|[{\"name\": \"q\", \"in\": \"query\"}, {\"name\": \"n\", \"in\": \"query\"}, {\"name\": \"z\", \"in\": \"header\", \"required\": true}]|GET /a parameter z: new and required",
        "/paths/~1a/get/parameters|[{\"name\": \"q\", \"in\": \"header\"}, {\"name\": \"n\", \"in\": \"query\"}]|GET /a parameter q: removed",
        "/paths/~1a/get/parameters|[{\"name\": \"q\", \"in\": \"query\", \"schema\": {\"type\": \"string\", \"enum\": [\"x\"]}}, {\"name\": \"n\", \"in\": \"query\"}]|GET /a parameter q: value removed: y",
        "/paths/~1a/get/parameters|[{\"name\": \"q\", \"in\": \"query\"}, {\"name\": \"n\", \"in\": \"query\", \"schema\": {\"type\": \"number\", \"enum\": [1]}}]|GET /a parameter n: only some values are allowed now: [1]",
        "/paths/~1a/get/parameters|[{\"name\": \"q\", \"in\": \"query\"}, {\"name\": \"n\", \"in\": \"query\", \"schema\": {\"type\": \"integer\"}}]|GET /a parameter n: type was [number], is [integer]",
        "/paths/~1a/get/responses/200||GET /a 200: removed",
        "/paths/~1a/get/responses/404||GET /a 404: removed",
        "/paths/~1a/get/responses/200/content/text~1csv||GET /a 200: text/csv removed",
        "/paths/~1a/put/requestBody/required|true|PUT /a body: became required",
        "/paths/~1a/put/requestBody/content|{\"text/csv\": {}}|PUT /a body: application/json removed",
        "/components/schemas/A/properties/size||GET /a 200.size: property removed",
        "/components/schemas/A/properties/size|{\"type\": \"string\"}|GET /a 200.size: type was [integer, null], is [string]",
        "/components/schemas/A/properties/size|{\"type\": \"integer\"}|PUT /a body.size: type was [integer, null], is [integer]",
        "/components/schemas/A/properties/id|{\"type\": [\"string\", \"null\"]}|GET /a 200.id: type was [string], is [null, string]",
        "/components/schemas/A/properties/state|{\"type\": \"string\", \"enum\": [\"on\"]}|GET /a 200.state: value removed: off",
        "/components/schemas/A/properties/day|{\"type\": \"string\", \"format\": \"date-time\"}|GET /a 200.day: format was date, is date-time",
        "/components/schemas/A/properties/parts|{\"type\": \"array\", \"items\": {\"type\": \"string\"}}|GET /a 200.parts[]: type was [object], is [string]",
        "/components/schemas/A/properties/more|{\"type\": \"object\", \"additionalProperties\": {\"type\": \"string\"}}|GET /a 200.more.*: type was [number], is [string]",
        "/components/schemas/A/properties/other|{\"$ref\": \"#/components/schemas/B\"}|PUT /a body.other: type was [null, object], is [object]",
        "/components/schemas/B/properties/b|{\"type\": \"integer\"}|GET /a 200.other.b: type was [string], is [integer]",
        "/components/schemas/A/required|[]|GET /a 200.id: need not be there any more",
        "/components/schemas/A/required|[\"id\", \"state\"]|PUT /a body.state: became required",
        "/components/schemas/B/required|[]|POST told body.b: need not be there any more",
        "/webhooks/told||POST told: removed",
        "/webhooks/told/post/responses/200||POST told 200: removed"
      })
  void aBreakIsTold(String pointer, String value, String expected) throws Exception {
    List<String> found = Breaks.between(published(), with(pointer, value));
    assertTrue(found.contains(expected), found.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "/paths/~1b|{\"get\": {}}",
        "/paths/~1a/delete|{\"operationId\": \"deleteA\", \"responses\": {}}",
        "/paths/~1a/get/summary|\"told otherwise\"",
        "/paths/~1a/get/responses/410|{}",
        "/paths/~1a/put/security|[]",
        "/paths/~1a/put/parameters|[{\"name\": \"z\", \"in\": \"query\"}]",
        "/components/schemas/A/properties/fresh|{\"type\": \"string\"}",
        "/components/schemas/C|{\"type\": \"string\"}",
        "/info/version|\"1.3.0\""
      })
  void whatIsAddedBreaksNothing(String pointer, String value) throws Exception {
    assertEquals(List.of(), Breaks.between(published(), with(pointer, value)));
  }

  @Test
  void itselfIsNoBreakAlthoughASchemaHoldsItself() throws Exception {
    assertEquals(List.of(), Breaks.between(published(), published()));
  }

  // Semantic Versioning 2.0.0, items 4 and 8
  @ParameterizedTest
  @CsvSource({
    "1.2.0,2.0.0,true", "1.2.0,1.3.0,false", "1.2.0,1.2.0,false", "2.0.0,1.0.0,false",
    "0.1.0,0.2.0,true", "0.1.0,0.1.1,false", "0.9.0,1.0.0,true", "1.0.0,0.9.0,false"
  })
  void theVersionSaysWhetherItMayBreak(String was, String is, boolean may) throws Exception {
    JsonNode published = with("/info/version", '"' + was + '"');
    JsonNode running = with("/info/version", '"' + is + '"');
    if (may) {
      assertTrue(Breaks.areAllowed(published, running));
    } else {
      assertFalse(Breaks.areAllowed(published, running));
    }
  }
}

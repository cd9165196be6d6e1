package coldround.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The calls of a description of an interface (OpenAPI 3.1), as far as requests are made of it. */
final class Calls {

  private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch");

  /**
   * @param in path, query or header
   */
  record Argument(String name, String in, boolean needed) {}

  /**
   * @param mediaTypes of the body; none for a call without
   * @param example of the body as JSON, or as text where it is none; null for none
   * @param schema of the body; null for none
   */
  record Call(
      String id,
      String method,
      String path,
      List<Argument> arguments,
      List<String> mediaTypes,
      JsonNode example,
      JsonNode schema) {

    /** What is named by the first part of the path, such as units. */
    String things() {
      String[] parts = path.split("/");
      return parts.length > 3 ? parts[3].replaceAll("\\..*", "") : "";
    }
  }

  private final JsonNode document;
  private final List<Call> all = new ArrayList<>();

  Calls(JsonNode document) {
    this.document = document;
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
    List<Argument> arguments = new ArrayList<>();
    for (JsonNode each : operation.path("parameters")) {
      arguments.add(
          new Argument(
              each.path("name").asText(),
              each.path("in").asText(),
              each.path("required").asBoolean()));
    }
    List<String> types = new ArrayList<>();
    JsonNode content = operation.path("requestBody").path("content");
    content.fieldNames().forEachRemaining(types::add);
    JsonNode body = types.isEmpty() ? null : content.get(types.get(0));
    all.add(
        new Call(
            operation.path("operationId").asText(),
            method.toUpperCase(Locale.ROOT),
            path,
            List.copyOf(arguments),
            List.copyOf(types),
            body == null ? null : example(body),
            body == null ? null : body.path("schema")));
  }

  private static JsonNode example(JsonNode body) {
    JsonNode named = body.path("examples");
    JsonNode example =
        named.isEmpty() ? body.path("example") : named.iterator().next().path("value");
    return example.isMissingNode() ? null : example;
  }

  List<Call> all() {
    return all;
  }

  /** The schema itself where it only names one. */
  JsonNode resolved(JsonNode schema) {
    JsonNode now = schema;
    while (now.has("$ref")) {
      now = document.at(now.get("$ref").asText().substring(1));
    }
    return now;
  }
}

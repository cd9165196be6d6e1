package coldround.description;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What a caller of a published description would trip over in a new one: something gone, something
 * more that must be sent, something of another type.
 */
final class Breaking {

  private final JsonNode before;
  private final JsonNode now;
  private final List<String> found = new ArrayList<>();

  private Breaking(JsonNode before, JsonNode now) {
    this.before = before;
    this.now = now;
  }

  static List<String> changes(JsonNode before, JsonNode now) {
    Breaking breaking = new Breaking(before, now);
    for (var path : before.get("paths").properties()) {
      for (var method : path.getValue().properties()) {
        if (method.getValue().has("responses")) {
          breaking.call(path.getKey(), method.getKey(), method.getValue());
        }
      }
    }
    return breaking.found;
  }

  private void call(String path, String method, JsonNode old) {
    String where = method + " " + path;
    JsonNode fresh = now.get("paths").path(path).path(method);
    if (fresh.isMissingNode()) {
      found.add(where + " is gone");
      return;
    }
    if (!old.path("operationId").equals(fresh.path("operationId"))) {
      found.add(where + " has another operationId");
    }
    parameters(where, old, fresh);
    JsonNode oldBody = old.path("requestBody");
    JsonNode freshBody = fresh.path("requestBody");
    if (freshBody.path("required").asBoolean() && !oldBody.path("required").asBoolean()) {
      found.add(where + " needs a body");
    }
    contents(where + " body", oldBody.path("content"), freshBody.path("content"), true);
    for (var response : old.get("responses").properties()) {
      JsonNode same = fresh.get("responses").path(response.getKey());
      String name = where + " " + response.getKey();
      if (same.isMissingNode()) {
        found.add(name + " is gone");
      } else {
        contents(name, response.getValue().path("content"), same.path("content"), false);
      }
    }
  }

  private void parameters(String where, JsonNode old, JsonNode fresh) {
    for (JsonNode parameter : old.path("parameters")) {
      JsonNode same = parameter(fresh, parameter);
      if (same == null) {
        found.add(where + " no longer takes " + parameter.path("name").asText());
      } else {
        schema(
            where + " " + parameter.path("name").asText(),
            parameter.path("schema"),
            same.path("schema"),
            true,
            new HashSet<>());
      }
    }
    for (JsonNode parameter : fresh.path("parameters")) {
      JsonNode earlier = parameter(old, parameter);
      boolean needed = parameter.path("required").asBoolean();
      if (needed && (earlier == null || !earlier.path("required").asBoolean())) {
        found.add(where + " needs " + parameter.path("name").asText());
      }
    }
  }

  private static JsonNode parameter(JsonNode operation, JsonNode like) {
    for (JsonNode parameter : operation.path("parameters")) {
      if (parameter.path("name").equals(like.path("name"))
          && parameter.path("in").equals(like.path("in"))) {
        return parameter;
      }
    }
    return null;
  }

  private void contents(String where, JsonNode old, JsonNode fresh, boolean sent) {
    for (var content : old.properties()) {
      JsonNode same = fresh.path(content.getKey());
      if (same.isMissingNode()) {
        found.add(where + " is no longer " + content.getKey());
      } else {
        schema(
            where,
            content.getValue().path("schema"),
            same.path("schema"),
            sent,
            new HashSet<>());
      }
    }
  }

  private void schema(String where, JsonNode oldRef, JsonNode freshRef, boolean sent, Set<String> seen) {
    JsonNode old = resolved(before, oldRef);
    JsonNode fresh = resolved(now, freshRef);
    if (oldRef.has("$ref") && !seen.add(oldRef.get("$ref").asText())) {
      return;
    }
    if (old.has("type") && !old.get("type").equals(fresh.path("type"))) {
      found.add(where + " has type " + fresh.path("type") + " instead of " + old.get("type"));
    }
    for (var property : old.path("properties").properties()) {
      JsonNode same = fresh.path("properties").path(property.getKey());
      String name = where + "/" + property.getKey();
      if (same.isMissingNode()) {
        found.add(name + " is gone");
      } else {
        schema(name, property.getValue(), same, sent, seen);
      }
    }
    if (old.has("items")) {
      schema(where + "[]", old.get("items"), fresh.path("items"), sent, seen);
    }
    required(where, old, fresh, sent);
  }

  private void required(String where, JsonNode old, JsonNode fresh, boolean sent) {
    Set<String> earlier = names(old.path("required"));
    Set<String> later = names(fresh.path("required"));
    Set<String> lost = new HashSet<>(sent ? later : earlier);
    lost.removeAll(sent ? earlier : later);
    lost.forEach(name -> found.add(where + (sent ? " needs " : " no longer always has ") + name));
  }

  private static Set<String> names(JsonNode list) {
    Set<String> names = new HashSet<>();
    list.forEach(name -> names.add(name.asText()));
    return names;
  }

  private static JsonNode resolved(JsonNode description, JsonNode schema) {
    return schema.has("$ref") ? description.at(schema.get("$ref").asText().substring(1)) : schema;
  }
}

package coldround.description;

import coldround.description.SchemaBreaks.Use;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Where a description of the interface breaks what programs made from an earlier one rely on. */
final class Breaks {

  private static final Set<String> METHODS =
      Set.of("get", "put", "post", "delete", "patch", "head", "options", "trace");

  private final JsonNode published;
  private final JsonNode running;
  private final List<String> found = new ArrayList<>();

  private Breaks(JsonNode published, JsonNode running) {
    this.published = published;
    this.running = running;
  }

  /**
   * @return one sentence for each break, in the order of the published description
   */
  static List<String> between(JsonNode published, JsonNode running) {
    Breaks breaks = new Breaks(published, running);
    breaks.calls("paths", Use.SENT, Use.ANSWERED);
    // what is sent to a web hook is to be understood there, and what it answers is taken here
    breaks.calls("webhooks", Use.ANSWERED, Use.SENT);
    return breaks.found;
  }

  /**
   * Semantic Versioning 2.0.0: the major number, and while that is 0 the minor one.
   *
   * @return whether the version of the running description allows for breaks
   */
  static boolean areAllowed(JsonNode published, JsonNode running) {
    int[] was = version(published);
    int[] is = version(running);
    return is[0] > was[0] || (is[0] == 0 && was[0] == 0 && is[1] > was[1]);
  }

  private static int[] version(JsonNode description) {
    String[] parts = description.at("/info/version").asText().split("[.-]");
    return new int[] {Integer.parseInt(parts[0]), Integer.parseInt(parts[1])};
  }

  private void calls(String kind, Use sent, Use answered) {
    published
        .path(kind)
        .fields()
        .forEachRemaining(
            path ->
                path.getValue()
                    .fields()
                    .forEachRemaining(
                        method -> {
                          if (METHODS.contains(method.getKey())) {
                            String name = method.getKey().toUpperCase() + " " + path.getKey();
                            JsonNode now =
                                running.path(kind).path(path.getKey()).path(method.getKey());
                            call(name, method.getValue(), now, sent, answered);
                          }
                        }));
  }

  private void call(String name, JsonNode was, JsonNode is, Use sent, Use answered) {
    if (is.isMissingNode()) {
      found.add(name + ": removed");
      return;
    }
    String id = was.path("operationId").asText();
    if (!id.equals(is.path("operationId").asText())) {
      found.add(name + ": operationId was " + id);
    }
    if (isOpen(published, was) && !isOpen(running, is)) {
      found.add(name + ": needs a token now");
    }
    parameters(name, was.path("parameters"), is.path("parameters"), sent);
    body(name, was.path("requestBody"), is.path("requestBody"), sent);
    answers(name, was.path("responses"), is.path("responses"), answered);
  }

  private static boolean isOpen(JsonNode description, JsonNode call) {
    JsonNode security = call.has("security") ? call.get("security") : description.path("security");
    return security.isEmpty();
  }

  private void parameters(String name, JsonNode was, JsonNode is, Use sent) {
    for (JsonNode parameter : was) {
      String its = name + " parameter " + parameter.path("name").asText();
      JsonNode now = same(parameter, is);
      if (now.isMissingNode()) {
        found.add(its + ": removed");
      } else {
        schema(its, parameter.path("schema"), now.path("schema"), sent);
        if (now.path("required").asBoolean() && !parameter.path("required").asBoolean()) {
          found.add(its + ": became required");
        }
      }
    }
    for (JsonNode parameter : is) {
      if (parameter.path("required").asBoolean() && same(parameter, was).isMissingNode()) {
        found.add(name + " parameter " + parameter.path("name").asText() + ": new and required");
      }
    }
  }

  private static JsonNode same(JsonNode parameter, JsonNode among) {
    for (JsonNode each : among) {
      if (each.path("name").equals(parameter.path("name"))
          && each.path("in").equals(parameter.path("in"))) {
        return each;
      }
    }
    return MissingNode.getInstance();
  }

  private void body(String name, JsonNode was, JsonNode is, Use sent) {
    if (is.path("required").asBoolean() && !was.path("required").asBoolean()) {
      found.add(name + " body: became required");
    }
    content(name + " body", was, is, sent);
  }

  private void answers(String name, JsonNode was, JsonNode is, Use answered) {
    was.fields()
        .forEachRemaining(
            answer -> {
              String its = name + " " + answer.getKey();
              JsonNode now = is.path(answer.getKey());
              if (now.isMissingNode()) {
                found.add(its + ": removed");
              } else {
                content(its, answer.getValue(), now, answered);
              }
            });
  }

  private void content(String name, JsonNode was, JsonNode is, Use use) {
    was.path("content")
        .fields()
        .forEachRemaining(
            type -> {
              JsonNode now = is.path("content").path(type.getKey());
              if (now.isMissingNode()) {
                found.add(name + ": " + type.getKey() + " removed");
              } else {
                schema(name, type.getValue().path("schema"), now.path("schema"), use);
              }
            });
  }

  private void schema(String place, JsonNode was, JsonNode is, Use use) {
    new SchemaBreaks(published, running, use, found).compare(place, was, is);
  }
}

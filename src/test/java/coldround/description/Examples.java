package coldround.description;

import coldround.description.DescribedClient.Answer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;

/** Answers that a service gave, kept as the examples of its description. */
final class Examples {

  private static final Path FILE = Path.of("src/main/resources/openapi/examples.json");
  private static final boolean PUBLISH = Boolean.getBoolean("coldround.publish");
  private static final int MOST_ITEMS = 2;
  private static final int MOST_LINES = 3;
  private static final Set<String> TEXTS = Set.of("text/csv", "application/x-ndjson");
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private Examples() {}

  /** Writes those that lack or are no longer as the description says, where it is asked for. */
  static void keep(Described described, Collection<Answer> answers) throws IOException {
    if (!PUBLISH) {
      return;
    }
    ObjectNode examples = (ObjectNode) JSON.readTree(FILE.toFile());
    for (Answer answer : answers) {
      String type = answer.type();
      JsonNode body = answer.call().answer(answer.status()).path("content").path(type);
      JsonNode example = example(answer, type);
      if (example != null && !body.has("examples") && !isGood(described, body, type)) {
        examples.withObject("/" + answer.call().id()).set("response", example);
      }
    }
    Files.writeString(FILE, JSON.writeValueAsString(examples) + "\n");
  }

  private static boolean isGood(Described described, JsonNode body, String type) {
    JsonNode example = body.path("example");
    return !example.isMissingNode()
        && (!type.endsWith("json") || described.faults(body.path("schema"), example).isEmpty());
  }

  private static JsonNode example(Answer answer, String type) {
    if (TEXTS.contains(type)) {
      return new TextNode(
          answer.text().lines().limit(MOST_LINES).collect(Collectors.joining("\r\n", "", "\r\n")));
    }
    if (type.equals("text/calendar")) {
      return new TextNode(firstEvent(answer.text()));
    }
    return type.endsWith("json") ? few(answer.json()) : null;
  }

  private static String firstEvent(String calendar) {
    String last = "END:VEVENT\r\n";
    int end = calendar.indexOf(last);
    return end < 0 ? calendar : calendar.substring(0, end + last.length()) + "END:VCALENDAR\r\n";
  }

  private static JsonNode few(JsonNode answer) {
    if (answer instanceof ArrayNode list) {
      ArrayNode some = JSON.createArrayNode();
      for (int i = 0; i < Math.min(MOST_ITEMS, list.size()); i++) {
        some.add(few(list.get(i)));
      }
      return some;
    }
    if (answer instanceof ObjectNode object) {
      ObjectNode some = JSON.createObjectNode();
      object.fields().forEachRemaining(field -> some.set(field.getKey(), few(field.getValue())));
      return some;
    }
    return answer;
  }
}

package coldround.description;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What of a JSON Schema of OpenAPI 3.1 no longer holds for those who rely on it. What is sent must
 * still be taken, so there it may only become wider; what is answered must still be understood, so
 * there it may only become narrower. A list of allowed values must keep those it has in both.
 */
final class SchemaBreaks {

  private static final int LONGEST_CHAIN = 40;

  /** The way in which a schema is used. */
  enum Use {
    SENT,
    ANSWERED
  }

  private final JsonNode published;
  private final JsonNode running;
  private final Use use;
  private final List<String> found;
  private final Set<String> within = new HashSet<>();

  /**
   * @param published the whole description, for what a schema refers to
   * @param found takes what is found
   */
  SchemaBreaks(JsonNode published, JsonNode running, Use use, List<String> found) {
    this.published = published;
    this.running = running;
    this.use = use;
    this.found = found;
  }

  void compare(String place, JsonNode was, JsonNode is) {
    String pair = was.path("$ref").asText() + " " + is.path("$ref").asText();
    boolean named = pair.length() > 1;
    if (named && !within.add(pair)) {
      // it holds itself
      return;
    }
    each(place, resolved(published, was), resolved(running, is));
    if (named) {
      within.remove(pair);
    }
  }

  private void each(String place, JsonNode before, JsonNode after) {
    types(place, types(before), types(after));
    values(place, before.path("enum"), after.path("enum"));
    if (!before.path("format").equals(after.path("format")) && after.has("format")) {
      found.add(place + ": format was " + said(before, "format") + ", is " + said(after, "format"));
    }
    properties(place, before, after);
    if (before.has("items")) {
      compare(place + "[]", before.get("items"), after.path("items"));
    }
    if (before.path("additionalProperties").isObject()) {
      compare(place + ".*", before.get("additionalProperties"), after.path("additionalProperties"));
    }
  }

  private static String said(JsonNode schema, String member) {
    return schema.path(member).asText("none");
  }

  private void properties(String place, JsonNode before, JsonNode after) {
    before
        .path("properties")
        .fields()
        .forEachRemaining(
            property -> {
              String its = place + "." + property.getKey();
              JsonNode now = after.path("properties").path(property.getKey());
              if (now.isMissingNode()) {
                found.add(its + ": property removed");
              } else {
                compare(its, property.getValue(), now);
              }
            });
    Set<String> must = texts(before.path("required"));
    Set<String> mustNow = texts(after.path("required"));
    if (use == Use.SENT) {
      less(mustNow, must).forEach(name -> found.add(place + "." + name + ": became required"));
    } else {
      less(must, mustNow)
          .forEach(name -> found.add(place + "." + name + ": need not be there any more"));
    }
  }

  private void types(String place, Set<String> was, Set<String> is) {
    boolean holds =
        use == Use.SENT
            ? is.isEmpty() || (!was.isEmpty() && covers(is, was))
            : was.isEmpty() || (!is.isEmpty() && covers(was, is));
    if (!holds) {
      found.add(place + ": type was " + was + ", is " + is);
    }
  }

  /** An integer is a number too. */
  private static boolean covers(Set<String> wide, Set<String> narrow) {
    return narrow.stream()
        .allMatch(
            type -> wide.contains(type) || (type.equals("integer") && wide.contains("number")));
  }

  private void values(String place, JsonNode was, JsonNode is) {
    if (was.isArray() && is.isArray()) {
      less(texts(was), texts(is)).forEach(value -> found.add(place + ": value removed: " + value));
    } else if (use == Use.SENT && is.isArray()) {
      found.add(place + ": only some values are allowed now: " + texts(is));
    }
  }

  /** All that a value may be; empty for anything. */
  private static Set<String> types(JsonNode schema) {
    Set<String> types = new TreeSet<>();
    JsonNode type = schema.path("type");
    if (type.isArray()) {
      type.forEach(each -> types.add(each.asText()));
    } else if (type.isTextual()) {
      types.add(type.asText());
    }
    if (schema.path("nullToo").asBoolean()) {
      types.add("null");
    }
    return types;
  }

  /** What a reference leads to; a choice between that and null is that, and null too. */
  private static JsonNode resolved(JsonNode description, JsonNode schema) {
    JsonNode its = schema;
    boolean nullToo = false;
    for (int i = 0; i < LONGEST_CHAIN; i++) {
      JsonNode only = onlyChoice(its.path("anyOf"));
      if (only != null) {
        nullToo = nullToo || its.path("anyOf").size() > 1;
        its = only;
      } else if (its.has("$ref")) {
        its = description.at(its.get("$ref").asText().substring(1));
      } else {
        break;
      }
    }
    return nullToo ? ((ObjectNode) its.deepCopy()).put("nullToo", true) : its;
  }

  private static JsonNode onlyChoice(JsonNode choices) {
    List<JsonNode> others = new ArrayList<>();
    choices.forEach(
        choice -> {
          if (!choice.path("type").asText().equals("null")) {
            others.add(choice);
          }
        });
    return others.size() == 1 ? others.get(0) : null;
  }

  private static Set<String> texts(JsonNode list) {
    Set<String> texts = new TreeSet<>();
    list.forEach(each -> texts.add(each.asText()));
    return texts;
  }

  private static Set<String> less(Set<String> all, Set<String> without) {
    Set<String> left = new TreeSet<>(all);
    left.removeAll(without);
    return left;
  }
}

package coldround.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Bodies of calls: as described, nearly so, and not at all. */
final class Bodies {

  private static final int DEEPEST = 6;

  private final Calls calls;
  private final Pool pool;

  Bodies(Calls calls, Pool pool) {
    this.calls = calls;
    this.pool = pool;
  }

  byte[] body(Calls.Call call, Random random) {
    String text =
        call.mediaTypes().contains("text/csv") ? Lists.csv(pool, random) : json(call, random);
    return bytes(text, random);
  }

  private String json(Calls.Call call, Random random) {
    // nothing, a little, or much of it is wrong
    double wrong = List.of(0.0, 0.0, 0.1, 0.3).get(random.nextInt(4));
    StringBuilder out = new StringBuilder();
    if (call.example() != null && random.nextBoolean()) {
      copy(call.example(), "", wrong, random, out);
    } else {
      make(call.schema(), "", 0, wrong, random, out);
    }
    return out.toString();
  }

  /** The example with parts left out, doubled or made wrong. */
  private void copy(JsonNode node, String name, double wrong, Random random, StringBuilder out) {
    if (random.nextDouble() < wrong) {
      out.append(Wild.json(random));
    } else if (node.isObject()) {
      List<String> members = new ArrayList<>();
      for (Iterator<Map.Entry<String, JsonNode>> it = node.fields(); it.hasNext(); ) {
        Map.Entry<String, JsonNode> member = it.next();
        double chance = random.nextDouble();
        if (chance < wrong / 2) {
          continue;
        }
        StringBuilder value = new StringBuilder();
        copy(member.getValue(), member.getKey(), wrong, random, value);
        members.add(Wild.quoted(member.getKey()) + ":" + value);
        if (chance > 1 - wrong / 4) {
          members.add(members.get(members.size() - 1));
        }
      }
      if (random.nextDouble() < wrong / 2) {
        members.add(Wild.quoted(Wild.text(random)) + ":" + Wild.json(random));
      }
      out.append('{').append(String.join(",", members)).append('}');
    } else if (node.isArray()) {
      List<String> items = new ArrayList<>();
      for (JsonNode item : node) {
        StringBuilder value = new StringBuilder();
        copy(item, name, wrong, random, value);
        items.add(value.toString());
      }
      out.append('[').append(String.join(",", items)).append(']');
    } else {
      String known = pool.body(name, random);
      out.append(known == null ? node.toString() : known);
    }
  }

  private void make(
      JsonNode described, String name, int depth, double wrong, Random random, StringBuilder out) {
    JsonNode schema = calls.resolved(described);
    String known = pool.body(name, random);
    if (random.nextDouble() < wrong) {
      out.append(Wild.json(random));
    } else if (known != null) {
      out.append(known);
    } else if (schema.has("enum")) {
      out.append(schema.get("enum").get(random.nextInt(schema.get("enum").size())).toString());
    } else {
      value(schema, name, depth, wrong, random, out);
    }
  }

  private void value(
      JsonNode schema, String name, int depth, double wrong, Random random, StringBuilder out) {
    switch (type(schema, random)) {
      case "object" -> object(schema, depth, wrong, random, out);
      case "array" -> {
        List<String> items = new ArrayList<>();
        for (int i = depth < DEEPEST ? random.nextInt(4) : 0; i > 0; i--) {
          StringBuilder item = new StringBuilder();
          make(schema.path("items"), name, depth + 1, wrong, random, item);
          items.add(item.toString());
        }
        out.append('[').append(String.join(",", items)).append(']');
      }
      case "integer" -> out.append(random.nextInt(20) - 2);
      case "number" -> out.append(random.nextInt(4000) / 10.0 - 20);
      case "boolean" -> out.append(random.nextBoolean());
      case "null" -> out.append("null");
      default -> out.append(Wild.quoted(random.nextBoolean() ? "word" : Wild.text(random)));
    }
  }

  private void object(JsonNode schema, int depth, double wrong, Random random, StringBuilder out) {
    List<String> members = new ArrayList<>();
    if (depth < DEEPEST) {
      for (Iterator<String> it = schema.path("properties").fieldNames(); it.hasNext(); ) {
        String member = it.next();
        if (random.nextInt(10) < 6) {
          StringBuilder value = new StringBuilder();
          make(schema.path("properties").get(member), member, depth + 1, wrong, random, value);
          members.add(Wild.quoted(member) + ":" + value);
        }
      }
      if (schema.path("additionalProperties").isObject()) {
        StringBuilder value = new StringBuilder();
        make(schema.get("additionalProperties"), "", depth + 1, wrong, random, value);
        members.add(Wild.quoted(pool.query("technician", random)) + ":" + value);
      }
    }
    out.append('{').append(String.join(",", members)).append('}');
  }

  private static String type(JsonNode schema, Random random) {
    JsonNode type = schema.path("type");
    if (type.isArray()) {
      return type.get(random.nextInt(type.size())).asText();
    }
    return type.asText(schema.has("properties") ? "object" : "string");
  }

  /** Mostly UTF-8, sometimes something else, cut off or with bytes that were hit. */
  private static byte[] bytes(String text, Random random) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    switch (random.nextInt(25)) {
      case 0:
        return text.getBytes(StandardCharsets.UTF_16);
      case 1:
        return ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
      case 2:
        return java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      case 3:
        for (int i = 0; i < 3 && bytes.length > 0; i++) {
          bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
      case 4:
        return (text + text).getBytes(StandardCharsets.UTF_8);
      case 5:
        byte[] noise = new byte[random.nextInt(400)];
        random.nextBytes(noise);
        return noise;
      case 6:
        return random.nextInt(10) > 0
            ? new byte[0]
            : ("{\"name\":\"" + "x".repeat(1_100_000) + "\"}").getBytes(StandardCharsets.UTF_8);
      default:
        return bytes;
    }
  }
}

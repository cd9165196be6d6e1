package coldround.fuzz;

import java.util.List;
import java.util.Random;

/** Values that no well-meaning client sends. */
final class Wild {

  private static final List<String> TEXTS =
      List.of(
          "",
          " ",
          "\0",
          "a\0b",
          "null",
          "undefined",
          "NaN",
          "-Infinity",
          "1e400",
          "-0",
          "0",
          "-1",
          "1",
          "00000000001",
          "2147483648",
          "-9223372036854775809",
          "99999999999999999999999999999999999999",
          "0x1F",
          "1,5",
          "１２",
          "true",
          "[]",
          "{}",
          "[object Object]",
          "../../../../etc/passwd",
          "..\\..\\windows",
          "' OR 1=1 --",
          "\"; DROP TABLE unit; --",
          "%",
          "_",
          "%25%30%30",
          "${jndi:ldap://localhost/x}",
          "{{7*7}}",
          "{id}",
          "<script>alert(1)</script>",
          "\u202Eright to left",
          "e\u0301\u0301\u0301\u0301",
          "\u200B",
          "\uFEFFbom",
          "\uFFFF",
          "ÅÄÖ ß ſ İ ı",
          "日本語",
          "\uD83D\uDE00\uD83C\uDFFD",
          "line\r\nSet-Cookie: a=b",
          "tab\there",
          "a;b=c",
          "a,b,,c",
          "a/b",
          "a?b#c",
          "2026-02-30",
          "0000-00-00",
          "-0001-01-01",
          "+999999999-12-31",
          "-999999999-01-01",
          "9999-12-31",
          "1900-01-01",
          "2026-5-1",
          "2026-12-01T09:00:00-05:00",
          "2026-12-01T25:61:00+99:00",
          "20261201",
          "PT1H",
          "us",
          "planner",
          "R-404A",
          "psig");

  private Wild() {}

  static String text(Random random) {
    return switch (random.nextInt(12)) {
      case 0 -> "x".repeat(1 + random.nextInt(3000));
      case 1 -> letters(random, 1 + random.nextInt(40));
      case 2 -> Long.toString(random.nextLong());
      case 3 -> Double.toString(Double.longBitsToDouble(random.nextLong()));
      default -> TEXTS.get(random.nextInt(TEXTS.size()));
    };
  }

  /** Any characters of any plane but lone surrogates. */
  private static String letters(Random random, int count) {
    StringBuilder text = new StringBuilder();
    while (text.length() < count) {
      int at = random.nextInt(random.nextBoolean() ? 0x300 : 0x110000);
      if (at < 0xD800 || at > 0xDFFF) {
        text.appendCodePoint(at);
      }
    }
    return text.toString();
  }

  /** What stands in JSON where a value does; not always JSON. */
  static String json(Random random) {
    return switch (random.nextInt(22)) {
      case 0 -> "null";
      case 1 -> random.nextBoolean() ? "true" : "false";
      case 2 -> "1e400";
      case 3 -> "-1e-400";
      case 4 -> "9223372036854775808";
      case 5 -> "1".repeat(1 + random.nextInt(1200));
      case 6 -> "0." + "3".repeat(1 + random.nextInt(400));
      case 7 -> "1E1000000000";
      case 8 -> "-0.0";
      case 9 -> Integer.toString(random.nextInt());
      case 10 -> "NaN";
      case 11 -> "01";
      case 12 -> "[]";
      case 13 -> "{}";
      case 14 -> deep(random);
      case 15 -> "\"\\u0000\"";
      case 16 -> "\"\\ud800\"";
      case 17 -> "\"\\udc00\\ud800 x\"";
      case 18 -> "[" + "1,".repeat(random.nextInt(2000)) + "1]";
      case 19 -> "{\"" + "k".repeat(random.nextInt(200)) + "\":{\"value\":1,\"unit\":\"kPa\"}}";
      default -> quoted(text(random));
    };
  }

  private static String deep(Random random) {
    int depth = List.of(10, 39, 41, 1000, 20_000).get(random.nextInt(5));
    return random.nextBoolean()
        ? "[".repeat(depth) + "]".repeat(depth)
        : "{\"a\":".repeat(depth) + "1" + "}".repeat(depth);
  }

  /** As JSON writes a text. */
  static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' ') {
        out.append("\\u%04x".formatted((int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }
}

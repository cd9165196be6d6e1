package coldround.fuzz;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Values that mean something to the service: of codes, days, and of what it holds. */
final class Pool {

  private static final List<String> DAYS =
      List.of("2026-05-04", "2026-05-08", "2026-07-01", "2025-01-31", "2027-12-31", "2024-02-29");

  private static final Map<String, List<String>> WORDS =
      Map.ofEntries(
          Map.entry("measures", List.of("us", "si")),
          Map.entry("limit", List.of("1", "2", "20", "500")),
          // longer than that is no hanging
          Map.entry("wait", List.of("0", "1", "-1", "61", "1.5", "x", "")),
          Map.entry("order", List.of("score", "unit", "-score", "due")),
          Map.entry("type", List.of("walk-in-cooler", "chiller", "ice-machine", "x")),
          Map.entry("kind", List.of("customers", "sites", "units", "visits", "readings", "faults")),
          Map.entry("designation", List.of("R-404A", "R-290", "r404a", "R-744", "R-9999")),
          Map.entry("refrigerant", List.of("R-404A", "R-290", "R-448A")),
          Map.entry("jurisdiction", List.of("US", "US-CA", "DE", "GB", "xx")),
          Map.entry("unit", List.of("degF", "psig", "kPa", "degC", "USD", "deltaF", "lb")),
          Map.entry("elevationUnit", List.of("ft", "m")),
          Map.entry("preview", List.of("true", "false")),
          Map.entry("partial", List.of("true", "false")),
          Map.entry("profile", List.of("standard", "auto", "fuzz")),
          Map.entry("by", List.of("kind", "refrigerant", "maker", "age")),
          Map.entry("class", List.of("walk-in-cooler", "0-5")),
          Map.entry("failureMode", List.of("refrigerant-leak", "high-head-lockout")),
          Map.entry("asOf", DAYS),
          Map.entry("from", DAYS),
          Map.entry("to", DAYS),
          Map.entry("until", DAYS),
          Map.entry("date", DAYS),
          Map.entry("day", DAYS),
          Map.entry("installed", DAYS),
          Map.entry("Prefer", List.of("respond-async", "wait=1", "respond-async, wait=2", "x")),
          Map.entry("Idempotency-Key", List.of("a", "b", "fuzz-1", "fuzz-2", "\u00e4", " ")),
          Map.entry(
              "If-Match", List.of("*", "\"x\"", "W/\"x\"", "\"", "x", "\"a\", \"b\",,", "\"\"")),
          Map.entry(
              "If-None-Match",
              List.of("*", "\"x\"", "W/\"x\"", "\"", "W/", ",,,", "\"a\", W/\"b\"", "\"\\\"")));

  /** Written as JSON where bodies name them; what would take long, or call other machines. */
  private static final Map<String, List<String>> IN_BODIES =
      Map.ofEntries(
          Map.entry("seconds", List.of("1", "0", "-1", "\"1\"", "1.5", "null")),
          Map.entry(
              "url",
              List.of(
                  "\"http://127.0.0.1:9/hook\"",
                  "\"https://localhost/x\"",
                  "\"file:///etc/passwd\"",
                  "\"http://[::1]:9/\"",
                  "\"http://fuzz.invalid/\"",
                  "\"http://a:b@127.0.0.1:9/\"",
                  "\"x\"",
                  "7")),
          Map.entry("runs", List.of("20", "50", "0", "-1", "2000000000", "1e9")),
          Map.entry(
              "role", List.of("\"technician\"", "\"customer\"", "\"scheduler\"", "\"king\"")));

  private final Map<String, List<String>> found = new HashMap<>();

  /** Keeps what the service holds under the name of a path, such as units, or of a parameter. */
  void keep(String name, List<String> values) {
    if (!values.isEmpty()) {
      found.put(name, List.copyOf(values));
    }
  }

  /** A value for a placeholder in the path of a call. */
  String path(Calls.Call call, String name, Random random) {
    List<String> ids = found.get(call.things());
    if (ids != null && (name.equals("id") || name.equals("unit"))) {
      return any(ids, random);
    }
    return query(name, random);
  }

  String query(String name, Random random) {
    List<String> words = WORDS.get(name);
    List<String> codes = found.get(name);
    if (codes != null && (words == null || random.nextBoolean())) {
      return any(codes, random);
    }
    return words == null ? "word" : any(words, random);
  }

  /** Null where nothing is known of a member of that name. */
  String body(String name, Random random) {
    List<String> known = IN_BODIES.get(name);
    if (known != null) {
      return any(known, random);
    }
    List<String> units = found.get("units");
    if (name.equals("unit") && units != null && random.nextBoolean()) {
      return Wild.quoted(any(units, random));
    }
    List<String> words =
        found.containsKey(name) && random.nextBoolean() ? found.get(name) : WORDS.get(name);
    return words == null || random.nextInt(3) == 0 ? null : Wild.quoted(any(words, random));
  }

  private static String any(List<String> values, Random random) {
    return values.get(random.nextInt(values.size()));
  }
}

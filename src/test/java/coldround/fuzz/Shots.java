package coldround.fuzz;

import coldround.fuzz.Calls.Argument;
import coldround.fuzz.Calls.Call;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Makes requests out of a description: the same seed and number make the same request. */
final class Shots {

  private static final List<String> METHODS =
      List.of(
          "GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "BREW", "get",
          "PRI");

  private static final List<String> TYPES =
      List.of(
          "application/json",
          "application/json; charset=utf-16",
          "application/json; charset=\"",
          "application/merge-patch+json",
          "text/csv",
          "text/csv; charset=nonsense",
          "text/plain",
          "application/x-www-form-urlencoded",
          "multipart/form-data",
          "multipart/form-data; boundary=x",
          "application/xml",
          "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
          "*/*",
          "json",
          "/",
          "",
          "application/json, text/csv",
          "image/png;q=\u00e4");

  private static final List<String> ACCEPTED =
      List.of(
          "*/*",
          "application/json",
          "application/problem+json",
          "text/html",
          "text/csv",
          "image/png",
          "*",
          "",
          ",;q=",
          "application/json;q=2",
          "a/b/c",
          "application/json;q=0");

  /** Path texts that escaping as it should be never gives. */
  private static final List<String> CROOKED =
      List.of(
          "%00",
          "%",
          "%zz",
          "%c0%80",
          "%ed%a0%80",
          "%ff%fe",
          "%2e%2e%2f",
          "..",
          ".",
          "%2F",
          "%5c",
          ";a=b",
          "a;b",
          "%0d%0aX:y",
          "%u0041",
          "a%20b",
          "{id}",
          "%252e",
          "~",
          "\u00e4");

  /** Would end the token of the run, and all that is sent behind it were refused. */
  private static final String OWN_END = "/accounts/planner/renew";

  private final List<Call> calls;
  private final Pool pool;
  private final Bodies bodies;
  private final String token;
  private final long seed;

  Shots(Calls calls, Pool pool, String token, long seed) {
    this.calls = calls.all();
    this.pool = pool;
    this.bodies = new Bodies(calls, pool);
    this.token = token;
    this.seed = seed;
  }

  Shot make(int number) {
    Random random = new Random(seed * 1_000_003L + number);
    Call call = calls.get(random.nextInt(calls.size()));
    // half of what is sent keeps to the description but for one place, so that it gets far
    double wrong = List.of(0.0, 0.05, 0.05, 0.4).get(random.nextInt(4));
    String method =
        random.nextDouble() < wrong / 3
            ? METHODS.get(random.nextInt(METHODS.size()))
            : call.method();
    List<String> headers = new ArrayList<>();
    headers.add("Host: localhost");
    if (random.nextInt(100) > 0) {
      headers.add("Authorization: Bearer " + token);
    }
    String target = target(call, wrong, random);
    for (Argument argument : call.arguments()) {
      if (argument.in().equals("header") && random.nextInt(4) == 0) {
        headers.add(argument.name() + ": " + header(pool.query(argument.name(), random)));
      }
    }
    odd(headers, wrong, random);
    byte[] body = null;
    if (!call.mediaTypes().isEmpty() || random.nextDouble() < wrong / 4) {
      body = body(call, wrong, headers, random);
    }
    return new Shot(number, call.id(), method, target, headers, body);
  }

  private byte[] body(Call call, double wrong, List<String> headers, Random random) {
    if (random.nextDouble() < wrong / 4) {
      return null;
    }
    boolean other = call.mediaTypes().isEmpty() || random.nextDouble() < wrong;
    String type = other ? TYPES.get(random.nextInt(TYPES.size())) : call.mediaTypes().get(0);
    if (!other || random.nextInt(8) > 0) {
      headers.add("Content-Type: " + type);
    }
    return call.mediaTypes().isEmpty()
        ? Wild.json(random).getBytes(StandardCharsets.UTF_8)
        : bodies.body(call, random);
  }

  private String target(Call call, double wrong, Random random) {
    String path = call.path();
    StringBuilder query = new StringBuilder();
    for (Argument argument : call.arguments()) {
      String name = argument.name();
      if (argument.in().equals("path")) {
        path = path.replace("{" + name + "}", place(call, name, wrong, random));
      } else if (argument.in().equals("query") && random.nextInt(5) < 2) {
        String value =
            random.nextDouble() < wrong && !name.equals("wait")
                ? Wild.text(random)
                : pool.query(name, random);
        add(query, name, value);
        if (random.nextDouble() < wrong / 4) {
          add(query, name, Wild.text(random));
        }
      }
    }
    if (random.nextDouble() < wrong / 4) {
      query.append(query.isEmpty() ? '?' : '&');
      query.append(CROOKED.get(random.nextInt(CROOKED.size()))).append('=');
      query.append(CROOKED.get(random.nextInt(CROOKED.size())));
    }
    if (random.nextDouble() < wrong / 8) {
      path += "/" + CROOKED.get(random.nextInt(CROOKED.size()));
    }
    return path.replace(OWN_END, "/accounts/word/renew") + query;
  }

  private String place(Call call, String name, double wrong, Random random) {
    if (random.nextDouble() >= wrong) {
      return escaped(pool.path(call, name, random));
    }
    return random.nextBoolean()
        ? CROOKED.get(random.nextInt(CROOKED.size()))
        : escaped(Wild.text(random));
  }

  private static void add(StringBuilder query, String name, String value) {
    query.append(query.isEmpty() ? '?' : '&').append(name).append('=').append(escaped(value));
  }

  private static String escaped(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** Headers that have a meaning and none that is sensible. */
  private static void odd(List<String> headers, double wrong, Random random) {
    if (random.nextDouble() < wrong) {
      headers.add("Accept: " + ACCEPTED.get(random.nextInt(ACCEPTED.size())));
    }
    if (random.nextDouble() < wrong / 4) {
      String value = header(Wild.text(random));
      headers.add(
          switch (random.nextInt(13)) {
            case 0 -> "X-Request-Id: " + value;
            case 1 -> "Range: bytes=" + value;
            case 2 -> "If-Modified-Since: " + value;
            case 3 -> "If-Unmodified-Since: " + value;
            case 4 -> "Accept-Language: " + value;
            case 5 -> "Accept-Encoding: " + value;
            case 6 -> "Origin: " + value;
            case 7 -> "Cookie: coldround=" + value;
            case 8 -> "X-Forwarded-For: " + value;
            case 9 -> "traceparent: 00-" + value;
            case 10 -> "Content-Encoding: gzip";
            case 11 -> "X-HTTP-Method-Override: DELETE";
            default -> "X-" + "y".repeat(random.nextInt(60)) + ": " + value;
          });
    }
    if (random.nextDouble() < wrong / 40) {
      headers.add("X-Long: " + "z".repeat(20_000));
    }
  }

  /** Without control characters: with them it is no HTTP (RFC 9110, 5.5), whatever is called. */
  private static String header(String text) {
    return text.replaceAll("\\p{Cntrl}", "");
  }
}

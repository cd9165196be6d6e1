package coldround.description;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.description.Described.Call;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * A client that knows of the service only its description: it builds each request from it and takes
 * no answer that it does not tell of.
 */
final class DescribedClient {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final HttpClient http = HttpClient.newHttpClient();
  private final URI service;
  private final String token;
  private final Described described;

  /**
   * @param token null for none
   */
  DescribedClient(URI service, String token, Described described) {
    this.service = service;
    this.token = token;
    this.described = described;
  }

  /** What came back, held against the description already. */
  record Answer(Call call, int status, byte[] bytes, Map<String, String> headers) {

    JsonNode json() {
      try {
        return bytes.length == 0 ? MissingNode.getInstance() : MAPPER.readTree(bytes);
      } catch (IOException e) {
        throw new AssertionError(call.id() + " answered no JSON", e);
      }
    }

    String text() {
      return new String(bytes, StandardCharsets.UTF_8);
    }

    String type() {
      return headers.getOrDefault("content-type", "").split(";")[0].strip();
    }

    Answer is(int expected) {
      assertEquals(expected, status, () -> call.id() + ": " + text());
      return this;
    }

    Answer isGood() {
      assertEquals(2, status / 100, () -> call.id() + " answered " + status + ": " + text());
      return this;
    }
  }

  /** Arguments of one call: parameters by name, and the body; what is left out is not sent. */
  static final class Arguments {
    private final Map<String, String> parameters = new LinkedHashMap<>();
    private byte[] body;
    private String mediaType;

    Arguments with(String name, Object value) {
      parameters.put(name, String.valueOf(value));
      return this;
    }

    Arguments body(JsonNode json) {
      body = json.toString().getBytes(StandardCharsets.UTF_8);
      mediaType = Described.JSON;
      return this;
    }

    Arguments body(String type, String text) {
      body = text.getBytes(StandardCharsets.UTF_8);
      mediaType = type;
      return this;
    }
  }

  static Arguments with(String name, Object value) {
    return new Arguments().with(name, value);
  }

  /** The example of the body that a call takes. */
  JsonNode example(String id) {
    JsonNode body = described.call(id).operation().at("/requestBody/content/application~1json");
    JsonNode named = body.path("examples");
    JsonNode example =
        named.isEmpty() ? body.path("example") : named.iterator().next().get("value");
    assertFalse(example.isMissingNode(), id + " shows no body");
    return example.deepCopy();
  }

  Answer call(String id, Arguments arguments) {
    return call(described.call(id), arguments);
  }

  Answer call(Call call, Arguments arguments) {
    HttpRequest.Builder request = HttpRequest.newBuilder(address(call, arguments));
    if (token != null) {
      request.header("Authorization", "Bearer " + token);
    }
    for (JsonNode parameter : call.operation().path("parameters")) {
      String value = arguments.parameters.get(parameter.get("name").asText());
      if (parameter.get("in").asText().equals("header") && value != null) {
        request.header(parameter.get("name").asText(), value);
      }
    }
    JsonNode content = call.operation().at("/requestBody/content");
    if (arguments.body != null) {
      assertTrue(content.has(arguments.mediaType), call.id() + " takes no " + arguments.mediaType);
      request.header("Content-Type", arguments.mediaType);
    }
    request.method(
        call.method(),
        arguments.body == null
            ? BodyPublishers.noBody()
            : BodyPublishers.ofByteArray(arguments.body));
    return checked(call, send(request.build()));
  }

  private URI address(Call call, Arguments arguments) {
    String path = call.path();
    StringBuilder query = new StringBuilder();
    Set<String> unknown = new HashSet<>(arguments.parameters.keySet());
    for (JsonNode parameter : call.operation().path("parameters")) {
      String name = parameter.get("name").asText();
      String value = arguments.parameters.get(name);
      unknown.remove(name);
      if (value == null) {
        assertFalse(parameter.path("required").asBoolean(), call.id() + " needs " + name);
      } else if (parameter.get("in").asText().equals("path")) {
        path = path.replace("{" + name + "}", encoded(value).replace("+", "%20"));
      } else if (parameter.get("in").asText().equals("query")) {
        query.append(query.isEmpty() ? '?' : '&').append(name).append('=').append(encoded(value));
      }
    }
    assertTrue(unknown.isEmpty(), call.id() + " does not tell of " + unknown);
    assertFalse(path.contains("{"), call.id() + " does not tell of all in " + path);
    return service.resolve(path + query);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private HttpResponse<byte[]> send(HttpRequest request) {
    try {
      return http.send(request, HttpResponse.BodyHandlers.ofByteArray());
    } catch (IOException e) {
      throw new AssertionError(request.toString(), e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private Answer checked(Call call, HttpResponse<byte[]> response) {
    Map<String, String> headers = new LinkedHashMap<>();
    response.headers().map().forEach((name, values) -> headers.put(name, values.get(0)));
    Answer answer = new Answer(call, response.statusCode(), response.body(), headers);
    assertTrue(
        call.tells(answer.status()),
        () -> call.id() + " does not tell of " + answer.status() + ": " + answer.text());
    JsonNode content = call.answer(answer.status()).path("content");
    if (answer.bytes().length == 0) {
      assertTrue(content.isEmpty(), () -> call.id() + " " + answer.status() + " tells of a body");
      return answer;
    }
    assertTrue(
        content.has(answer.type()),
        () -> "%s %d does not tell of %s".formatted(call.id(), answer.status(), answer.type()));
    if (answer.type().endsWith("json") && !answer.type().equals("application/x-ndjson")) {
      assertEquals(
          Set.of(),
          described.faults(content.get(answer.type()).path("schema"), answer.json()),
          () -> call.id() + " answered otherwise than it is described");
    }
    return answer;
  }
}

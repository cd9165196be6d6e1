package coldround.description;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A client that knows nothing but the description of the interface: calls go by operationId. */
final class DescribedClient {

  /** An answer, and what the description says of it. */
  record Answer(int status, String type, String body, JsonNode described) {}

  private record Call(String method, String path, JsonNode operation) {}

  private final HttpClient http = HttpClient.newHttpClient();
  private final JsonNode description;
  private final URI service;
  private final String token;

  DescribedClient(JsonNode description, URI service, String token) {
    this.description = description;
    this.service = service;
    this.token = token;
  }

  /**
   * @param parameters by name, wherever the description says they go
   * @param body null for none
   */
  Answer call(String operationId, Map<String, String> parameters, String body) {
    Call call = find(operationId);
    String path = call.path();
    List<String> query = new ArrayList<>();
    HttpRequest.Builder request = HttpRequest.newBuilder();
    for (JsonNode parameter : call.operation().path("parameters")) {
      String name = parameter.get("name").asText();
      String value = parameters.get(name);
      if (value == null) {
        continue;
      }
      switch (parameter.get("in").asText()) {
        case "path" -> path = path.replace("{" + name + "}", encoded(value));
        case "query" -> query.add(encoded(name) + "=" + encoded(value));
        default -> request.header(name, value);
      }
    }
    if (path.contains("{")) {
      throw new AssertionError(operationId + " describes no parameter for " + path);
    }
    String address = path + (query.isEmpty() ? "" : "?" + String.join("&", query));
    request.uri(service.resolve(address)).header("Authorization", "Bearer " + token);
    if (body != null) {
      String type =
          call.operation().path("requestBody").path("content").fieldNames().next();
      request.header("Content-Type", type);
    }
    request.method(
        call.method().toUpperCase(java.util.Locale.ROOT),
        body == null
            ? HttpRequest.BodyPublishers.noBody()
            : HttpRequest.BodyPublishers.ofString(body));
    return send(request.build(), call);
  }

  private Answer send(HttpRequest request, Call call) {
    try {
      HttpResponse<String> response = http.send(request, HttpResponse.BodyHandlers.ofString());
      String type = response.headers().firstValue("Content-Type").orElse("").split(";")[0];
      JsonNode responses = call.operation().get("responses");
      return new Answer(
          response.statusCode(),
          type,
          response.body(),
          responses.path(Integer.toString(response.statusCode())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private Call find(String operationId) {
    for (var path : description.get("paths").properties()) {
      for (var method : path.getValue().properties()) {
        if (method.getValue().path("operationId").asText().equals(operationId)) {
          return new Call(method.getKey(), path.getKey(), method.getValue());
        }
      }
    }
    throw new AssertionError("the description knows no " + operationId);
  }
}

package coldround.app;

import com.fasterxml.jackson.core.type.TypeReference;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.responses.APIResponses;

/** Refusals in the description: which a call may give, each kind with what it looks like. */
final class DescribedProblems {

  private static final String SCHEMA = "Problem";
  private static final String MEDIA_TYPE = "application/problem+json";
  private static final String NAMES = "urn:coldround:problem:";

  /** What a status means where a call says nothing of its own. */
  private static final Map<String, String> USUAL =
      Map.ofEntries(
          Map.entry(
              "400",
              "bad-request: a parameter or field is wrong; errors say which and how to mend it"),
          Map.entry("401", "not-known: no token, or one that is not known"),
          Map.entry("403", "http-403, or not-allowed: not for this account"),
          Map.entry("404", "not-found: there is nothing of that name"),
          Map.entry("409", "conflict"),
          Map.entry("412", "changed: it is not as the caller has seen it"),
          Map.entry("413", "too-large: the body is too large"),
          Map.entry("415", "http-415: the body is of another media type"),
          Map.entry("422", "idempotency-key-reused: the key stands for another call"),
          Map.entry(
              "429", "too-many-calls, or too-many-guesses: Retry-After says when to come again"),
          Map.entry(
              "503",
              "busy: others write the same at this time; Retry-After says when to come again"));

  /** A kind of problem as it looks once. */
  record Kind(int status, String title, String detail) {}

  private final Map<String, Kind> kinds =
      Description.read(
          "/openapi/problems.json", new TypeReference<LinkedHashMap<String, Kind>>() {});

  void add(org.eclipse.microprofile.openapi.models.Components components) {
    components.addSchema(SCHEMA, schema());
  }

  private Schema schema() {
    Schema error =
        Description.object()
            .addProperty("field", Description.text("Parameter, JSON pointer or column"))
            .addProperty("value", Description.text("What was sent"))
            .addProperty("message", Description.text("What is wrong and how to mend it"))
            .required(List.of("field", "message"));
    String known =
        kinds.entrySet().stream()
            .map(kind -> kind.getKey() + " (" + kind.getValue().status() + ")")
            .collect(Collectors.joining(", "));
    return Description.object()
        .description("A refusal as RFC 9457 problem details; more members may follow")
        .addProperty(
            "type",
            Description.text(
                "Stable name of the kind of problem, for programs: " + NAMES + " and " + known))
        .addProperty("title", Description.text("The kind of problem, for people"))
        .addProperty("status", OASFactory.createSchema().addType(Schema.SchemaType.INTEGER))
        .addProperty("detail", Description.text("What is wrong here and how to mend it"))
        .addProperty(
            "instance", Description.text("Which call it was, by its X-Request-Id, for the log"))
        .addProperty(
            "errors", OASFactory.createSchema().addType(Schema.SchemaType.ARRAY).items(error))
        .addProperty(
            "known",
            OASFactory.createSchema()
                .description("What is known instead, where the call contradicts it"))
        .additionalPropertiesBoolean(true)
        .required(List.of("type", "title", "status", "detail"));
  }

  /** Adds what may happen to calls of this make, and shows each refusal. */
  void complete(String path, HttpMethod method, Operation operation) {
    APIResponses responses = operation.getResponses();
    boolean open = operation.getSecurity() != null && operation.getSecurity().isEmpty();
    if (!open) {
      refusal(responses, "401");
      refusal(responses, "403");
      refusal(responses, "429");
    }
    boolean asks = operation.getParameters() != null && !operation.getParameters().isEmpty();
    if (asks || operation.getRequestBody() != null) {
      refusal(responses, "400");
    }
    if (path.contains("{")) {
      refusal(responses, "404");
    }
    if (operation.getRequestBody() != null) {
      refusal(responses, "413");
      refusal(responses, "415");
    }
    if (asks && takes(operation, "Idempotency-Key")) {
      refusal(responses, "422");
    }
    if (method != HttpMethod.GET) {
      refusal(responses, "503");
    }
    refusal(responses, "default");
    responses
        .getAPIResponses()
        .forEach(
            (status, response) -> {
              if (status.compareTo("400") >= 0) {
                show(status, response);
              }
            });
  }

  private static boolean takes(Operation operation, String parameter) {
    return operation.getParameters().stream().anyMatch(each -> parameter.equals(each.getName()));
  }

  private static void refusal(APIResponses responses, String status) {
    if (!responses.hasAPIResponse(status)) {
      responses.addAPIResponse(
          status,
          OASFactory.createAPIResponse()
              .description(USUAL.getOrDefault(status, "Any other problem")));
    }
  }

  private void show(String status, APIResponse response) {
    MediaType body =
        OASFactory.createMediaType()
            .schema(OASFactory.createSchema().ref("#/components/schemas/" + SCHEMA));
    Map<String, Kind> its = status.equals("default") ? Map.of() : meant(status, response);
    its.forEach(
        (type, kind) ->
            body.addExample(type, OASFactory.createExample().value(example(type, kind))));
    response.setContent(OASFactory.createContent().addMediaType(MEDIA_TYPE, body));
  }

  // in the order of RFC 9457, and the same in each build
  private static Map<String, Object> example(String type, Kind kind) {
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("type", NAMES + type);
    members.put("title", kind.title());
    members.put("status", kind.status());
    members.put("detail", kind.detail());
    return members;
  }

  /** The kinds that the description names, else what the status usually means. */
  private Map<String, Kind> meant(String status, APIResponse response) {
    Map<String, Kind> named = named(status, String.valueOf(response.getDescription()));
    if (named.isEmpty()) {
      named = named(status, USUAL.getOrDefault(status, ""));
      response.setDescription(String.join(", ", named.keySet()) + ": " + response.getDescription());
    } else {
      response.setDescription(response.getDescription().replaceAll(NAMES + " *", ""));
    }
    return named;
  }

  private Map<String, Kind> named(String status, String description) {
    Map<String, Kind> named = new LinkedHashMap<>();
    kinds.forEach(
        (type, kind) -> {
          boolean said =
              Pattern.compile("(?<![\\w-])" + type + "(?![\\w-])").matcher(description).find();
          if (said && status.equals(Integer.toString(kind.status()))) {
            named.put(type, kind);
          }
        });
    return named;
  }
}

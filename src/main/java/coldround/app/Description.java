package coldround.app;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.responses.APIResponses;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;

/**
 * Completes the description of the interface with what holds for all calls: the token, problems,
 * parameters of the same meaning everywhere, and examples, which are answers that a service gave.
 */
public class Description implements OASFilter {

  private static final String TOKEN = "token";
  private static final String PROBLEM = "Problem";
  private static final String PROBLEM_TYPE = "application/problem+json";

  private static final Map<String, String> PARAMETERS =
      Map.ofEntries(
          Map.entry("after", "Opaque place behind which to go on: 'next' of the page before"),
          Map.entry("limit", "Most items on a page, 1 to 500, usually 100"),
          Map.entry("wait", "Seconds to wait for the first change, 0 to 60, usually 0"),
          Map.entry("measures", "Units of the answer: us (usual) or si"),
          Map.entry("asOf", "Day for which it is worked out, such as 2026-05-31; usually today"),
          Map.entry("from", "First day, such as 2026-05-01"),
          Map.entry("to", "Last day, such as 2026-05-31"),
          Map.entry("customer", "Code of a customer"),
          Map.entry("site", "Code of a site"),
          Map.entry("unit", "Id or tag of a unit, or a unit of measure where a value is given"),
          Map.entry("technician", "Code of a technician"),
          Map.entry("id", "Id, as an earlier answer gave it"),
          Map.entry("kind", "Kind of list, such as units"),
          Map.entry("type", "Kind of unit, such as walk-in-cooler"),
          Map.entry("refrigerant", "Designation of a refrigerant, such as R-404A"),
          Map.entry("designation", "Designation of a refrigerant, such as R-404A"),
          Map.entry("order", "What the list is ordered by"),
          Map.entry("preview", "true reads and tells, but applies nothing; usually false"),
          Map.entry("partial", "false applies all rows or none; usually true"),
          Map.entry("profile", "How the file is read; usually standard"),
          Map.entry("pressure", "Pressure, in the unit of measure that 'unit' names"),
          Map.entry("temperature", "Temperature, in the unit of measure that 'unit' names"),
          Map.entry("ambient", "Temperature of the air entering the condenser"),
          Map.entry("split", "Condensing temperature less that of the air"),
          Map.entry("elevation", "Height over sea level, for gauge pressures"),
          Map.entry("visit", "Number of a visit"),
          Map.entry("number", "Number of a visit"),
          Map.entry("letter", "Id of a dead letter"),
          Map.entry("jurisdiction", "Whose law holds: ISO 3166 country, optional subdivision"),
          Map.entry("elevationUnit", "Unit of measure of 'elevation', such as ft"),
          Map.entry("q", "Text to be found in names and codes"),
          Map.entry(
              "Idempotency-Key", "Text of the caller's own: the same call again is done once"),
          Map.entry(
              "If-Match", "ETag of what the caller has seen; 412 when it is not that any more"),
          Map.entry("If-None-Match", "ETag of what the caller has, or * for a first time"));

  private Map<String, Map<String, Object>> examples;

  @Override
  public void filterOpenAPI(OpenAPI api) {
    examples = examples();
    if (api.getComponents() == null) {
      api.setComponents(OASFactory.createComponents());
    }
    api.getComponents()
        .addSecurityScheme(
            TOKEN,
            OASFactory.createSecurityScheme()
                .type(SecurityScheme.Type.HTTP)
                .scheme("bearer")
                .description("Token of an account (RFC 6750)"));
    api.getComponents().addSchema(PROBLEM, problem());
    api.setSecurity(
        List.of(OASFactory.createSecurityRequirement().addScheme(TOKEN, List.<String>of())));
    api.getPaths()
        .getPathItems()
        .forEach(
            (path, item) -> item.getOperations().values().forEach(each -> complete(path, each)));
  }

  private static Map<String, Map<String, Object>> examples() {
    try (InputStream in = Description.class.getResourceAsStream("/openapi/examples.json")) {
      return new ObjectMapper().readValue(in, new TypeReference<>() {});
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Schema problem() {
    Schema error =
        object()
            .addProperty("field", text("Parameter, JSON pointer or column"))
            .addProperty("value", text("What was sent"))
            .addProperty("message", text("What is wrong and how to mend it"));
    return object()
        .description("A refusal as RFC 9457 problem details; more members may follow")
        .addProperty("type", text("Stable name of the kind of problem, for programs"))
        .addProperty("title", text("The kind of problem, for people"))
        .addProperty("status", OASFactory.createSchema().addType(Schema.SchemaType.INTEGER))
        .addProperty("detail", text("What is wrong here and how to mend it"))
        .addProperty(
            "errors", OASFactory.createSchema().addType(Schema.SchemaType.ARRAY).items(error))
        .required(List.of("type", "title", "status", "detail"));
  }

  private static Schema object() {
    return OASFactory.createSchema().addType(Schema.SchemaType.OBJECT);
  }

  private static Schema text(String description) {
    return OASFactory.createSchema().addType(Schema.SchemaType.STRING).description(description);
  }

  private void complete(String path, Operation operation) {
    List<Parameter> parameters =
        operation.getParameters() == null ? List.of() : operation.getParameters();
    parameters.forEach(Description::describe);
    APIResponses responses = operation.getResponses();
    boolean open = operation.getSecurity() != null && operation.getSecurity().isEmpty();
    if (!open) {
      refusal(responses, "401", "No token, or one that is not known: not-known");
      refusal(responses, "403", "Not for this account");
    }
    if (!parameters.isEmpty() || operation.getRequestBody() != null) {
      refusal(responses, "400", "A parameter or field is wrong; see errors: bad-request");
    }
    if (path.contains("{")) {
      refusal(responses, "404", "There is nothing of that name: not-found");
    }
    refusal(responses, "default", "Any other problem");
    responses
        .getAPIResponses()
        .forEach(
            (status, response) -> {
              if (status.compareTo("400") >= 0) {
                problem(status, response);
              }
            });
    exemplify(operation, responses);
  }

  private static void describe(Parameter parameter) {
    if (parameter.getDescription() == null) {
      parameter.setDescription(PARAMETERS.get(parameter.getName()));
    }
  }

  private static void refusal(APIResponses responses, String status, String description) {
    if (!responses.hasAPIResponse(status)) {
      responses.addAPIResponse(status, OASFactory.createAPIResponse().description(description));
    }
  }

  private static void problem(String status, APIResponse response) {
    MediaType body =
        OASFactory.createMediaType()
            .schema(OASFactory.createSchema().ref("#/components/schemas/" + PROBLEM));
    if (!status.equals("default")) {
      String description = response.getDescription();
      String type =
          description.matches("(?s).*: [a-z0-9-]+")
              ? description.substring(description.lastIndexOf(": ") + 2)
              : "http-" + status;
      body.example(
          Map.of(
              "type",
              "urn:coldround:problem:" + type,
              "title",
              description,
              "status",
              Integer.parseInt(status),
              "detail",
              description));
    }
    response.setContent(OASFactory.createContent().addMediaType(PROBLEM_TYPE, body));
  }

  /** Examples under "request" and "response" of the operation's id. */
  private void exemplify(Operation operation, APIResponses responses) {
    Map<String, Object> given = examples.getOrDefault(operation.getOperationId(), Map.of());
    if (operation.getRequestBody() != null && operation.getRequestBody().getContent() != null) {
      show(operation.getRequestBody().getContent(), given.get("request"));
    }
    responses
        .getAPIResponses()
        .forEach(
            (status, response) -> {
              if (status.startsWith("2") && given.containsKey("response")) {
                if (response.getContent() == null) {
                  response.setContent(
                      OASFactory.createContent()
                          .addMediaType(
                              "application/json", OASFactory.createMediaType().schema(object())));
                }
                show(response.getContent(), given.get("response"));
              }
            });
  }

  private static void show(Content content, Object example) {
    if (example != null) {
      content.getMediaTypes().values().forEach(body -> body.setExample(example));
    }
  }
}

package coldround.app;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;

/**
 * Completes the description of the interface with what holds for all calls: the token, problems,
 * parameters of the same meaning everywhere, pages, tags, examples; and what the service sends.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class Description implements OASFilter {

  private static final String TOKEN = "token";
  private static final String SCHEMAS = "#/components/schemas/";

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
          Map.entry("name", "Name of a profile"),
          Map.entry("If-None-Match", "ETag of what the caller has, or * for a first time"));

  private final DescribedProblems problems = new DescribedProblems();
  private final DescribedAnswers answers = new DescribedAnswers();

  @Override
  public void filterOpenAPI(OpenAPI api) {
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
    api.setSecurity(
        List.of(OASFactory.createSecurityRequirement().addScheme(TOKEN, List.<String>of())));
    Map<String, Schema> schemas = api.getComponents().getSchemas();
    if (schemas != null) {
      snapshot(schemas);
      schemas.values().forEach(DescribedAnswers::nullable);
    }
    problems.add(api.getComponents());
    api.getPaths()
        .getPathItems()
        .forEach(
            (path, item) ->
                item.getOperations().forEach((method, each) -> complete(path, method, each)));
    api.addWebhook("change", webHook());
  }

  /** The feed knows nothing of tasks, but what it hands over here are tasks. */
  private static void snapshot(Map<String, Schema> schemas) {
    schemas
        .get("SnapshotPage")
        .getProperties()
        .get("items")
        .setItems(OASFactory.createSchema().ref(SCHEMAS + "Task"));
  }

  private void complete(String path, HttpMethod method, Operation operation) {
    if (operation.getParameters() != null) {
      operation.getParameters().forEach(Description::describe);
    }
    answers.complete(method, operation);
    problems.complete(path, method, operation);
    Map<String, APIResponse> ordered = new TreeMap<>(operation.getResponses().getAPIResponses());
    operation.getResponses().setAPIResponses(ordered);
  }

  private static void describe(Parameter parameter) {
    if (parameter.getDescription() == null) {
      parameter.setDescription(PARAMETERS.get(parameter.getName()));
    }
  }

  /** What is sent to those who subscribed. */
  private static PathItem webHook() {
    Operation post =
        OASFactory.createOperation()
            .operationId("tellChange")
            .tags(List.of("Feed"))
            .summary(
                "One change, sent to the address of a subscription, at least once and in order,"
                    + " with the headers of Standard Webhooks 1.0.0")
            .requestBody(
                OASFactory.createRequestBody()
                    .required(true)
                    .content(
                        OASFactory.createContent()
                            .addMediaType(
                                "application/cloudevents+json",
                                OASFactory.createMediaType()
                                    .schema(
                                        OASFactory.createSchema().ref(SCHEMAS + "CloudEvent")))))
            .responses(
                OASFactory.createAPIResponses()
                    .addAPIResponse("2XX", OASFactory.createAPIResponse().description("Taken"))
                    .addAPIResponse(
                        "410",
                        OASFactory.createAPIResponse()
                            .description("No more is wanted: the subscription is stopped"))
                    .addAPIResponse(
                        "default",
                        OASFactory.createAPIResponse().description("It is tried again later")));
    header(post, "webhook-id", "The same for each try of one change");
    header(post, "webhook-timestamp", "When this try was made, in seconds since 1970");
    header(post, "webhook-signature", "v1 and HMAC-SHA256 in base64, one for each valid secret");
    return OASFactory.createPathItem().POST(post);
  }

  private static void header(Operation operation, String name, String description) {
    operation.addParameter(
        OASFactory.createParameter()
            .name(name)
            .in(Parameter.In.HEADER)
            .required(true)
            .description(description)
            .schema(text(null)));
  }

  static Schema object() {
    return OASFactory.createSchema().addType(Schema.SchemaType.OBJECT);
  }

  static Schema text(String description) {
    return OASFactory.createSchema().addType(Schema.SchemaType.STRING).description(description);
  }

  static <T> T read(String resource, TypeReference<T> shape) {
    try (InputStream in = Description.class.getResourceAsStream(resource)) {
      return new ObjectMapper().readValue(in, shape);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package coldround.app;

import com.fasterxml.jackson.core.type.TypeReference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * Good answers in the description: lists come in pages, reads have a tag, what is not known is
 * null, and examples are answers that a service gave.
 */
final class DescribedAnswers {

  private static final String JSON = "application/json";

  /** Written as they are read, or made anew each time: these have no tag. */
  private static final Set<String> WITHOUT_TAG =
      Set.of(
          "exportCsv", "exportNdjson", "readReplacementPlanPdf", "printRouteSheets", "takeBackup");

  private final Map<String, Map<String, Object>> examples =
      Description.read("/openapi/examples.json", new TypeReference<>() {});

  void complete(HttpMethod method, Operation operation) {
    if (operation.getRequestBody() != null && operation.getRequestBody().getContent() != null) {
      show(operation.getRequestBody().getContent(), operation, "request");
    }
    boolean tagged = method == HttpMethod.GET && !WITHOUT_TAG.contains(operation.getOperationId());
    operation
        .getResponses()
        .getAPIResponses()
        .forEach(
            (status, response) -> {
              if (status.startsWith("2")) {
                good(operation, response, tagged);
              }
            });
    if (tagged) {
      conditional(operation);
    }
  }

  private void good(Operation operation, APIResponse response, boolean tagged) {
    if (response.getDescription() == null || response.getDescription().isEmpty()) {
      response.setDescription("Done as asked");
    }
    if (tagged) {
      response.addHeader(
          "ETag",
          OASFactory.createHeader()
              .description("Strong tag of these bytes (RFC 9110)")
              .schema(Description.text("In quotes")));
    }
    if (response.getContent() != null) {
      MediaType body = response.getContent().getMediaType(JSON);
      if (body != null && body.getSchema() != null && isList(body.getSchema())) {
        body.setSchema(page(body.getSchema()));
        response.addHeader(
            "Link",
            OASFactory.createHeader()
                .description("The following page, rel=\"next\" (RFC 8288); absent on the last")
                .schema(Description.text("Links")));
      }
      response.getContent().getMediaTypes().forEach(DescribedAnswers::text);
      show(response.getContent(), operation, "response");
    }
  }

  /** What is no JSON is a text or a file. */
  private static void text(String type, MediaType body) {
    if (body.getSchema() == null && !type.endsWith("json")) {
      body.setSchema(Description.text(null));
      if (type.equals("application/pdf")) {
        body.getSchema().setFormat("binary");
      }
    }
  }

  private static boolean isList(Schema schema) {
    return schema.getType() != null && schema.getType().contains(SchemaType.ARRAY);
  }

  private static Schema page(Schema list) {
    Schema next =
        Description.text("Place of the following page, to be sent as 'after'; null on the last")
            .addType(SchemaType.NULL);
    return Description.object()
        .addProperty("items", list)
        .addProperty("next", next)
        .required(List.of("items", "next"));
  }

  private static void conditional(Operation operation) {
    operation.addParameter(
        OASFactory.createParameter()
            .name("If-None-Match")
            .in(Parameter.In.HEADER)
            .description("ETag of what the caller has; 304 when it is still so")
            .schema(Description.text("In quotes")));
    operation
        .getResponses()
        .addAPIResponse(
            "304",
            OASFactory.createAPIResponse().description("What If-None-Match named is still so"));
  }

  /** An example that the call itself shows stays. */
  private void show(Content content, Operation operation, String part) {
    Object example = examples.getOrDefault(operation.getOperationId(), Map.of()).get(part);
    content
        .getMediaTypes()
        .values()
        .forEach(
            body -> {
              if (example != null && body.getExamples() == null && body.getExample() == null) {
                body.setExample(example);
              }
            });
  }

  /** What need not be there may also be null, in answers and in what is sent. */
  static void nullable(Schema schema) {
    if (schema == null) {
      return;
    }
    if (schema.getProperties() != null) {
      List<String> required = schema.getRequired() == null ? List.of() : schema.getRequired();
      for (String name : new ArrayList<>(schema.getProperties().keySet())) {
        Schema property = schema.getProperties().get(name);
        nullable(property);
        if (!required.contains(name)) {
          schema.addProperty(name, orNull(property));
        }
      }
    }
    nullable(schema.getItems());
    nullable(schema.getAdditionalPropertiesSchema());
  }

  private static Schema orNull(Schema schema) {
    if (schema.getRef() != null) {
      return OASFactory.createSchema()
          .description(schema.getDescription())
          .addAnyOf(OASFactory.createSchema().ref(schema.getRef()))
          .addAnyOf(OASFactory.createSchema().addType(SchemaType.NULL));
    }
    if (schema.getType() != null && !schema.getType().contains(SchemaType.NULL)) {
      schema.addType(SchemaType.NULL);
      if (schema.getEnumeration() != null) {
        schema.addEnumeration(null);
      }
    }
    return schema;
  }
}

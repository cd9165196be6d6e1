package coldround.feed.edge;

import coldround.feed.EventTypes;
import coldround.http.Answers;
import coldround.http.Problem;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.security.SecurityRequirementsSet;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The JSON Schema (2020-12) of each kind of change, where dataschema of its events points. */
@Path("/" + SchemasResource.PATH)
@Tag(name = "Feed")
public class SchemasResource {

  static final String PATH = "api/v1/schemas";

  private static final String MEDIA_TYPE = "application/schema+json";

  private final Answers answers;

  @Inject
  SchemasResource(Answers answers) {
    this.answers = answers;
  }

  @GET
  @Path("{type}")
  @Produces({MEDIA_TYPE, MediaType.APPLICATION_JSON})
  @SecurityRequirementsSet
  @PermitAll
  @Operation(
      operationId = "readSchema",
      summary = "JSON Schema of the data of one kind of change; needs no token")
  @APIResponse(
      responseCode = "200",
      description = "The schema",
      content = @Content(mediaType = MEDIA_TYPE, schema = @Schema(type = SchemaType.OBJECT)))
  public Response schema(
      @PathParam("type")
          @Parameter(
              description = "kind of change, as 'type' of its events",
              example = EventTypes.TASK_PLANNED)
          String type,
      @Context Request request) {
    if (!EventTypes.ALL.contains(type)) {
      throw Problem.notFound("kind of change '" + type + "'; there are " + EventTypes.ALL);
    }
    return answers.read(text(type), MediaType.valueOf(MEDIA_TYPE), request).build();
  }

  private static byte[] text(String type) {
    String file = "/schemas/" + type + ".json";
    try (InputStream in = SchemasResource.class.getResourceAsStream(file)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

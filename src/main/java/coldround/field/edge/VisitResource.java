package coldround.field.edge;

import coldround.access.Role;
import coldround.field.edge.VisitRecording.Recorded;
import coldround.http.Answers;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One visit at its own address. */
@Path("/api/v1/units/{unit}/visits/{visit}")
@Tag(name = "Fleet")
public class VisitResource {

  private final VisitRecording recording;
  private final Answers answers;

  @Inject
  VisitResource(VisitRecording recording, Answers answers) {
    this.recording = recording;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(operationId = "getVisit", summary = "One visit with the verdicts on its readings")
  @APIResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = VisitView.class)))
  public Response visit(
      @PathParam("unit") String unit,
      @PathParam("visit") String visit,
      @QueryParam("measures") String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    Recorded stored =
        recording
            .stored(unit, visit)
            .orElseThrow(() -> Problem.notFound("visit '" + visit + "' of this unit"));
    return answers.read(VisitsResource.view(stored, system), request);
  }
}

package coldround.field.edge;

import coldround.access.Role;
import coldround.field.FieldVisit;
import coldround.field.edge.VisitRecording.Recorded;
import coldround.fleet.FleetWriting.Outcome;
import coldround.http.Answers;
import coldround.http.JsonBody;
import coldround.http.OneCall;
import coldround.http.Parameters;
import coldround.http.Preconditions;
import coldround.http.Problem;
import coldround.http.Reply;
import coldround.quantity.MeasureSystem;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.SecurityContext;
import jakarta.ws.rs.core.UriBuilder;
import java.io.InputStream;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Visits straight from the field, with an instant answer to their readings. */
@Path("/api/v1/visits")
@Tag(name = "Fleet")
public class VisitsResource {

  private final VisitRecording recording;
  private final OneCall calls;
  private final JsonBody json;
  private final Answers answers;

  @Inject
  VisitsResource(VisitRecording recording, OneCall calls, JsonBody json, Answers answers) {
    this.answers = answers;
    this.recording = recording;
    this.calls = calls;
    this.json = json;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(
      operationId = "recordVisit",
      summary =
          "One visit from the field; the same unit and visit number again is a correction. Answers"
              + " with verdicts on its readings")
  @RequestBody(
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = VisitBody.class)))
  @APIResponse(
      responseCode = "201",
      description = "The visit was new",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = VisitView.class)))
  @APIResponse(
      responseCode = "200",
      description = "The visit was corrected, or is as it was",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = VisitView.class)))
  @APIResponse(
      responseCode = "412",
      description = "changed: the visit is not as the caller has seen it; known tells how it is")
  @APIResponse(responseCode = "422", description = "A field of the visit is wrong; see errors")
  public Response record(
      @HeaderParam("Idempotency-Key") String key,
      @Parameter(description = "ETag of the visit as read with the same measures")
          @HeaderParam("If-Match")
          String ifMatch,
      @Parameter(description = "* for a visit that must be new") @HeaderParam("If-None-Match")
          String ifNoneMatch,
      @QueryParam("measures") String measures,
      @Context SecurityContext caller,
      InputStream sent) {
    MeasureSystem system = Parameters.measures(measures);
    byte[] bytes = JsonBody.bytes(sent);
    VisitBody body = json.read(bytes, VisitBody.class);
    if (body.unit() == null || body.unit().isEmpty()) {
      throw missingUnit();
    }
    FieldVisit visit = numbered(body.read());
    String scope = caller.getUserPrincipal().getName() + " visits " + system;
    return calls.run(
        key,
        scope,
        bytes,
        () -> {
          if (ifMatch != null || ifNoneMatch != null) {
            check(body.unit(), visit.number().strip(), system, ifMatch, ifNoneMatch);
          }
          return reply(recording.record(body.unit(), visit, entry -> {}), system);
        });
  }

  private void check(
      String unit, String number, MeasureSystem system, String ifMatch, String ifNoneMatch) {
    recording.lock(unit);
    VisitView known = recording.stored(unit, number).map(there -> view(there, system)).orElse(null);
    String tag = known == null ? null : Answers.tag(answers.bytes(known));
    Preconditions.check(ifMatch, ifNoneMatch, tag, known);
  }

  private static Problem missingUnit() {
    return new Problem(
        422,
        "wrong-visit",
        "The visit cannot be taken as it is",
        "/unit: name the unit by its id, as in /api/v1/units.",
        List.of(
            new Problem.FieldError("/unit", "", "name the unit by its id, as in /api/v1/units.")));
  }

  private static FieldVisit numbered(FieldVisit visit) {
    return visit.number().isBlank() ? visit.numbered("field-" + UUID.randomUUID()) : visit;
  }

  private Reply reply(Recorded recorded, MeasureSystem system) {
    int status = recorded.outcome() == Outcome.CREATED ? 201 : 200;
    return calls.reply(status, location(recorded), view(recorded, system));
  }

  static String location(Recorded recorded) {
    return UriBuilder.fromPath("/api/v1/units/{unit}/visits/{visit}")
        .build(recorded.unit(), recorded.visit().number())
        .toString();
  }

  static VisitView view(Recorded recorded, MeasureSystem system) {
    return VisitView.of(recorded.unit(), recorded.visit(), recorded.judgement(), system);
  }
}

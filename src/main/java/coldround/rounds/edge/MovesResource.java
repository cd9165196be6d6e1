package coldround.rounds.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.JsonBody;
import coldround.http.Parameters;
import coldround.http.Preconditions;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import coldround.rounds.ByHand;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** A stop moved by hand: what it costs first, then the move. */
@Path("/api/v1/rounds/{id: [^/.]+}/moves")
@Tag(name = "Rounds")
public class MovesResource {

  private final Moving moving;
  private final Planner planner;
  private final Answers answers;
  private final JsonBody json;

  @Inject
  MovesResource(Moving moving, Planner planner, Answers answers, JsonBody json) {
    this.moving = moving;
    this.planner = planner;
    this.answers = answers;
    this.json = json;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "moveStop",
      summary =
          "Moves a stop to another place in the order, another technician or another day; with"
              + " preview only tells what it would cost and which rules it would break")
  @RequestBody(
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = MoveBody.class),
              examples =
                  @ExampleObject(
                      name = "usual",
                      value =
                          "{\"stop\": \"cu1-fan-motor-inspection-0\", \"technician\": \"T2\","
                              + " \"day\": \"2026-05-05\", \"position\": 1}")))
  @APIResponse(
      responseCode = "200",
      description = "What it costs on top, what it breaks, and the rounds that change",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = MoveView.class)))
  @APIResponse(
      responseCode = "400",
      description = "bad-request: errors[] names every wrong field",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "409",
      description =
          "conflict: a rule forbids it, told in breaches; or the plan is still being worked on",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "412",
      description = "changed: the plan is not as the caller has seen it",
      content = @Content(mediaType = "application/problem+json"))
  public Response move(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @Parameter(description = "true: nothing is changed")
          @QueryParam("preview")
          @DefaultValue("false")
          boolean preview,
      @Parameter(description = "us or si") @QueryParam("measures") String measures,
      @Parameter(description = "ETag of the plan as read with the same measures")
          @HeaderParam("If-Match")
          String ifMatch,
      InputStream sent) {
    MeasureSystem system = Parameters.measures(measures);
    MoveBody body = json.read(JsonBody.bytes(sent), MoveBody.class);
    Rounds.Entry entry =
        planner.find(id).orElseThrow(() -> Problem.notFound("plan of rounds " + id));
    RoundPlan plan =
        entry
            .plan()
            .orElseThrow(() -> Problem.conflict("There is no plan yet; ask again in a second."));
    ByHand.Move move = body.read(plan);
    ByHand.Outcome outcome;
    if (preview) {
      seen(entry, system, ifMatch);
      outcome = moving.tried(id, move);
    } else {
      outcome = moving.take(id, move, stored -> seen(stored, system, ifMatch));
    }
    return Response.ok(MoveView.of(outcome, !preview, plan.currency(), system)).build();
  }

  private void seen(Rounds.Entry entry, MeasureSystem system, String ifMatch) {
    RoundView view = RoundView.of(entry, system);
    Preconditions.check(ifMatch, null, Answers.tag(answers.bytes(view)), null);
  }
}

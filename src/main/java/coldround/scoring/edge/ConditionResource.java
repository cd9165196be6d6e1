package coldround.scoring.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.http.Answers;
import coldround.http.Kept;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Assessment;
import coldround.scoring.NextReadings;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringOnDay;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The score of one unit with its factors, reasons and diagnostics. */
@Path("/api/v1/units/{id}/condition")
@Tag(name = "Fleet")
public class ConditionResource {

  private final Fleet fleet;
  private final ScoringOnDay scoring;
  private final NextReadings next;
  private final Today today;
  private final Answers answers;

  @Inject
  ConditionResource(
      Fleet fleet, ScoringOnDay scoring, NextReadings next, Today today, Answers answers) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.next = next;
    this.today = today;
    this.answers = answers;
  }

  @GET
  @Kept
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "getCondition",
      summary = "The condition score as it could be known at the end of a day")
  @APIResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = ConditionView.class)))
  public Response condition(
      @PathParam("id") String id,
      @QueryParam("asOf") String asOf,
      @QueryParam("measures") String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    UnitHistory history = fleet.history(id).orElseThrow(() -> Problem.notFound("unit " + id));
    LocalDate now = today.at(history.site());
    LocalDate day = Parameters.date("asOf", asOf, now);
    Scoring ofTheDay = scoring.on(day, now);
    Assessment assessment = ofTheDay.assess(history, day);
    return answers.read(
        ConditionView.of(
            history.unit(),
            assessment.condition(),
            next.under(ofTheDay).of(history, assessment),
            system),
        request);
  }
}

package coldround.pages.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Today;
import coldround.http.Answers;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.CurvePicture;
import coldround.pages.FaultCurves;
import coldround.scoring.FleetFaults;
import coldround.scoring.FleetFaults.By;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The mean cumulative number of faults as a picture. */
@Path("/api/v1/fleet/mean-cumulative-faults.svg")
@Tag(name = "Fleet")
public class FaultPicture {

  private static final MediaType SVG = new MediaType("image", "svg+xml");

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance picture(CurvePicture picture);
  }

  private final Fleet fleet;
  private final Scoring scoring;
  private final ScoringRules rules;
  private final Today today;
  private final Answers answers;

  @Inject
  FaultPicture(Fleet fleet, Scoring scoring, ScoringRules rules, Today today, Answers answers) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.rules = rules;
    this.today = today;
    this.answers = answers;
  }

  @GET
  @Produces({"image/svg+xml", "application/problem+json"})
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "drawMeanCumulativeFaults",
      summary = "The curves of getMeanCumulativeFaults as an SVG picture")
  @APIResponse(
      responseCode = "200",
      description = "The picture",
      content = @Content(mediaType = "image/svg+xml"))
  @APIResponse(
      responseCode = "400",
      description = "A parameter is wrong; errors say which",
      content = @Content(mediaType = "application/problem+json"))
  public Response picture(
      @Parameter(
              description = "Row of scoring/fault-priors.csv; left out, all",
              example = "walk-in")
          @QueryParam("class")
          String faultClass,
      @Parameter(
              description = "Row of scoring/failure-modes.csv; left out, all",
              example = "compressor-no-start")
          @QueryParam("failureMode")
          String failureMode,
      @Parameter(description = "A curve for each class or failure-mode", example = "failure-mode")
          @QueryParam("by")
          String by,
      @Parameter(description = "Units of this customer only", example = "MERCY")
          @QueryParam("customer")
          String customer,
      @Parameter(description = "Last day that is looked at", example = "2026-07-01")
          @QueryParam("asOf")
          String asOf,
      @Context Request request) {
    LocalDate day = Parameters.date("asOf", asOf, today.usually());
    String its = known("class", faultClass, rules.faultPriors().byClass().keySet());
    String mode = known("failureMode", failureMode, rules.modes().codes());
    boolean byMode = known("by", by, Set.of("class", "failure-mode")).equals("failure-mode");
    FleetFaults faults = new FleetFaults(scoring, its, mode, byMode ? By.FAILURE_MODE : By.CLASS);
    fleet.eachHistory(
        new FleetFilter(customer, "", "", "", ""), history -> faults.add(history, day));
    String svg = Templates.picture(FaultCurves.draw(faults.curves())).render();
    return answers.read(svg.getBytes(StandardCharsets.UTF_8), SVG, request).build();
  }

  private static String known(String field, String value, Set<String> allowed) {
    if (value == null || value.isEmpty()) {
      return "";
    }
    if (!allowed.contains(value)) {
      throw Problem.badField(field, value, "is one of " + allowed);
    }
    return value;
  }
}

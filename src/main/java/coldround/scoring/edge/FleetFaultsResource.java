package coldround.scoring.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Today;
import coldround.http.Answers;
import coldround.http.Measured;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.FleetFaults;
import coldround.scoring.FleetFaults.By;
import coldround.scoring.FleetFaults.Curve;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.scoring.statistics.FaultTally;
import coldround.scoring.statistics.MeanCumulativeFunction.Step;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** How many faults a unit of a class has had by its time under observation. */
@Path("/api/v1/fleet/mean-cumulative-faults")
@Tag(name = "Fleet")
public class FleetFaultsResource {

  /**
   * One step of a curve.
   *
   * @param time under observation
   * @param mean faults a unit up to then
   */
  record StepView(
      Measured time, int unitsWatched, int faults, BigDecimal mean, BigDecimal standardError) {}

  record CurveView(
      @JsonInclude(JsonInclude.Include.NON_EMPTY) String faultClass,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) String failureMode,
      int units,
      int faults,
      Measured unitTime,
      List<StepView> steps) {}

  record Curves(LocalDate asOf, String failureMode, List<CurveView> items) {}

  private final Fleet fleet;
  private final Scoring scoring;
  private final ScoringRules rules;
  private final Today today;
  private final Answers answers;

  @Inject
  FleetFaultsResource(
      Fleet fleet, Scoring scoring, ScoringRules rules, Today today, Answers answers) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.rules = rules;
    this.today = today;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "getMeanCumulativeFaults",
      summary =
          "Mean number of faults a unit by its time under observation, for each class or failure"
              + " mode")
  @APIResponse(
      responseCode = "200",
      description = "The answer",
      content =
          @Content(mediaType = "application/json", schema = @Schema(implementation = Curves.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  public Response curves(
      @Parameter(
              description = "Row of scoring/fault-priors.csv; all when left out",
              example = "self-contained")
          @QueryParam("class")
          String faultClass,
      @Parameter(
              description = "Row of scoring/failure-modes.csv; all when left out",
              example = "compressor-no-start")
          @QueryParam("failureMode")
          String failureMode,
      @Parameter(
              description = "A curve for each class or for each failure-mode",
              example = "failure-mode")
          @QueryParam("by")
          String by,
      @Parameter(description = "Code of one customer; all when left out", example = "MERCY")
          @QueryParam("customer")
          String customer,
      @Parameter(
              description = "Last day that is looked at; today when left out",
              example = "2026-07-01")
          @QueryParam("asOf")
          String asOf,
      @Context Request request) {
    LocalDate day = Parameters.date("asOf", asOf, today.usually());
    String its = known("class", faultClass, rules.faultPriors().byClass().keySet());
    String mode = known("failureMode", failureMode, rules.modes().codes());
    FleetFaults faults = new FleetFaults(scoring, its, mode, by(by));
    fleet.eachHistory(
        new FleetFilter(customer, "", "", "", ""), history -> faults.add(history, day));
    List<CurveView> items = faults.curves().stream().map(FleetFaultsResource::view).toList();
    return answers.read(new Curves(day, mode.isEmpty() ? null : mode, items), request);
  }

  private static By by(String by) {
    String its = known("by", by, Set.of("class", "failure-mode"));
    return its.equals("failure-mode") ? By.FAILURE_MODE : By.CLASS;
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

  private static CurveView view(Curve curve) {
    return new CurveView(
        curve.faultClass(),
        curve.failureMode(),
        curve.units(),
        curve.faults(),
        years(curve.unitYears()),
        curve.steps().stream().map(FleetFaultsResource::view).toList());
  }

  private static StepView view(Step step) {
    return new StepView(
        years(step.age() / FaultTally.DAYS_A_YEAR),
        step.atRisk(),
        step.events(),
        Measured.number(step.mean()),
        Measured.number(step.standardError()));
  }

  private static Measured years(double years) {
    return Measured.asGiven(new Quantity(years, Measure.YEAR));
  }
}

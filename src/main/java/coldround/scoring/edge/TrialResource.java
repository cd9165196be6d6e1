package coldround.scoring.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetFilter;
import coldround.fleet.Today;
import coldround.fleet.Unit;
import coldround.fleet.UnitHistory;
import coldround.http.Cost;
import coldround.http.Dear;
import coldround.http.Measured;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.scoring.Scoring;
import coldround.scoring.WeightTrial;
import coldround.scoring.WeightTrial.Line;
import coldround.scoring.WeightTrial.Move;
import coldround.scoring.Weights;
import coldround.scoring.edge.ConditionView.UnitName;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Scores the fleet under other weights without saving anything. */
@Path("/api/v1/scoring/trial")
@Tag(name = "Fleet")
public class TrialResource {

  /** What may be sent; it is read point by point instead, so that all that is wrong is told. */
  @Schema(name = "Trial", requiredProperties = "weights")
  record TrialBody(Map<String, BigDecimal> weights) {}

  record Change(BigDecimal before, BigDecimal after) {}

  record Ranks(int before, int after) {}

  record Moved(UnitName unit, Change score, Ranks rank) {}

  /**
   * The answer.
   *
   * @param units scored
   * @param moved units whose score or place changes
   * @param items of those, farthest first, one page
   */
  record Outcome(
      Map<String, BigDecimal> weights, int units, int moved, List<Moved> items, String next) {}

  private final Cost cost;
  private final Fleet fleet;
  private final Scoring scoring;
  private final Today today;

  @Inject
  TrialResource(Fleet fleet, Scoring scoring, Today today, Cost cost) {
    this.cost = cost;
    this.fleet = fleet;
    this.scoring = scoring;
    this.today = today;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @Dear
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "tryWeights",
      summary = "The fleet under other weights: who moves; nothing is saved")
  @APIResponse(
      responseCode = "200",
      description = "The answer",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = Outcome.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  public Outcome trial(
      @RequestBody(
              description = "Points of each factor, 100 together",
              content =
                  @Content(
                      schema = @Schema(implementation = TrialBody.class),
                      examples =
                          @ExampleObject(
                              name = "age",
                              value =
                                  "{\"weights\": {\"age\": 40, \"refrigerant\": 20, \"coil\": 20,"
                                      + " \"repeat-faults\": 20}}")))
          JsonNode body,
      @Parameter(description = "Code of one customer; all when left out", example = "MERCY")
          @QueryParam("customer")
          String customer,
      @Parameter(description = "Most items of a page, 1 to 500", example = "100")
          @QueryParam("limit")
          String limit,
      @Parameter(description = "What next of the page before said") @QueryParam("after")
          String after) {
    Map<String, Double> points = points(body);
    Scoring tried = scoring.with(weights(points));
    int most = Parameters.limit(limit);
    int from = from(after);
    cost.check("customer", customer);
    List<Line> lines = new ArrayList<>();
    fleet.each(
        new FleetFilter(customer, "", "", "", ""),
        history -> line(history, tried),
        line -> line.ifPresent(lines::add));
    return outcome(points, lines, from, most);
  }

  private Optional<Line> line(UnitHistory history, Scoring tried) {
    Unit unit = history.unit();
    LocalDate day = today.at(history.site());
    if (!unit.inUse(day)) {
      return Optional.empty();
    }
    double before = scoring.assess(history, day).condition().score();
    double after = tried.assess(history, day).condition().score();
    return Optional.of(
        new Line(unit.id(), unit.customer(), unit.site(), unit.tag(), before, after));
  }

  private static Outcome outcome(Map<String, Double> points, List<Line> lines, int from, int most) {
    Map<String, BigDecimal> weights = new LinkedHashMap<>();
    Weights.FACTORS.forEach(factor -> weights.put(factor, Measured.number(points.get(factor))));
    List<Move> moves = WeightTrial.moves(lines);
    int to = Math.min(moves.size(), from + most);
    Page<Moved> page =
        new Page<>(
            moves.subList(Math.min(from, to), to).stream().map(TrialResource::view).toList(),
            to < moves.size() ? Parameters.cursor(String.valueOf(to)) : null);
    return new Outcome(weights, lines.size(), moves.size(), page.items(), page.next());
  }

  private static Moved view(Move move) {
    Line line = move.line();
    return new Moved(
        new UnitName(line.unitId(), line.customer(), line.site(), line.tag()),
        new Change(Measured.number(line.before()), Measured.number(line.after())),
        new Ranks(move.rankBefore(), move.rankAfter()));
  }

  private static int from(String after) {
    String place = Parameters.place(after);
    if (place.isEmpty()) {
      return 0;
    }
    try {
      return Math.max(0, Integer.parseInt(place));
    } catch (NumberFormatException e) {
      throw Parameters.badCursor(after);
    }
  }

  private static Map<String, Double> points(JsonNode body) {
    JsonNode weights = body == null ? null : body.get("weights");
    if (weights == null || !weights.isObject()) {
      throw Problem.badField(
          "/weights", "", "is an object with the points of each of " + Weights.FACTORS);
    }
    Map<String, Double> points = new LinkedHashMap<>();
    List<FieldError> wrong = new ArrayList<>();
    weights
        .fields()
        .forEachRemaining(field -> point(field.getKey(), field.getValue(), points, wrong));
    for (String factor : Weights.FACTORS) {
      if (!weights.has(factor)) {
        wrong.add(new FieldError("/weights/" + factor, "", "is missing; 0 leaves the factor out"));
      }
    }
    if (!wrong.isEmpty()) {
      throw Problem.badFields(wrong);
    }
    return points;
  }

  private static void point(
      String factor, JsonNode value, Map<String, Double> points, List<FieldError> wrong) {
    String field = "/weights/" + factor;
    if (!Weights.FACTORS.contains(factor)) {
      wrong.add(
          new FieldError(field, value.asText(), "is no factor; known are " + Weights.FACTORS));
    } else if (!value.isNumber() || value.asDouble() < 0 || value.asDouble() > 100) {
      wrong.add(new FieldError(field, value.asText(), "is a number of points from 0 to 100"));
    } else {
      points.put(factor, value.asDouble());
    }
  }

  private static Weights weights(Map<String, Double> points) {
    try {
      return Weights.of(points);
    } catch (IllegalArgumentException e) {
      throw Problem.badField("/weights", points.values().toString(), e.getMessage());
    }
  }
}

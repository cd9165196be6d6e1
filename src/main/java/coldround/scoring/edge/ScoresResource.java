package coldround.scoring.edge;

import coldround.access.Role;
import coldround.fleet.Fault;
import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.http.Answers;
import coldround.http.Measured;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.ReasonView;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Condition;
import coldround.scoring.FactorScore;
import coldround.scoring.ScoreHistory;
import coldround.scoring.ScoreHistory.Entry;
import coldround.scoring.ScoringOnDay;
import coldround.scoring.VisitEffect;
import coldround.scoring.edge.ConditionView.Range;
import coldround.scoring.edge.ConditionView.UnitName;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** How the score of one unit came to be what it is: day by day, and by one visit. */
@Path("/api/v1/units/{id}")
@Tag(name = "Fleet")
public class ScoresResource {

  /**
   * What one factor took before and after.
   *
   * @param before null where nothing was told before
   * @param reasons codes of the reasons told on that day
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record FactorChange(
      String factor, BigDecimal before, BigDecimal after, boolean known, List<String> reasons) {}

  /** A visit or fault that came on record since the score before. */
  record Event(LocalDate date, String type, String what) {}

  /** One day on which the score changed. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Day(
      LocalDate date,
      BigDecimal score,
      BigDecimal before,
      Range range,
      BigDecimal completeness,
      List<FactorChange> factors,
      List<Event> events) {}

  /** A score with what the evidence leaves open. */
  record Told(BigDecimal score, Range range, BigDecimal completeness) {
    static Told of(Condition condition) {
      return new Told(
          Measured.number(condition.score()),
          new Range(Measured.number(condition.low()), Measured.number(condition.high())),
          Measured.number(condition.completeness()));
    }
  }

  /** One factor with and without the visit, and why it is as it is with it. */
  record FactorEffect(
      String factor, BigDecimal before, BigDecimal after, List<ReasonView> reasons) {}

  /** What one visit did to the score, on its own day. */
  record Effect(
      UnitName unit,
      String visit,
      LocalDate date,
      Told before,
      Told after,
      List<FactorEffect> factors) {}

  private final Fleet fleet;
  private final ScoringOnDay scoring;
  private final Today today;
  private final ScoreHistory scores;
  private final Answers answers;

  @Inject
  ScoresResource(
      Fleet fleet, ScoringOnDay scoring, ScoreHistory scores, Today today, Answers answers) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.scores = scores;
    this.today = today;
    this.answers = answers;
  }

  @GET
  @Path("scores")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "listScores",
      summary = "The days on which the score changed, newest first, with what changed it")
  @APIResponse(
      responseCode = "200",
      description = "A page of days",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = Day.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "404",
      description = "There is no such unit or visit",
      content = @Content(mediaType = "application/problem+json"))
  public Response scores(
      @Parameter(description = "Id of the unit", example = "4711") @PathParam("id") String id,
      @Parameter(description = "Most items of a page, 1 to 500", example = "100")
          @QueryParam("limit")
          String limit,
      @Parameter(description = "What next of the page before said") @QueryParam("after")
          String after,
      @Context Request request,
      @Context UriInfo uri) {
    UnitHistory history = history(id);
    int most = Parameters.limit(limit);
    List<Entry> entries = scores.entries(id, day(after), most + 1);
    List<Day> days = new ArrayList<>();
    for (int i = 0; i < Math.min(most, entries.size()); i++) {
      days.add(day(history, entries.get(i), i + 1 < entries.size() ? entries.get(i + 1) : null));
    }
    String next =
        entries.size() > most ? Parameters.cursor(entries.get(most - 1).day().toString()) : null;
    return answers.list(new Page<>(days, next), request, uri);
  }

  @GET
  @Path("visits/{number:.+}/effect")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "getVisitEffect",
      summary = "The score on the day of a visit, as it is and as it would be without the visit")
  @APIResponse(
      responseCode = "200",
      description = "The answer",
      content =
          @Content(mediaType = "application/json", schema = @Schema(implementation = Effect.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "404",
      description = "There is no such unit or visit",
      content = @Content(mediaType = "application/problem+json"))
  public Response effect(
      @Parameter(description = "Id of the unit", example = "4711") @PathParam("id") String id,
      @Parameter(description = "Number of the visit within the unit", example = "4711")
          @PathParam("number")
          String number,
      @Parameter(description = "Units of the answer, us or si", example = "us")
          @QueryParam("measures")
          String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    UnitHistory history = history(id);
    VisitEffect effect =
        VisitEffect.of(day -> scoring.on(day, today.at(history.site())), history, number)
            .orElseThrow(() -> Problem.notFound("visit " + number + " of unit " + id));
    return answers.read(view(history, effect, system), request);
  }

  private UnitHistory history(String id) {
    return fleet.history(id).orElseThrow(() -> Problem.notFound("unit " + id));
  }

  private static LocalDate day(String after) {
    String place = Parameters.place(after);
    try {
      return place.isEmpty() ? null : LocalDate.parse(place);
    } catch (DateTimeParseException e) {
      throw Parameters.badCursor(after);
    }
  }

  private static Day day(UnitHistory history, Entry entry, Entry before) {
    return new Day(
        entry.day(),
        Measured.number(entry.score()),
        before == null ? null : Measured.number(before.score()),
        new Range(Measured.number(entry.low()), Measured.number(entry.high())),
        Measured.number(entry.completeness()),
        entry.factors().stream().map(factor -> change(factor, before)).toList(),
        before == null ? List.of() : events(history, before.day(), entry.day()));
  }

  private static FactorChange change(ScoreHistory.Factor factor, Entry before) {
    BigDecimal was =
        before == null
            ? null
            : before.factors().stream()
                .filter(its -> its.factor().equals(factor.factor()))
                .findFirst()
                .map(its -> Measured.number(its.lost()))
                .orElse(null);
    return new FactorChange(
        factor.factor(), was, Measured.number(factor.lost()), factor.known(), factor.reasons());
  }

  private static List<Event> events(UnitHistory history, LocalDate after, LocalDate until) {
    List<Event> events = new ArrayList<>();
    for (Visit visit : history.visits()) {
      if (visit.date().isAfter(after) && !visit.date().isAfter(until)) {
        events.add(new Event(visit.date(), "visit", visit.number()));
      }
    }
    for (Fault fault : history.faults()) {
      if (fault.date().isAfter(after) && !fault.date().isAfter(until)) {
        events.add(new Event(fault.date(), "fault", fault.failureMode()));
      }
    }
    return events;
  }

  private static Effect view(UnitHistory history, VisitEffect effect, MeasureSystem system) {
    List<FactorEffect> factors = new ArrayList<>();
    for (int i = 0; i < effect.after().factors().size(); i++) {
      FactorScore after = effect.after().factors().get(i);
      factors.add(
          new FactorEffect(
              after.factor(),
              Measured.number(effect.before().factors().get(i).lost()),
              Measured.number(after.lost()),
              after.reasons().stream().map(reason -> ReasonView.of(reason, system)).toList()));
    }
    return new Effect(
        UnitName.of(history.unit()),
        effect.visit().number(),
        effect.visit().date(),
        Told.of(effect.before()),
        Told.of(effect.after()),
        factors);
  }
}

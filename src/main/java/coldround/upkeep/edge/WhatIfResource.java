package coldround.upkeep.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.http.Cost;
import coldround.http.Dear;
import coldround.http.Measured;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.quantity.Dimension;
import coldround.quantity.Measure;
import coldround.quantity.Quantity;
import coldround.scoring.Scoring;
import coldround.upkeep.Outlook;
import coldround.upkeep.Upkeep;
import coldround.upkeep.WeekPlan;
import coldround.upkeep.WhatIf;
import coldround.upkeep.WhatIf.Change;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What a change would do to the coming twelve months. */
@Path("/api/v1/upkeep/what-if")
@Tag(name = "Upkeep")
public class WhatIfResource {

  private static final Set<String> FIELDS =
      Set.of("asOf", "hotter", "skipCleanings", "technicians", "customer");
  // beyond these nobody plans and no table holds
  private static final int YEARS_AHEAD = 20;
  private static final double HOTTEST_K = 30;
  private static final double MOST_TIMES = 100;

  /** What may be sent; it is read field by field instead, so that all that is wrong is told. */
  @Schema(name = "WhatIf")
  record WhatIfBody(
      @Schema(description = "The plan begins on that later day") LocalDate asOf,
      @Schema(description = "How much hotter the season is") Measured hotter,
      @Schema(description = "No condenser is cleaned") Boolean skipCleanings,
      @Schema(description = "How many there would be") Double technicians,
      @Schema(description = "Code of one customer; all when left out") String customer) {}

  /** Twelve months as expected. */
  record Year(
      BigDecimal lockouts,
      BigDecimal otherFaults,
      int cleanings,
      Measured breakdownCost,
      Measured energyCost,
      Measured cleaningCost,
      Measured cost,
      Measured workWithoutTime) {
    static Year of(Outlook outlook) {
      Measure money = outlook.breakdownCost().measure();
      return new Year(
          Measured.number(outlook.lockouts()),
          Measured.number(outlook.otherFaults()),
          outlook.cleanings(),
          Measured.asGiven(outlook.breakdownCost()),
          Measured.asGiven(outlook.energyCost()),
          Measured.asGiven(outlook.cleaningCost()),
          Measured.asGiven(new Quantity(outlook.sum(), money)),
          Measured.asGiven(new Quantity(outlook.minutesOver(), Measure.MINUTE)));
    }
  }

  /**
   * The answer.
   *
   * @param asPlanned without the change, from today on
   * @param changed with it
   * @param technicians that there are now
   * @param capacity of them in a week
   */
  record Answer(
      LocalDate asOf,
      int technicians,
      Measured capacity,
      String capacitySource,
      Year asPlanned,
      Year changed) {}

  private final Cost cost;
  private final Fleet fleet;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final Today today;

  @Inject
  WhatIfResource(Fleet fleet, Scoring scoring, Upkeep upkeep, Today today, Cost cost) {
    this.cost = cost;
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.today = today;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @Dear
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "askWhatIf",
      summary = "A later day, a hotter season, no cleanings, more technicians: what changes")
  @APIResponse(
      responseCode = "200",
      description = "The answer",
      content =
          @Content(mediaType = "application/json", schema = @Schema(implementation = Answer.class)))
  @APIResponse(
      responseCode = "400",
      description = "A parameter or field is wrong; errors say which and how to mend it",
      content = @Content(mediaType = "application/problem+json"))
  public Answer whatIf(
      @RequestBody(
              description = "Each field is optional; without any nothing changes",
              content =
                  @Content(
                      schema = @Schema(implementation = WhatIfBody.class),
                      examples =
                          @ExampleObject(
                              name = "hotter",
                              value =
                                  "{\"asOf\": \"2027-05-25\", \"hotter\": {\"value\": 5, \"unit\":"
                                      + " \"deltaF\"}, \"skipCleanings\": false, \"technicians\":"
                                      + " 2}")))
          JsonNode body) {
    Change change = new Body(body).change();
    String customer = body.path("customer").asText("");
    int technicians = Math.max(1, fleet.technicians().size());
    WeekPlan.Capacity capacity = upkeep.capacity(technicians);
    WhatIf whatIf = new WhatIf(scoring, upkeep, capacity.minutes(), capacity.source());
    cost.check("/customer", customer);
    StoredUnits units = StoredUnits.of(fleet, customer);
    return new Answer(
        change.asOf(),
        technicians,
        Measured.asGiven(new Quantity(capacity.minutes(), Measure.MINUTE)),
        capacity.source().toString(),
        Year.of(whatIf.outlook(units, Change.none(today.usually()))),
        Year.of(whatIf.outlook(units, change)));
  }

  /** Reads the body; all that is wrong with it is told together. */
  private final class Body {
    private final JsonNode body;
    private final List<FieldError> wrong = new ArrayList<>();

    Body(JsonNode body) {
      this.body = body;
    }

    Change change() {
      if (body == null || !body.isObject()) {
        throw Problem.badField("", "", "is an object that may hold " + FIELDS);
      }
      body.fieldNames().forEachRemaining(this::known);
      LocalDate day = asOf();
      double hotterK = hotterK();
      boolean skip = skip();
      double technicians = technicians();
      if (!wrong.isEmpty()) {
        throw Problem.badFields(wrong);
      }
      return new Change(day, hotterK, skip, technicians);
    }

    private void known(String field) {
      if (!FIELDS.contains(field)) {
        wrong(field, body.get(field), "is not known; known are " + FIELDS);
      }
    }

    private void wrong(String field, JsonNode value, String message) {
      wrong.add(new FieldError("/" + field, value == null ? "" : value.toString(), message));
    }

    private boolean given(String field) {
      return body.hasNonNull(field);
    }

    private LocalDate asOf() {
      LocalDate now = today.usually();
      if (!given("asOf")) {
        return now;
      }
      try {
        LocalDate day = Parameters.date("/asOf", body.get("asOf").asText(), now);
        if (day.isBefore(now) || day.isAfter(now.plusYears(YEARS_AHEAD))) {
          wrong("asOf", body.get("asOf"), "lies from today to " + YEARS_AHEAD + " years from now");
        }
        return day;
      } catch (Problem problem) {
        wrong.addAll(problem.errors());
        return now;
      }
    }

    private double hotterK() {
      if (!given("hotter")) {
        return 0;
      }
      JsonNode value = body.get("hotter").path("value");
      Measure measure =
          Measure.find(body.get("hotter").path("unit").asText())
              .filter(its -> its.dimension() == Dimension.TEMPERATURE_DIFFERENCE)
              .orElse(null);
      double hotterK =
          measure == null || !value.isNumber() ? Double.NaN : measure.toBase(value.asDouble());
      if (!(Math.abs(hotterK) <= HOTTEST_K)) {
        wrong(
            "hotter",
            body.get("hotter"),
            "is such as {\"value\": 5, \"unit\": \"deltaF\"}, in deltaF or deltaK, at most "
                + HOTTEST_K
                + " K either way");
      }
      return hotterK;
    }

    private boolean skip() {
      if (given("skipCleanings") && !body.get("skipCleanings").isBoolean()) {
        wrong("skipCleanings", body.get("skipCleanings"), "is true or false");
      }
      return body.path("skipCleanings").asBoolean(false);
    }

    private double technicians() {
      JsonNode times = body.path("technicians");
      if (given("technicians")
          && !(times.isNumber() && times.asDouble() > 0 && times.asDouble() <= MOST_TIMES)) {
        wrong(
            "technicians",
            times,
            "is how many times as many there are, above 0, such as 2 for twice as many");
      }
      return times.asDouble(1);
    }
  }
}

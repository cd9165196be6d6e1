package coldround.rounds.edge;

import coldround.access.Role;
import coldround.fleet.Customer;
import coldround.fleet.Fleet;
import coldround.fleet.Technician;
import coldround.fleet.Today;
import coldround.http.Answers;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Maintenance rounds: planned in the background, read while they get better. */
@Path("/api/v1/rounds")
@Tag(name = "Rounds")
public class RoundsResource {

  private static final MediaType CALENDAR =
      MediaType.valueOf("text/calendar").withCharset(StandardCharsets.UTF_8.name());
  private static final MediaType CSV =
      MediaType.valueOf("text/csv").withCharset(StandardCharsets.UTF_8.name());
  private static final MediaType GEO_JSON = MediaType.valueOf("application/geo+json");

  private static final String PLAN_EXAMPLE =
      """
      {"from": "2026-05-04", "to": "2026-05-08", "technicians": ["T1", "T2"], "customers": ["KVS"],
       "seconds": 30, "daysOff": {"T1": ["2026-05-05"]}, "holidays": ["2026-05-06"],
       "starts": {"T1": "KVS/CFS"}, "ends": {"T2": {"latitude": 38.5, "longitude": -78.9}}}\
      """;

  private final Planner planner;
  private final Changing changing;
  private final Fleet fleet;
  private final Today today;
  private final Answers answers;
  private final RoundCalendar calendar;
  private final RoundMapFile geoJson;

  @Inject
  RoundsResource(
      Planner planner,
      Changing changing,
      Fleet fleet,
      Today today,
      Answers answers,
      RoundCalendar calendar,
      RoundMapFile geoJson) {
    this.planner = planner;
    this.changing = changing;
    this.fleet = fleet;
    this.today = today;
    this.answers = answers;
    this.calendar = calendar;
    this.geoJson = geoJson;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "planRounds",
      summary = "Plans rounds for a span of days in the background")
  @APIResponse(
      responseCode = "202",
      description = "The plan, being worked on; read it at Location",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = RoundView.class)))
  @APIResponse(
      responseCode = "400",
      description = "bad-request: errors[] names every wrong field",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "503",
      description = "busy: too many plans are waiting; Retry-After says when",
      content = @Content(mediaType = "application/problem+json"))
  public Response plan(
      @RequestBody(
              description =
                  "All fields may be left out: five days from today, everybody, all customers, 30"
                      + " seconds",
              content =
                  @Content(
                      mediaType = "application/json",
                      schema = @Schema(implementation = RoundBodies.Order.class),
                      examples = @ExampleObject(name = "usual", value = PLAN_EXAMPLE)))
          JsonNode body) {
    RoundRequest asked =
        new RoundRequest.Reading(body).read(today.usually(), technicians(), customers(), places());
    return accepted(planner.plan(asked));
  }

  private Response accepted(String id) {
    RoundView view = RoundView.of(entry(id), MeasureSystem.US);
    return Response.accepted(view)
        .header("Location", "/api/v1/rounds/" + id)
        .type(MediaType.APPLICATION_JSON)
        .build();
  }

  private Set<String> technicians() {
    return fleet.technicians().stream().map(Technician::code).collect(Collectors.toSet());
  }

  private Set<String> places() {
    Set<String> places = new HashSet<>(technicians());
    fleet.sites("").forEach(site -> places.add(site.customer() + "/" + site.code()));
    return places;
  }

  private Set<String> customers() {
    return fleet.customers().stream().map(Customer::code).collect(Collectors.toSet());
  }

  @GET
  @Path("/{id: [^/.]+}")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(
      operationId = "readRounds",
      summary = "A plan of rounds, the best so far while planning")
  @APIResponse(
      responseCode = "200",
      description = "Days, stops, tasks with reasons, travel, cost, what is left out and why",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = RoundView.class)))
  @APIResponse(responseCode = "304", description = "What If-None-Match named is still so")
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  public Response read(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @Parameter(description = "us or si") @QueryParam("measures") String measures,
      @Context Request request) {
    return answers.read(RoundView.of(entry(id), Parameters.measures(measures)), request);
  }

  private Rounds.Entry entry(String id) {
    return planner.find(id).orElseThrow(() -> Problem.notFound("plan of rounds " + id));
  }

  private RoundPlan made(String id) {
    return entry(id)
        .plan()
        .orElseThrow(() -> Problem.conflict("There is no plan yet; ask again in a second."));
  }

  @DELETE
  @Path("/{id: [^/.]+}")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "stopPlanning",
      summary = "Ends planning with the best plan so far, which stays")
  @APIResponse(responseCode = "204", description = "The best plan so far stays")
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  public Response delete(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id) {
    return stop(id);
  }

  @POST
  @Path("/{id: [^/.]+}/stop")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(operationId = "stopPlanningByPost", summary = "The same for callers without DELETE")
  @APIResponse(responseCode = "204", description = "The best plan so far stays")
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  public Response stop(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id) {
    entry(id);
    planner.stop(id);
    return Response.noContent().build();
  }

  @POST
  @Path("/{id: [^/.]+}/replan")
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "replanRounds",
      summary = "Plans the days to come anew; what is booked or begun stays")
  @APIResponse(
      responseCode = "202",
      description = "The plan, being worked on anew",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = RoundView.class)))
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
      description = "conflict: it is still being worked on, or all its days have passed",
      content = @Content(mediaType = "application/problem+json"))
  public Response replan(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @RequestBody(
              description = "Time to search and seed; what was asked first stays",
              content =
                  @Content(
                      mediaType = "application/json",
                      schema = @Schema(implementation = RoundBodies.Again.class),
                      examples = @ExampleObject(name = "usual", value = "{\"seconds\": 30}")))
          JsonNode body) {
    entry(id);
    changing.replan(id, body);
    return accepted(id);
  }

  @POST
  @Path("/{id: [^/.]+}/emergencies")
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "insertEmergency",
      summary = "Puts an emergency into the rounds of a day with the smallest change")
  @APIResponse(
      responseCode = "200",
      description = "The round that takes it, and what moved",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = Changing.Inserted.class)))
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
      description = "conflict: nobody can take it that day, or the plan is still being worked on",
      content = @Content(mediaType = "application/problem+json"))
  public Response emergency(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @Parameter(description = "us or si") @QueryParam("measures") String measures,
      @RequestBody(
              description = "The unit; 60 minutes, no skill and today unless said",
              content =
                  @Content(
                      mediaType = "application/json",
                      schema = @Schema(implementation = RoundBodies.Emergency.class),
                      examples =
                          @ExampleObject(
                              name = "usual",
                              value =
                                  "{\"unit\": \"u12\", \"minutes\": 60, \"skill\": \"electrical\","
                                      + " \"day\": \"2026-05-04\"}")))
          JsonNode body) {
    entry(id);
    MeasureSystem system = Parameters.measures(measures);
    return Response.ok(changing.emergency(id, body, system), MediaType.APPLICATION_JSON).build();
  }

  @GET
  @Path("/{id: [^/.]+}.csv")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(operationId = "readRoundsAsCsv", summary = "One row a task, for a spreadsheet")
  @APIResponse(
      responseCode = "200",
      description = "One row a task",
      content = @Content(mediaType = "text/csv", schema = @Schema(type = SchemaType.STRING)))
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "409",
      description = "conflict: nothing is planned yet",
      content = @Content(mediaType = "application/problem+json"))
  public Response csv(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @Context Request request) {
    byte[] body = RoundList.csv(made(id)).getBytes(StandardCharsets.UTF_8);
    return named(answers.read(body, CSV, request), id + ".csv");
  }

  @GET
  @Path("/{id: [^/.]+}.geojson")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(operationId = "readRoundsAsGeoJson", summary = "Stops and ways as RFC 7946")
  @APIResponse(
      responseCode = "200",
      description = "A FeatureCollection: a line a round, a point a stop",
      content =
          @Content(mediaType = "application/geo+json", schema = @Schema(type = SchemaType.OBJECT)))
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "409",
      description = "conflict: nothing is planned yet",
      content = @Content(mediaType = "application/problem+json"))
  public Response geoJson(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @Context Request request) {
    return named(answers.read(geoJson.write(made(id)), GEO_JSON, request), id + ".geojson");
  }

  @GET
  @Path("/{id: [^/.]+}.ics")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(
      operationId = "readRoundsAsCalendar",
      summary = "Stops of one technician, or of all, as RFC 5545")
  @APIResponse(
      responseCode = "200",
      description = "An event a stop",
      content = @Content(mediaType = "text/calendar", schema = @Schema(type = SchemaType.STRING)))
  @APIResponse(
      responseCode = "400",
      description = "bad-request: no such technician",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "409",
      description = "conflict: nothing is planned yet",
      content = @Content(mediaType = "application/problem+json"))
  public Response calendar(
      @Parameter(description = "of the plan", example = "4f0c0c2e-3a55-4f0e-9a7e-0d3a1f6f5b11")
          @PathParam("id")
          String id,
      @Parameter(description = "code; left out for all", example = "T1") @QueryParam("technician")
          String technician,
      @Context Request request) {
    RoundPlan plan = made(id);
    String who = technician == null ? "" : technician;
    if (!who.isEmpty() && !technicians().contains(who)) {
      throw Problem.badField("technician", who, "is the code of a technician");
    }
    byte[] body = calendar.write(entry(id).standing(), plan, who);
    String name = who.isEmpty() ? id : id + "-" + who.replaceAll("[^A-Za-z0-9_-]", "_");
    return named(answers.read(body, CALENDAR, request), name + ".ics");
  }

  private static Response named(Response.ResponseBuilder response, String name) {
    return response.header("Content-Disposition", "attachment; filename=\"" + name + "\"").build();
  }
}

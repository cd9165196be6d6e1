package coldround.upkeep.edge;

import coldround.access.Role;
import coldround.fleet.Today;
import coldround.http.Answers;
import coldround.http.Parameters;
import coldround.upkeep.Upkeep;
import coldround.upkeep.edge.CalendarEntries.Search;
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
import java.time.Duration;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Tasks for calendar programs to subscribe to. */
@Path("/api/v1/feed/tasks.ics")
@Tag(name = "Feed")
public class CalendarResource {

  private static final MediaType CALENDAR =
      new MediaType("text", "calendar", Map.of("charset", "utf-8"));
  private static final int DAYS_AHEAD = 92;
  private static final Duration CLOSED_SHOWN = Duration.ofDays(30);

  private final CalendarEntries entries;
  private final TaskCalendar calendar;
  private final Today today;
  private final Answers answers;

  @Inject
  CalendarResource(CalendarEntries entries, Upkeep upkeep, Today today, Answers answers) {
    this.entries = entries;
    this.calendar = new TaskCalendar(upkeep.catalogue());
    this.today = today;
    this.answers = answers;
  }

  @GET
  @Produces("text/calendar")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "readTaskCalendar",
      summary =
          "Open tasks due up to a day (usually 92 days ahead) as RFC 5545, with those withdrawn or"
              + " done in the last 30 days; technician asks for what is booked for one, and for"
              + " what was in the last 30 days and passed on since, as cancelled")
  @APIResponse(
      responseCode = "200",
      description = "A calendar; without METHOD, to be subscribed to",
      content = @Content(mediaType = "text/calendar", schema = @Schema(type = SchemaType.STRING)))
  @APIResponse(responseCode = "422", description = "calendar-too-large: ask for less")
  public Response calendar(
      @QueryParam("customer") String customer,
      @QueryParam("site") String site,
      @QueryParam("technician") String technician,
      @QueryParam("to") String to,
      @Context Request request) {
    Search search =
        new Search(
            customer,
            site,
            technician,
            Parameters.date("to", to, today.usually().plusDays(DAYS_AHEAD)),
            today.clock().instant().minus(CLOSED_SHOWN));
    return answers
        .read(calendar.write(entries.find(search)), CALENDAR, request)
        .header("Content-Disposition", "inline; filename=\"tasks.ics\"")
        .build();
  }
}

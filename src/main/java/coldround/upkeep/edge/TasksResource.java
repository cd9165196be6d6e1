package coldround.upkeep.edge;

import coldround.access.Role;
import coldround.fleet.FleetFilter;
import coldround.fleet.UnitIds;
import coldround.http.Answers;
import coldround.http.Kept;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Booking;
import coldround.upkeep.Task;
import coldround.upkeep.TaskList;
import coldround.upkeep.TaskList.Entry;
import coldround.upkeep.TaskList.Search;
import coldround.upkeep.edge.TasksOfToday.Placed;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Upkeep tasks by due date, each with its reasons. */
@Path("/api/v1/tasks")
@Tag(name = "Upkeep")
public class TasksResource {

  private static final Comparator<Task> BY_DUE =
      Comparator.comparing(Task::due).thenComparing(Task::id);

  private final TaskList open;
  private final TasksOfToday ofToday;
  private final StoredBookings bookings;
  private final Answers answers;

  @Inject
  TasksResource(TaskList open, TasksOfToday ofToday, StoredBookings bookings, Answers answers) {
    this.open = open;
    this.ofToday = ofToday;
    this.bookings = bookings;
    this.answers = answers;
  }

  @GET
  @Kept
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "listTasks",
      summary = "Upkeep tasks with due dates and reasons, by due date")
  @APIResponse(
      responseCode = "200",
      description = "A page of tasks",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = TaskView.class)))
  public Response list(
      @QueryParam("from") String from,
      @QueryParam("to") String to,
      @QueryParam("customer") String customer,
      @QueryParam("site") String site,
      @QueryParam("unit") String unit,
      @QueryParam("asOf") String asOf,
      @QueryParam("measures") String measures,
      @QueryParam("limit") String limit,
      @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    MeasureSystem system = Parameters.measures(measures);
    Search search =
        new Search(
            Parameters.date("from", from, null),
            Parameters.date("to", to, null),
            customer,
            site,
            unit);
    if (search.from() != null && search.to() != null && search.to().isBefore(search.from())) {
      throw Problem.badField("to", to, "lies before from");
    }
    int most = Parameters.limit(limit);
    LocalDate day = Parameters.date("asOf", asOf, null);
    Entry place = place(after);
    List<Task> tasks =
        day == null ? today(search, place, most + 1) : onDay(search, day, place, most + 1);
    return answers.list(page(tasks, most, system), request, uri);
  }

  private Page<TaskView> page(List<Task> tasks, int most, MeasureSystem system) {
    boolean more = tasks.size() > most;
    List<Task> shown = more ? tasks.subList(0, most) : tasks;
    Task last = more ? shown.get(most - 1) : null;
    Map<String, Booking> booked = bookings.of(shown.stream().map(Task::id).toList());
    return new Page<>(
        shown.stream().map(task -> TaskView.of(task, booked.get(task.id()), system)).toList(),
        last == null ? null : Parameters.cursor(last.due() + " " + last.id()));
  }

  private static Entry place(String after) {
    String place = Parameters.place(after);
    if (place.isEmpty()) {
      return null;
    }
    try {
      int space = place.indexOf(' ');
      return new Entry(
          place.substring(space + 1), "", LocalDate.parse(place.substring(0, Math.max(0, space))));
    } catch (DateTimeException e) {
      throw Parameters.badCursor(after);
    }
  }

  /** From the stored list; the reasons of those on the page are worked out now. */
  private List<Task> today(Search search, Entry after, int limit) {
    List<Entry> entries = open.entries(search, after, limit);
    Map<String, Placed> tasks = ofToday.of(entries.stream().map(Entry::unitId).toList());
    return entries.stream()
        .map(entry -> tasks.get(entry.taskId()))
        .filter(Objects::nonNull)
        .map(Placed::task)
        .toList();
  }

  /** For another day than today everything is worked out anew from what was known on that day. */
  private List<Task> onDay(Search search, LocalDate day, Entry after, int limit) {
    List<Task> found = new ArrayList<>();
    boolean byId = UnitIds.number(search.unit()).isPresent();
    FleetFilter filter =
        new FleetFilter(search.customer(), search.site(), byId ? search.unit() : "", "", "");
    ofToday.on(
        day,
        filter,
        tasks ->
            tasks.stream()
                .filter(
                    task ->
                        byId || search.unit().isEmpty() || task.unit().tag().equals(search.unit()))
                .filter(task -> fits(task, search))
                .forEach(found::add));
    return found.stream()
        .sorted(BY_DUE)
        .filter(task -> after == null || isAfter(task, after))
        .limit(limit)
        .toList();
  }

  private static boolean fits(Task task, Search search) {
    return (search.from() == null || !task.due().isBefore(search.from()))
        && (search.to() == null || !task.due().isAfter(search.to()));
  }

  private static boolean isAfter(Task task, Entry place) {
    int byDue = task.due().compareTo(place.due());
    return byDue > 0 || (byDue == 0 && task.id().compareTo(place.taskId()) > 0);
  }
}

package coldround.field.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.JsonBody;
import coldround.http.OneCall;
import coldround.http.Preconditions;
import coldround.http.Problem;
import coldround.http.Reply;
import coldround.upkeep.Booking;
import coldround.upkeep.Completion;
import coldround.upkeep.TaskAnswers;
import coldround.upkeep.TaskAnswers.Known;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.SecurityContext;
import java.io.InputStream;
import java.time.OffsetDateTime;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The scheduling system says for when it has booked a task. */
@Path("/api/v1/tasks/{id}/booking")
@Tag(name = "Upkeep")
public class BookingResource {

  /** A booking as it stands. */
  record BookingView(
      String task, String unit, OffsetDateTime start, String technician, String reference) {

    static BookingView of(Known task) {
      Booking booking = task.booking();
      return booking == null
          ? null
          : new BookingView(
              task.taskId(),
              task.unitId(),
              booking.start(),
              booking.technician(),
              booking.reference());
    }
  }

  private final TaskAnswers tasks;
  private final KnownTasks known;
  private final OneCall calls;
  private final JsonBody json;
  private final Answers answers;

  @Inject
  BookingResource(
      TaskAnswers tasks, KnownTasks known, OneCall calls, JsonBody json, Answers answers) {
    this.tasks = tasks;
    this.known = known;
    this.calls = calls;
    this.json = json;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(operationId = "getBooking", summary = "For when a task is booked")
  @APIResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = BookingView.class)))
  public Response booking(@PathParam("id") String id, @Context Request request) {
    return answers.read(there(known.read(id)), request);
  }

  private static BookingView there(Known task) {
    BookingView view = BookingView.of(task);
    if (view == null) {
      throw Problem.notFound("booking of task '" + task.taskId() + "'");
    }
    return view;
  }

  @PUT
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "bookTask",
      summary =
          "A task is booked for a time. The same again changes nothing; another reference than the"
              + " one on record needs If-Match")
  @RequestBody(
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = BookingBody.class)))
  @APIResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = BookingView.class)))
  @APIResponse(
      responseCode = "201",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = BookingView.class)))
  @APIResponse(responseCode = "409", description = "Done already, or booked by another reference")
  @APIResponse(responseCode = "412", description = "Not as the caller has seen it")
  @APIResponse(
      responseCode = "422",
      description = "wrong-booking: errors name each field; or idempotency-key-reused")
  public Response book(
      @PathParam("id") String id,
      @HeaderParam("Idempotency-Key") String key,
      @HeaderParam("If-Match") String ifMatch,
      @HeaderParam("If-None-Match") String ifNoneMatch,
      @Context SecurityContext caller,
      InputStream sent) {
    byte[] bytes = JsonBody.bytes(sent);
    Booking booking = json.read(bytes, BookingBody.class).read(id);
    return calls.run(
        key, scope(caller, id), bytes, () -> book(known.locked(id), booking, ifMatch, ifNoneMatch));
  }

  private static String scope(SecurityContext caller, String id) {
    return caller.getUserPrincipal().getName() + " booking " + id;
  }

  private Reply book(Known task, Booking booking, String ifMatch, String ifNoneMatch) {
    BookingView before = BookingView.of(task);
    Preconditions.check(ifMatch, ifNoneMatch, tag(before), before);
    boolean same = booking.equals(task.booking());
    if (!same) {
      refuseConflict(task, booking, ifMatch != null);
      tasks.book(task, booking);
    }
    BookingView now = BookingView.of(known.read(task.taskId()));
    return calls.reply(before == null ? 201 : 200, "", now);
  }

  private String tag(BookingView view) {
    return view == null ? null : Answers.tag(answers.bytes(view));
  }

  private static void refuseConflict(Known task, Booking booking, boolean seen) {
    Completion done = task.completion();
    if (done != null) {
      throw Problem.conflict(
              "The task was done on %s by visit %s.".formatted(done.completed(), done.visit()))
          .telling("known", CompletionResource.Done.of(task));
    }
    if (!task.open()) {
      throw Problem.conflict(
          "The task was withdrawn: what is known of the unit no longer asks for it.");
    }
    if (task.booking() != null && booking.isOfAnother(task.booking()) && !seen) {
      throw Problem.conflict(
              "The task is booked for %s under reference '%s'. To replace that, send If-Match with"
                      .formatted(task.booking().start(), task.booking().reference())
                  + " its ETag.")
          .telling("known", BookingView.of(task));
    }
  }

  @DELETE
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(operationId = "cancelBooking", summary = "The booking is off; the task stays open")
  @APIResponse(responseCode = "204", description = "There is no booking any more")
  @APIResponse(responseCode = "412", description = "Not as the caller has seen it")
  public Response cancel(
      @PathParam("id") String id,
      @HeaderParam("Idempotency-Key") String key,
      @HeaderParam("If-Match") String ifMatch,
      @Context SecurityContext caller) {
    return calls.run(
        key,
        scope(caller, id) + " cancelled",
        new byte[0],
        () -> {
          Known task = known.locked(id);
          Preconditions.check(ifMatch, null, tag(BookingView.of(task)), BookingView.of(task));
          if (task.booking() != null) {
            tasks.cancel(task);
          }
          return new Reply(204, "", "", "");
        });
  }
}

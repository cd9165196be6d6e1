package coldround.field.edge;

import coldround.access.Role;
import coldround.field.FieldVisit;
import coldround.field.edge.VisitRecording.Recorded;
import coldround.fleet.Entry;
import coldround.http.Answers;
import coldround.http.JsonBody;
import coldround.http.OneCall;
import coldround.http.Parameters;
import coldround.http.Preconditions;
import coldround.http.Problem;
import coldround.http.Reply;
import coldround.quantity.MeasureSystem;
import coldround.upkeep.Completion;
import coldround.upkeep.TaskAnswers;
import coldround.upkeep.TaskAnswers.Known;
import coldround.upkeep.Upkeep;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.SecurityContext;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The scheduling system says that a task is done, with the visit that did it. */
@Path("/api/v1/tasks/{id}/completion")
@Tag(name = "Upkeep")
public class CompletionResource {

  /** Which visit did a task. */
  record Done(String task, String unit, String visit, LocalDate date) {
    static Done of(Known task) {
      Completion done = task.completion();
      return done == null
          ? null
          : new Done(task.taskId(), task.unitId(), done.visit(), done.completed());
    }
  }

  /**
   * What became of a completion.
   *
   * @param completed false when the visit is stored but the task is still open
   * @param stillOpen why it is; null when it is completed
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "CompletionAnswer")
  record CompletionView(String task, boolean completed, String stillOpen, VisitView visit) {}

  private final TaskAnswers tasks;
  private final KnownTasks known;
  private final VisitRecording recording;
  private final Upkeep upkeep;
  private final OneCall calls;
  private final JsonBody json;
  private final Answers answers;

  @Inject
  CompletionResource(
      TaskAnswers tasks,
      KnownTasks known,
      VisitRecording recording,
      Upkeep upkeep,
      OneCall calls,
      JsonBody json,
      Answers answers) {
    this.tasks = tasks;
    this.known = known;
    this.recording = recording;
    this.upkeep = upkeep;
    this.calls = calls;
    this.json = json;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(operationId = "getCompletion", summary = "Which visit did a task")
  @APIResponse(
      responseCode = "200",
      content =
          @Content(mediaType = "application/json", schema = @Schema(implementation = Done.class)))
  public Response completion(@PathParam("id") String id, @Context Request request) {
    Done done = Done.of(known.read(id));
    if (done == null) {
      throw Problem.notFound("completion of task '" + id + "'");
    }
    return answers.read(done, request);
  }

  @PUT
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "completeTask",
      summary =
          "A task is done by a visit, which is stored and scored at once; the same again changes"
              + " nothing")
  @RequestBody(
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = VisitBody.class)))
  @APIResponse(
      responseCode = "200",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = CompletionView.class)))
  @APIResponse(
      responseCode = "201",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = CompletionView.class)))
  @APIResponse(responseCode = "409", description = "Done already by another visit")
  @APIResponse(responseCode = "412", description = "Not as the caller has seen it")
  @APIResponse(
      responseCode = "422",
      description = "wrong-visit: errors name each field; or idempotency-key-reused")
  public Response complete(
      @PathParam("id") String id,
      @QueryParam("measures") String measures,
      @HeaderParam("Idempotency-Key") String key,
      @HeaderParam("If-Match") String ifMatch,
      @HeaderParam("If-None-Match") String ifNoneMatch,
      @Context SecurityContext caller,
      InputStream sent) {
    MeasureSystem system = Parameters.measures(measures);
    byte[] bytes = JsonBody.bytes(sent);
    VisitBody body = json.read(bytes, VisitBody.class);
    String scope = caller.getUserPrincipal().getName() + " completion " + id + " " + system;
    return calls.run(
        key,
        scope,
        bytes,
        () -> {
          Known task = known.locked(id);
          Done before = Done.of(task);
          Preconditions.check(ifMatch, ifNoneMatch, tag(before), before);
          checkUnit(body.unit(), task);
          return complete(task, numbered(body.read(), task), system);
        });
  }

  private String tag(Done done) {
    return done == null ? null : Answers.tag(answers.bytes(done));
  }

  private static void checkUnit(String unit, Known task) {
    if (unit != null && !unit.isEmpty() && !unit.equals(task.unitId())) {
      String message = "the task is one of unit " + task.unitId() + "; leave the unit out.";
      throw new Problem(
          422,
          "wrong-visit",
          "The visit cannot be taken as it is",
          "/unit: " + message,
          List.of(new Problem.FieldError("/unit", unit, message)));
    }
  }

  /** A visit without a number is named after its task, so that it is the same when sent again. */
  private static FieldVisit numbered(FieldVisit visit, Known task) {
    return visit.number().isBlank()
        ? visit.numbered(task.taskId().substring(task.unitId().length() + 1))
        : visit;
  }

  private Reply complete(Known task, FieldVisit visit, MeasureSystem system) {
    if (task.completion() != null) {
      return again(task, visit, system);
    }
    Recorded recorded =
        recording.record(
            task.unitId(), visit, entry -> tasks.complete(task, completion(task, entry)));
    Completion completion =
        new Completion(task.taskId(), recorded.visit().number(), recorded.visit().date());
    boolean done = tasks.settle(task, completion);
    return reply(done ? 201 : 200, task, done, recorded, system);
  }

  private static Completion completion(Known task, Entry visit) {
    return new Completion(task.taskId(), visit.key("visit"), visit.date("date", null));
  }

  private Reply again(Known task, FieldVisit visit, MeasureSystem system) {
    Completion done = task.completion();
    if (!done.visit().equals(visit.number().strip())) {
      throw Problem.conflict(
              "The task was done on %s by visit %s.".formatted(done.completed(), done.visit()))
          .telling("known", Done.of(task));
    }
    return reply(200, task, true, recording.record(task.unitId(), visit, entry -> {}), system);
  }

  private Reply reply(
      int status, Known task, boolean done, Recorded recorded, MeasureSystem system) {
    CompletionView view =
        new CompletionView(
            task.taskId(),
            done,
            done ? null : stillOpen(task),
            VisitsResource.view(recorded, system));
    Done stored = Done.of(known.read(task.taskId()));
    Reply reply = calls.reply(status, VisitsResource.location(recorded), view);
    return new Reply(
        reply.status(), reply.location(), stored == null ? "" : tag(stored), reply.body());
  }

  private String stillOpen(Known task) {
    return "The visit is stored, but the task is still open: nothing in the visit counts as %s that"
            .formatted(upkeep.catalogue().get(task.task()).name())
        + " was not counted before. It takes %s."
            .formatted(upkeep.catalogue().get(task.task()).counts());
  }
}

package coldround.feed.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Changes that could not be delivered to a subscriber. */
@Path("/api/v1/subscriptions/{id}/dead-letters")
@Tag(name = "Feed")
public class DeadLettersResource {

  /** One of them. */
  record DeadLetter(
      String id,
      @Schema(description = "How often it was tried") int tries,
      @Schema(description = "What came of the last try") String problem,
      Instant died,
      @Schema(description = "It is about to be sent once more") boolean again,
      CloudEvent event) {}

  /** For the description of the interface. */
  record DeadLetterPage(List<DeadLetter> items, String next) {}

  /** How many are about to be sent. */
  record Sending(int letters) {}

  private final Subscriptions subscriptions;
  private final ServiceAddress service;
  private final Answers answers;
  private final FeedSignal signal;

  @Inject
  DeadLettersResource(
      Subscriptions subscriptions, ServiceAddress service, Answers answers, FeedSignal signal) {
    this.subscriptions = subscriptions;
    this.service = service;
    this.answers = answers;
    this.signal = signal;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "listDeadLetters",
      summary = "Changes that could not be delivered, oldest first, with what went wrong")
  @APIResponse(
      responseCode = "200",
      description = "A page of dead letters",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = DeadLetterPage.class)))
  @APIResponse(responseCode = "404", description = "There is no such subscription: not-found")
  public Response list(
      @PathParam("id") String id,
      @QueryParam("after") String after,
      @QueryParam("limit") String limit,
      @Context Request request,
      @Context UriInfo uri) {
    there(id);
    int most = Parameters.limit(limit);
    String place = Parameters.place(after);
    if (!place.matches("\\d{0,18}")) {
      throw Parameters.badCursor(after);
    }
    List<DeadLetterRow> rows =
        subscriptions.deadLetters(id, place.isEmpty() ? 0 : Long.parseLong(place), most + 1);
    boolean more = rows.size() > most;
    List<DeadLetterRow> shown = more ? rows.subList(0, most) : rows;
    String next = more ? Parameters.cursor(shown.get(most - 1).id.toString()) : null;
    return answers.list(
        new Page<>(shown.stream().map(row -> view(row, uri)).toList(), next), request, uri);
  }

  private DeadLetter view(DeadLetterRow row, UriInfo uri) {
    return new DeadLetter(
        row.id.toString(),
        row.tries,
        row.problem,
        row.died,
        row.again,
        CloudEvent.of(row.event(), service.address(uri)));
  }

  private void there(String id) {
    if (subscriptions.find(id).isEmpty()) {
      throw Problem.notFound("subscription '" + id + "'");
    }
  }

  @POST
  @Path("again")
  @Transactional
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "sendDeadLettersAgain",
      summary =
          "Sends all dead letters of an active subscription once more, oldest first. One that is"
              + " taken is no dead letter any more; they come out of order by nature")
  @APIResponse(
      responseCode = "202",
      description = "They are on their way",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = Sending.class)))
  @APIResponse(responseCode = "404", description = "There is no such subscription: not-found")
  @APIResponse(responseCode = "409", description = "The subscription is stopped: conflict")
  public Response allAgain(@PathParam("id") String id) {
    active(id);
    return sending(subscriptions.again(id, 0));
  }

  @POST
  @Path("{letter}/again")
  @Transactional
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(operationId = "sendDeadLetterAgain", summary = "Sends one dead letter once more")
  @APIResponse(
      responseCode = "202",
      description = "It is on its way",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = Sending.class)))
  @APIResponse(responseCode = "404", description = "There is no such dead letter: not-found")
  @APIResponse(responseCode = "409", description = "The subscription is stopped: conflict")
  public Response again(@PathParam("id") String id, @PathParam("letter") String letter) {
    active(id);
    int found =
        letter.matches("[1-9]\\d{0,17}") ? subscriptions.again(id, Long.parseLong(letter)) : 0;
    if (found == 0) {
      throw Problem.notFound("dead letter '" + letter + "'");
    }
    return sending(found);
  }

  private void active(String id) {
    there(id);
    if (!subscriptions.find(id).orElseThrow().state.equals(SubscriptionRow.ACTIVE)) {
      throw Problem.conflict(
          "The subscription is stopped: resume it by POST /api/v1/subscriptions/"
              + id
              + "/resume.");
    }
  }

  private Response sending(int letters) {
    signal.onCommit();
    return Response.accepted(new Sending(letters)).build();
  }
}

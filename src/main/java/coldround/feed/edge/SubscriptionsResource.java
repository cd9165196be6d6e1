package coldround.feed.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.JsonBody;
import coldround.http.OneCall;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Reply;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.SecurityContext;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Web hooks: the changes of the feed, sent to whoever subscribes, signed. */
@Path("/api/v1/subscriptions")
@Tag(name = "Feed")
public class SubscriptionsResource {

  private final Subscriptions subscriptions;
  private final FeedResource feed;
  private final StoredFeed stored;
  private final HookSender sender;
  private final HooksConfig config;
  private final OneCall calls;
  private final JsonBody json;
  private final Answers answers;
  private final Clock clock;
  private final Courier courier;

  @Inject
  SubscriptionsResource(
      Subscriptions subscriptions,
      FeedResource feed,
      StoredFeed stored,
      HookSender sender,
      HooksConfig config,
      OneCall calls,
      JsonBody json,
      Answers answers,
      Clock clock,
      Courier courier) {
    this.subscriptions = subscriptions;
    this.feed = feed;
    this.stored = stored;
    this.sender = sender;
    this.config = config;
    this.calls = calls;
    this.json = json;
    this.answers = answers;
    this.clock = clock;
    this.courier = courier;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "subscribe",
      summary =
          "Has changes sent to a URL as CloudEvents, signed by Standard Webhooks 1.0.0. Each comes"
              + " at least once and in order; the answer shows the secret, which is not shown again")
  @RequestBody(
      required = true,
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SubscriptionBody.class)))
  @APIResponse(
      responseCode = "201",
      description = "Subscribed",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SubscriptionView.class)))
  @APIResponse(
      responseCode = "410",
      description = "cursor-too-old, cursor-undone: no place of this feed")
  public Response subscribe(
      @HeaderParam("Idempotency-Key") String key,
      @Context SecurityContext caller,
      InputStream sent) {
    byte[] bytes = JsonBody.bytes(sent);
    SubscriptionBody body = json.read(bytes, SubscriptionBody.class);
    URI url = body.check(sender::fault);
    long position = feed.from(body.after());
    Response response = calls.run(key, scope(caller), bytes, () -> subscribe(url, body, position));
    courier.look();
    return response;
  }

  private static String scope(SecurityContext caller) {
    return caller.getUserPrincipal().getName() + " subscriptions";
  }

  private Reply subscribe(URI url, SubscriptionBody body, long position) {
    if (subscriptions.count() >= config.most()) {
      throw Problem.conflict(
          "There are %d subscriptions, and no more are allowed. Delete one that is not used."
              .formatted(config.most()));
    }
    SubscriptionRow row = subscriptions.add(url.toString(), body.wanted(), body.said(), position);
    return calls.reply(201, "/api/v1/subscriptions/" + row.id, view(row, true));
  }

  private SubscriptionView view(SubscriptionRow row, boolean secret) {
    return SubscriptionView.of(row, subscriptions.deadLetters(row.id), clock.instant(), secret);
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(operationId = "listSubscriptions", summary = "All subscriptions and how they stand")
  @APIResponse(
      responseCode = "200",
      description = "A page of subscriptions",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SubscriptionPage.class)))
  public Response list(
      @QueryParam("after") String after,
      @QueryParam("limit") String limit,
      @Context Request request,
      @Context UriInfo uri) {
    int most = Parameters.limit(limit);
    List<SubscriptionRow> rows = subscriptions.list(Parameters.place(after), most + 1);
    boolean more = rows.size() > most;
    List<SubscriptionRow> shown = more ? rows.subList(0, most) : rows;
    String next = more ? Parameters.cursor(shown.get(most - 1).id) : null;
    return answers.list(
        new Page<>(shown.stream().map(row -> view(row, false)).toList(), next), request, uri);
  }

  /** For the description of the interface. */
  record SubscriptionPage(List<SubscriptionView> items, String next) {}

  @GET
  @Path("{id}")
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(operationId = "getSubscription", summary = "One subscription and how it stands")
  @APIResponse(
      responseCode = "200",
      description = "The subscription, without its secret",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SubscriptionView.class)))
  @APIResponse(responseCode = "404", description = "There is none of that id: not-found")
  public Response get(@PathParam("id") String id, @Context Request request) {
    SubscriptionRow row = subscriptions.find(id).orElseThrow(() -> none(id));
    return answers.read(view(row, false), request);
  }

  private static Problem none(String id) {
    return Problem.notFound("subscription '" + id + "'");
  }

  @DELETE
  @Path("{id}")
  @Transactional
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "unsubscribe",
      summary = "Nothing more is sent; its dead letters are deleted with it")
  @APIResponse(responseCode = "204", description = "There is no such subscription any more")
  public Response delete(@PathParam("id") String id) {
    subscriptions.locked(id).ifPresent(subscriptions::remove);
    return Response.noContent().build();
  }

  @POST
  @Path("{id}/secret")
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "rotateSecret",
      summary =
          "A new secret, shown once. The one until now signs along for a day (oldSecretUntil), so"
              + " that the receiver can change over in between")
  @APIResponse(
      responseCode = "200",
      description = "The subscription with its new secret",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SubscriptionView.class)))
  @APIResponse(responseCode = "404", description = "There is none of that id: not-found")
  public Response rotate(
      @PathParam("id") String id,
      @HeaderParam("Idempotency-Key") String key,
      @Context SecurityContext caller) {
    return changed(key, scope(caller) + " secret", id, subscriptions::rotate, true);
  }

  @POST
  @Path("{id}/resume")
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "resumeSubscription",
      summary =
          "Goes on where a stopped subscription stands, and tries at once where one waits; changes"
              + " meanwhile were kept")
  @APIResponse(
      responseCode = "200",
      description = "The subscription, active",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SubscriptionView.class)))
  @APIResponse(responseCode = "404", description = "There is none of that id: not-found")
  public Response resume(
      @PathParam("id") String id,
      @HeaderParam("Idempotency-Key") String key,
      @Context SecurityContext caller) {
    long oldest = stored.head().oldest;
    Response response =
        changed(
            key, scope(caller) + " resume", id, row -> subscriptions.resume(row, oldest), false);
    courier.look();
    return response;
  }

  private Response changed(
      String key, String scope, String id, Consumer<SubscriptionRow> change, boolean secret) {
    return calls.run(
        key,
        scope + " " + id,
        new byte[0],
        () -> {
          SubscriptionRow row = subscriptions.locked(id).orElseThrow(() -> none(id));
          change.accept(row);
          return calls.reply(200, "", view(row, secret));
        });
  }
}

package coldround.feed.edge;

import coldround.access.Role;
import coldround.feed.Cursor;
import coldround.feed.Snapshot;
import coldround.http.Answers;
import coldround.http.Connections;
import coldround.http.Parameters;
import coldround.http.Problem;
import io.smallrye.common.annotation.NonBlocking;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import io.smallrye.mutiny.unchecked.Unchecked;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Every change in one order, for a scheduling system that follows. */
@Path("/api/v1/feed")
@Tag(name = "Feed")
public class FeedResource {

  private static final Duration LOOK_EVERY = Duration.ofMillis(250);
  private static final int LONGEST_WAIT_S = 60;

  private final StoredFeed feed;
  private final Ordering ordering;
  private final FeedSignal signal;
  private final FeedPages pages;
  private final ServiceAddress service;
  private final Snapshot open;
  private final Answers answers;

  @Inject
  FeedResource(
      StoredFeed feed,
      Ordering ordering,
      FeedSignal signal,
      FeedPages pages,
      ServiceAddress service,
      Snapshot open,
      Answers answers) {
    this.feed = feed;
    this.ordering = ordering;
    this.signal = signal;
    this.pages = pages;
    this.service = service;
    this.open = open;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "readFeed",
      summary =
          "Changes behind a cursor as CloudEvents, in order, each at least once; 'next' is never"
              + " null and continues behind the last one")
  @APIResponse(
      responseCode = "200",
      description = "The changes behind the cursor; none is an empty list",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = CloudEvent.class)))
  @APIResponse(
      responseCode = "410",
      description =
          "cursor-too-old, or cursor-undone where the service was restored from a backup: start"
              + " again from the snapshot")
  @NonBlocking
  public Uni<Response> read(
      @QueryParam("after") String after,
      @QueryParam("limit") String limit,
      @QueryParam("wait") String wait,
      @Context Request request,
      @Context UriInfo uri,
      @Context RoutingContext call) {
    Asked asked =
        new Asked(
            after,
            Parameters.limit(limit),
            System.nanoTime() + Duration.ofSeconds(seconds(wait)).toNanos(),
            service.address(uri),
            call,
            new AtomicBoolean());
    FeedPages.Kept known = known(asked);
    return known != null
        ? Uni.createFrom().item(answer(known, request, uri))
        : Uni.createFrom()
            .item(Unchecked.supplier(() -> look(asked)))
            .runSubscriptionOn(Infrastructure.getDefaultWorkerPool())
            .onCancellation()
            .invoke(() -> leave(asked))
            .map(page -> answer(page, request, uri));
  }

  /**
   * What a reader wants.
   *
   * @param end of its patience, by System.nanoTime
   * @param service address that the events name
   * @param left set when it has hung up
   */
  private record Asked(
      String after, int most, long end, URI service, RoutingContext call, AtomicBoolean left) {
    FeedPages.Key behind(Cursor cursor) {
      return new FeedPages.Key(cursor.position(), most, service);
    }

    /** Also of one that hung up before anybody could be told. */
    boolean isLeft() {
      return left.get() || Connections.isGone(call);
    }

    boolean fromTheBeginning() {
      return after == null || after.isEmpty();
    }
  }

  /** A full page, which lies neither ahead nor behind what was kept when it was read, or null. */
  private FeedPages.Kept known(Asked asked) {
    return asked.fromTheBeginning() ? null : pages.full(asked.behind(cursor(asked.after)));
  }

  /** The thread that waits for it goes on to serve others: else a few who hang up keep them all. */
  private void leave(Asked asked) {
    asked.left.set(true);
    signal.stir();
  }

  /** Reads the store, again and again while there is nothing and the reader still waits. */
  private FeedPages.Kept look(Asked asked) throws InterruptedException {
    Cursor cursor = cursor(asked.after);
    check(asked.after, cursor);
    FeedPages.Key key = asked.behind(cursor);
    while (true) {
      long mark = signal.mark();
      FeedPages.Kept page = pages.read(key);
      if (page.count() < asked.most) {
        ordering.some();
        page = pages.read(key);
      }
      long left = asked.end - System.nanoTime();
      if (page.count() > 0 || left <= 0 || signal.isEnding() || asked.isLeft()) {
        return page;
      }
      Duration longest = Duration.ofNanos(Math.min(left, LOOK_EVERY.toNanos()));
      signal.await(mark, longest, asked::isLeft);
    }
  }

  private Response answer(FeedPages.Kept page, Request request, UriInfo uri) {
    return answers
        .read(page.body(), page.tag(), MediaType.APPLICATION_JSON_TYPE, request)
        .link(uri.getRequestUriBuilder().replaceQueryParam("after", page.next()).build(), "next")
        .build();
  }

  /**
   * What is open, a page at a time.
   *
   * @param next of the following page, null on the last
   * @param cursor where the feed goes on behind this snapshot, the same on all its pages
   */
  @Schema(requiredProperties = {"items", "cursor"})
  record SnapshotPage(List<?> items, String next, String cursor) {}

  @GET
  @Path("snapshot")
  @RolesAllowed({Role.PLANNER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "readSnapshot",
      summary =
          "All open tasks with reasons and bookings. Take all pages, then follow the feed from"
              + " 'cursor': what changes meanwhile is told there")
  @APIResponse(
      responseCode = "200",
      description = "A page of what is open",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = SnapshotPage.class)))
  public Response snapshot(
      @QueryParam("after") String after,
      @QueryParam("limit") String limit,
      @Context Request request) {
    int most = Parameters.limit(limit);
    String place = Parameters.place(after);
    int blank = place.indexOf(' ');
    // taken before the tasks are read, so that no change falls between the two
    Cursor cursor = place.isEmpty() ? end() : cursor(after, place, blank);
    Snapshot.Slice slice = open.after(place.substring(blank + 1), most);
    String next =
        slice.next().isEmpty() ? null : Parameters.cursor(cursor.text() + " " + slice.next());
    return answers.read(new SnapshotPage(slice.items(), next, cursor.text()), request);
  }

  private static Cursor cursor(String after, String place, int blank) {
    return Cursor.parse(place.substring(0, Math.max(0, blank)))
        .orElseThrow(() -> Parameters.badCursor(after));
  }

  /** Behind all that is committed. */
  private Cursor end() {
    ordering.all();
    return new Cursor(feed.head().position);
  }

  /** Position behind a cursor, or behind all that is committed where none is given. */
  long from(String after) {
    return after == null || after.isEmpty() ? end().position() : position(after);
  }

  private long position(String after) {
    Cursor cursor = cursor(after);
    check(after, cursor);
    return cursor.position();
  }

  private Cursor cursor(String after) {
    return after == null || after.isEmpty()
        ? new Cursor(feed.head().oldest)
        : Cursor.parse(after).orElseThrow(() -> Parameters.badCursor(after));
  }

  private void check(String after, Cursor cursor) {
    FeedHeadRow head = feed.head();
    if (cursor.position() > head.position) {
      throw Problem.badField(
          "after", after, "lies ahead of this feed; start again from /api/v1/feed/snapshot");
    }
    if (cursor.position() < head.oldest) {
      throw new Problem(
          410,
          "cursor-too-old",
          "The changes behind this cursor are no longer kept",
          "Start again from /api/v1/feed/snapshot and go on with the cursor it gives.",
          List.of());
    }
    if (!feed.isPlace(cursor.position(), head)) {
      throw new Problem(
          410,
          "cursor-undone",
          "What this cursor has read was undone",
          "The service was taken back to a moment before it. Start again from"
              + " /api/v1/feed/snapshot and go on with the cursor it gives.",
          List.of());
    }
  }

  private static int seconds(String wait) {
    if (wait == null || wait.isEmpty()) {
      return 0;
    }
    double seconds = Parameters.number("wait", wait);
    if (seconds < 0 || seconds > LONGEST_WAIT_S) {
      throw Problem.badField("wait", wait, "is 0 to " + LONGEST_WAIT_S + " seconds");
    }
    return (int) seconds;
  }
}

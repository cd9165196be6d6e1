package coldround.app;

import coldround.http.Caller;
import coldround.http.Problem;
import coldround.http.StoreFaults;
import coldround.pages.edge.RefusedPage;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import io.quarkus.logging.Log;
import io.quarkus.security.ForbiddenException;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.net.SocketException;
import java.net.URI;
import java.nio.channels.ClosedChannelException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.exception.ConstraintViolationException;
import org.hibernate.exception.DataException;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Every refusal leaves as RFC 9457 problem details, whoever raised it. */
class ProblemMappers {

  private static final String NO_PAGE =
      "There is no page at this address. It may be mistyped, or what it led to is gone.";
  private static final String BUTTON =
      "What is at this address is done by a button of a page. Go there and press it.";
  private static final String UNREAD =
      "What the browser sent cannot be used as it is. Go back, load the page anew and try again.";

  private final Caller caller;
  private final CurrentVertxRequest request;

  @Inject
  ProblemMappers(Caller caller, CurrentVertxRequest request) {
    this.caller = caller;
    this.request = request;
  }

  @ServerExceptionMapper
  Response problem(Problem problem) {
    return problem.response();
  }

  /** A page that is not for the role of its visitor; the first page leads to that which is. */
  @ServerExceptionMapper
  Response notAllowed(ForbiddenException refusal, UriInfo uri) {
    String path = uri.getPath();
    if (path.startsWith("/api/")) {
      return Problem.notAllowed().response();
    }
    boolean astray = path.equals("/") && !caller.getHome().equals(path);
    return astray
        ? Response.seeOther(URI.create(caller.getHome())).build()
        : RefusedPage.of(Problem.notAllowed());
  }

  @ServerExceptionMapper
  Response refused(WebApplicationException refusal) {
    Response given = refusal.getResponse();
    int status = given.getStatus();
    if (status < 400) {
      return given;
    }
    if (refusal.getCause() instanceof JsonProcessingException json) {
      return badJson(json);
    }
    boolean page = looksAtPages();
    Problem problem =
        page ? astray(status) : refusal(status, given.getStatusInfo().getReasonPhrase());
    given
        .getStringHeaders()
        .forEach(
            (name, values) -> {
              if (!name.toLowerCase(Locale.ROOT).startsWith("content-")) {
                problem.with(name, String.join(", ", values));
              }
            });
    return page ? RefusedPage.of(problem) : problem.response();
  }

  /** A person who has mistyped an address, or follows one that is no page any more. */
  private boolean looksAtPages() {
    RoutingContext call = request.getCurrent();
    String accept = call == null ? null : call.request().getHeader("Accept");
    return accept != null
        && accept.contains("text/html")
        && !call.normalizedPath().startsWith("/api/")
        && !call.normalizedPath().startsWith("/q/");
  }

  private static Problem astray(int status) {
    return switch (status) {
      case 404 -> new Problem(404, "http-404", "No such page", NO_PAGE, List.of());
      case 405 -> new Problem(405, "http-405", "Not by its address alone", BUTTON, List.of());
      default ->
          new Problem(status, "http-" + status, "That was not understood", UNREAD, List.of());
    };
  }

  private static Problem refusal(int status, String title) {
    return new Problem(status, "http-" + status, title, say(status), List.of());
  }

  private static String say(int status) {
    return switch (status) {
      case 404 -> "There is nothing at this address; the description is at /q/openapi.";
      case 405 -> "This address does not take this method; the description is at /q/openapi.";
      case 406 -> "This address cannot answer in a media type that the request accepts.";
      case 413 -> "The body is larger than this service takes.";
      case 415 -> "This address does not take that Content-Type; the description is at /q/openapi.";
      default -> "The request cannot be used as it is; the description is at /q/openapi.";
    };
  }

  // the framework has a mapper of its own for these, which would answer without a body
  @ServerExceptionMapper(priority = 1)
  Response badShape(MismatchedInputException e) {
    return badJson(e);
  }

  @ServerExceptionMapper
  Response badJson(JsonProcessingException e) {
    // a body that is refused while it is read
    for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
      if (cause instanceof Problem problem) {
        return problem.response();
      }
    }
    String field =
        e instanceof JsonMappingException mapping
            ? mapping.getPath().stream()
                .map(
                    step ->
                        step.getFieldName() == null ? "" + step.getIndex() : step.getFieldName())
                .collect(Collectors.joining("/", "/", ""))
            : "/";
    String place =
        e.getLocation() == null
            ? ""
            : " (line "
                + e.getLocation().getLineNr()
                + ", column "
                + e.getLocation().getColumnNr()
                + ")";
    return Problem.badField(
            field, null, "cannot be read as the JSON described at /q/openapi" + place)
        .response();
  }

  /** A text with NUL in a body, or a number that no column holds. */
  @ServerExceptionMapper
  Response notToBeStored(DataException refusal) {
    Log.info("what was sent cannot be stored: " + refusal.getMessage());
    return Problem.badField(
            "/",
            null,
            "a text holds the character NUL or is too long, or a number is too large to be stored")
        .response();
  }

  /** Two calls at once made the same: the one that was later may look at what is there now. */
  @ServerExceptionMapper
  Response metAnother(ConstraintViolationException clash) {
    if (clash.getKind() != ConstraintViolationException.ConstraintKind.UNIQUE) {
      return unforeseen(clash);
    }
    Log.info("two calls wrote the same: " + clash.getMessage());
    return Problem.conflict("Another call wrote the same at this moment. Send it again.")
        .response();
  }

  /** The rest of the body will not come, and nobody hears the answer. */
  private boolean hungUp(Throwable fault) {
    RoutingContext call = request.getCurrent();
    boolean gone = call != null && call.response().closed();
    boolean reading = false;
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      // the connection may tell of its end before the answer knows of it
      gone |= cause instanceof ClosedChannelException || cause instanceof SocketException;
      reading |= cause instanceof IOException;
    }
    return gone && reading;
  }

  @ServerExceptionMapper
  Response unforeseen(Throwable fault) {
    Optional<Problem> busy = StoreFaults.busy(fault);
    if (busy.isPresent()) {
      Log.infof("others wrote the same: %s", fault);
      return busy.get().response();
    }
    Optional<Problem> passing = StoreFaults.of(fault);
    if (passing.isPresent()) {
      Log.warnf("the store fails: %s", fault);
      return passing.get().response();
    }
    if (hungUp(fault)) {
      Log.infof("a caller hung up in the middle of a call: %s", fault);
      return refusal(400, "Bad Request").response();
    }
    String id = UUID.randomUUID().toString();
    Log.errorf(fault, "fault %s", id);
    return new Problem(
            500,
            "fault",
            "A fault of this service",
            "This should not happen. Its log tells more under " + id + ".",
            List.of())
        .response();
  }
}

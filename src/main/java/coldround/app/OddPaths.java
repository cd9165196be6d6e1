package coldround.app;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.regex.Pattern;

/**
 * Nothing is at an address that is longer than any of ours. The framework looks for the call that
 * is meant in a time that grows with the square of its length, seconds for 4000 characters, while
 * nobody else is served by that thread. Nor at one with a semicolon, which in an id is sent as %3B:
 * the framework would decode the rest of it twice, and fail at a %25.
 */
@ApplicationScoped
class OddPaths {

  /** Before it is found out who calls. */
  private static final int FIRST = 1000;

  /**
   * A visit number of 120 characters, each of which takes nine when encoded, and what is around.
   */
  private static final int LONGEST = 1200;

  /** Calls of which several fit the beginning of an address, and whose names are short. */
  private static final Pattern SHORT =
      Pattern.compile("/api/v1/(rounds|exports|replacement-plans)/.*|/import/.*");

  private static final int LONGEST_SHORT = 200;

  private static final String NOTHING =
      """
      {"type":"urn:coldround:problem:http-404","title":"Not Found","status":404,\
      "detail":"There is nothing at this address; the description is at /q/openapi."}\
      """;

  void register(@Observes Filters filters) {
    filters.register(OddPaths::refuse, FIRST);
  }

  private static boolean isTooLong(String path) {
    return path.length() > LONGEST_SHORT
        && (path.length() > LONGEST || SHORT.matcher(path).matches());
  }

  private static void refuse(RoutingContext context) {
    String path = context.request().path();
    if (path != null && (isTooLong(path) || path.indexOf(';') >= 0)) {
      context
          .response()
          .setStatusCode(404)
          .putHeader("Content-Type", "application/problem+json")
          .end(NOTHING);
    } else {
      context.next();
    }
  }
}

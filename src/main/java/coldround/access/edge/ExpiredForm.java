package coldround.access.edge;

import coldround.http.ExpiredPage;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;

/** A form that comes without a login, answered before anything of it is read. */
final class ExpiredForm {

  static final String POLICY =
      "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  private ExpiredForm() {}

  /** True for what a browser sends when a person presses a button. */
  static boolean asked(RoutingContext context) {
    String accept = context.request().getHeader("Accept");
    return !context.normalizedPath().startsWith("/api/")
        && accept != null
        && accept.contains("text/html");
  }

  static void send(RoutingContext context, String challenge) {
    HttpServerResponse response = context.response().setStatusCode(401);
    response
        .putHeader("WWW-Authenticate", challenge)
        .putHeader("Content-Type", "text/html;charset=UTF-8")
        .putHeader("Content-Security-Policy", POLICY)
        .putHeader("X-Content-Type-Options", "nosniff")
        .putHeader("Cache-Control", "no-store")
        .end(ExpiredPage.html());
  }
}

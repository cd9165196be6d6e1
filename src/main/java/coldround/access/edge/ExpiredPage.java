package coldround.access.edge;

import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** What a form is answered when the login has run out: how to enter and send it once more. */
final class ExpiredPage {

  private static final String PAGE = read("expired.html");
  static final String POLICY =
      "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  private ExpiredPage() {}

  private static String read(String name) {
    ClassLoader loader = ExpiredPage.class.getClassLoader();
    try (InputStream page = loader.getResourceAsStream(name)) {
      return new String(page.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

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
        .end(PAGE);
  }
}

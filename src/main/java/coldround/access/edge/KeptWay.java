package coldround.access.edge;

import coldround.access.WayOn;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

/**
 * What the browser keeps of the page that was wanted, while a person logs in at the provider: the
 * address to come back to is registered there and has no room for it.
 */
final class KeptWay {

  private static final String COOKIE = "coldround-to";
  private static final String PATH = "/enter";

  /** Longer than anybody needs to log in. */
  private static final Duration LASTS = Duration.ofMinutes(30);

  private KeptWay() {}

  /** Of the address that is called, else of an earlier one that the browser has kept. */
  static Optional<WayOn> of(RoutingContext context) {
    String asked = asked(context);
    Cookie cookie = context.request().getCookie(COOKIE);
    return asked != null || cookie == null ? WayOn.of(asked) : WayOn.of(decoded(cookie.getValue()));
  }

  private static String asked(RoutingContext context) {
    try {
      return context.request().getParam(WayOn.NAME);
    } catch (IllegalArgumentException noAddress) {
      // a query that cannot be decoded asks for nothing
      return "";
    }
  }

  private static String decoded(String value) {
    try {
      return URLDecoder.decode(value, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException written) {
      // by somebody else: then it is nothing
      return "";
    }
  }

  /**
   * When the browser is sent to the provider. It must come along from there, so it is not strict.
   */
  static void keep(RoutingContext context) {
    Optional<WayOn> asked = of(context);
    // an answer of the provider that does not hold asks once more, still for the same page
    if (asked.isEmpty() || context.request().query() == null) {
      forget(context);
      return;
    }
    context
        .response()
        .addCookie(
            Cookie.cookie(COOKIE, URLEncoder.encode(asked.get().address(), StandardCharsets.UTF_8))
                .setPath(PATH)
                .setMaxAge(LASTS.toSeconds())
                .setHttpOnly(true)
                .setSecure(context.request().isSSL())
                .setSameSite(CookieSameSite.LAX));
  }

  static void forget(RoutingContext context) {
    if (context.request().getCookie(COOKIE) != null) {
      context
          .response()
          .addCookie(Cookie.cookie(COOKIE, "").setPath(PATH).setMaxAge(0).setHttpOnly(true));
    }
  }
}

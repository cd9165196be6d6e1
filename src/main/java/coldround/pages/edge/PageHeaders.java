package coldround.pages.edge;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** What a browser may do with a page: nothing that is not from here, and no script in the text. */
class PageHeaders {

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self';"
          + " connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  /** What programs are answered is no page; the reports among it bring all that they show. */
  private static final String ANSWERS =
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:;"
          + " frame-ancestors 'none'";

  /** A year, as is usual; told under TLS only (RFC 6797, section 7.2). */
  private static final String TLS_FROM_NOW_ON = "max-age=31536000";

  // headers of whatever is answered, /q/ among it, stand in application.properties
  @ServerResponseFilter
  void guard(
      ContainerRequestContext request, ContainerResponseContext response, RoutingContext context) {
    MultivaluedMap<String, Object> headers = response.getHeaders();
    if (context.request().isSSL()) {
      headers.putSingle("Strict-Transport-Security", TLS_FROM_NOW_ON);
    }
    if (request.getUriInfo().getPath().startsWith("/api/")) {
      headers.putSingle("Content-Security-Policy", ANSWERS);
      return;
    }
    headers.putSingle("Content-Security-Policy", POLICY);
    // our own forms are known by their Origin, which "no-referrer" would take away
    headers.putSingle("Referrer-Policy", "same-origin");
    headers.putSingle("Cross-Origin-Opener-Policy", "same-origin");
    headers.putSingle("Permissions-Policy", "camera=(), geolocation=(), microphone=()");
    headers.computeIfAbsent(HttpHeaders.CACHE_CONTROL, name -> List.of("no-store"));
  }
}

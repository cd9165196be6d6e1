package coldround.pages.edge;

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

  @ServerResponseFilter
  void guard(ContainerRequestContext request, ContainerResponseContext response) {
    MultivaluedMap<String, Object> headers = response.getHeaders();
    headers.putSingle("X-Content-Type-Options", "nosniff");
    if (request.getUriInfo().getPath().startsWith("/api/")) {
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

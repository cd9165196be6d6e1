package coldround.app;

import coldround.http.Parameters;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.UriInfo;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * An address that holds the character NUL is refused before anything is looked up by it. Bodies of
 * JSON are read for it in {@link BodyLimits}, forms and files where they are read.
 */
@ApplicationScoped
class NoNul {

  @ServerRequestFilter
  void refuse(ContainerRequestContext request) {
    UriInfo uri = request.getUriInfo();
    if (uri.getRequestUri().getRawSchemeSpecificPart().contains("%00")) {
      Parameters.refuseNul(uri.getPathParameters());
      Parameters.refuseNul(uri.getQueryParameters());
    }
  }
}

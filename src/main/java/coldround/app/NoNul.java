package coldround.app;

import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * The character NUL stands in no code, name or day, and PostgreSQL takes no text that holds it: an
 * address with one is refused before anything is looked up by it.
 */
@ApplicationScoped
class NoNul {

  private static final String SAYS = "holds the character NUL (%00), which stands in no name here";

  @ServerRequestFilter
  void refuse(ContainerRequestContext request) {
    UriInfo uri = request.getUriInfo();
    if (!uri.getRequestUri().getRawSchemeSpecificPart().contains("%00")) {
      return;
    }
    refuse(uri.getPathParameters());
    refuse(uri.getQueryParameters());
  }

  private static void refuse(Map<String, List<String>> parameters) {
    parameters.forEach(
        (name, values) -> {
          if (values.stream().anyMatch(value -> value.indexOf('\0') >= 0)) {
            throw Problem.badField(name, "", SAYS);
          }
        });
  }
}

package coldround.app;

import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.WithFormRead;
import org.jboss.resteasy.reactive.server.core.ResteasyReactiveRequestContext;
import org.jboss.resteasy.reactive.server.core.multipart.FormData;
import org.jboss.resteasy.reactive.server.multipart.FormValue;
import org.jboss.resteasy.reactive.server.spi.ResteasyReactiveContainerRequestContext;

/**
 * The character NUL stands in no code, name or day, and PostgreSQL takes no text that holds it: an
 * address or a form with one is refused before anything is looked up by it. Bodies of JSON are read
 * for it in {@link BodyLimits}, rows of files where they are read.
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

  @ServerRequestFilter
  @WithFormRead
  void refuseInForm(ResteasyReactiveContainerRequestContext request) {
    var call = (ResteasyReactiveRequestContext) request.getServerRequestContext();
    FormData form = call.getFormData();
    if (form == null) {
      return;
    }
    for (String name : form) {
      for (FormValue value : form.get(name)) {
        if (!value.isFileItem() && value.getValue().indexOf('\0') >= 0) {
          throw Problem.badField(name, "", SAYS);
        }
      }
    }
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

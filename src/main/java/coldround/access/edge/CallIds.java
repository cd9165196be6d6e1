package coldround.access.edge;

import coldround.http.Caller;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Gives each call an id, or keeps the one it brings, by which it is found again. */
@ApplicationScoped
class CallIds {

  private static final String HEADER = "X-Request-Id";
  private static final Pattern USABLE = Pattern.compile("[A-Za-z0-9._-]{1,64}");

  @ServerRequestFilter(preMatching = true)
  void name(ContainerRequestContext request, RoutingContext context) {
    String brought = request.getHeaderString(HEADER);
    boolean usable = brought != null && USABLE.matcher(brought).matches();
    context.put(Caller.CALL, usable ? brought : UUID.randomUUID().toString());
  }

  @ServerResponseFilter
  void tell(ContainerResponseContext response, RoutingContext context) {
    String id = context.get(Caller.CALL);
    if (id != null) {
      response.getHeaders().putSingle(HEADER, id);
    }
  }
}

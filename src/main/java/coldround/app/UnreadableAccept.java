package coldround.app;

import io.vertx.core.MultiMap;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.HttpHeaders;
import org.jboss.resteasy.reactive.common.util.MediaTypeHelper;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * A header Accept that names no media types is disregarded, as RFC 9110 (12.5.1) lets a server do:
 * the framework reads it only after the work of the call is done, and fails then.
 */
@ApplicationScoped
class UnreadableAccept {

  @ServerRequestFilter(preMatching = true)
  void disregard(RoutingContext context) {
    MultiMap headers = context.request().headers();
    if (!headers.getAll(HttpHeaders.ACCEPT).stream().allMatch(UnreadableAccept::isReadable)) {
      headers.remove(HttpHeaders.ACCEPT);
    }
  }

  private static boolean isReadable(String accept) {
    try {
      return !MediaTypeHelper.parseHeader(accept).isEmpty();
    } catch (IllegalArgumentException e) {
      return false;
    }
  }
}

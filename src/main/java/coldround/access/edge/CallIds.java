package coldround.access.edge;

import coldround.http.Caller;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.logging.MDC;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Gives each call an id, or keeps the one it brings, by which it is found again in answers,
 * problems, the audit and the log.
 */
@ApplicationScoped
class CallIds {

  static final String HEADER = "X-Request-Id";

  /** How the log knows it. */
  static final String LOGGED = "call";

  private static final Pattern USABLE = Pattern.compile("[A-Za-z0-9._-]{1,64}");

  /** W3C Trace Context: version, trace, span, flags. */
  private static final Pattern TRACE =
      Pattern.compile("[0-9a-f]{2}-((?!0{32})[0-9a-f]{32})-(?!0{16})[0-9a-f]{16}-[0-9a-f]{2}.*");

  /** The id of a call, given to it when it is first asked for. */
  static String of(RoutingContext context) {
    String known = context.get(Caller.CALL);
    if (known != null) {
      return known;
    }
    String id = brought(context);
    context.put(Caller.CALL, id);
    return id;
  }

  private static String brought(RoutingContext context) {
    String brought = context.request().getHeader(HEADER);
    if (brought != null && USABLE.matcher(brought).matches()) {
      return brought;
    }
    String parent = context.request().getHeader("traceparent");
    Matcher trace = TRACE.matcher(parent == null ? "" : parent);
    return trace.matches() ? trace.group(1) : UUID.randomUUID().toString();
  }

  /** RFC 9457: which occurrence of the problem it is. */
  static String occurrence(RoutingContext context) {
    return "urn:coldround:call:" + of(context);
  }

  @ServerRequestFilter(preMatching = true)
  void name(ContainerRequestContext request, RoutingContext context) {
    MDC.put(LOGGED, of(context));
  }

  @ServerResponseFilter
  void tell(ContainerResponseContext response, RoutingContext context) {
    response.getHeaders().putSingle(HEADER, of(context));
    if (response.getStatus() >= 400 && response.getEntity() instanceof Map<?, ?> problem) {
      tell(problem, context);
    }
  }

  @SuppressWarnings("unchecked")
  private static void tell(Map<?, ?> problem, RoutingContext context) {
    if (String.valueOf(problem.get("type")).startsWith("urn:coldround:problem:")) {
      ((Map<String, Object>) problem).put("instance", occurrence(context));
    }
  }
}

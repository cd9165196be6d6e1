package coldround.access.edge;

import coldround.http.Caller;
import coldround.http.Problem;
import io.vertx.core.MultiMap;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * The one place where calls are narrowed to what is there for their caller, once the role may make
 * the call at all. What a path names by id and is not the caller's own is as unknown as what there
 * never was; what a query asks for is cut down to the caller's own.
 */
class Gate {

  /** A code that no customer or technician has, longer than any that can be stored. */
  private static final String NOBODY = "nobody".repeat(40);

  private static final Set<String> OF_NO_CUSTOMER = Set.of("technicians", "travel-times");

  private final Caller caller;
  private final Owners owners;

  @Inject
  Gate(Caller caller, Owners owners) {
    this.caller = caller;
    this.owners = owners;
  }

  @ServerRequestFilter
  void narrow(ContainerRequestContext request, RoutingContext context) {
    if (!caller.isCustomer() && !caller.isTechnician()) {
      return;
    }
    String what = what(request.getUriInfo().getPath());
    MultivaluedMap<String, String> names = request.getUriInfo().getPathParameters();
    named(what, names);
    if (caller.isCustomer()) {
      own(context.queryParams(), "customer", caller.customer());
    } else if (names.isEmpty()) {
      technician(what, context.queryParams());
    }
  }

  /** The first step of an address below the version, or of a page. */
  private static String what(String path) {
    String[] steps = path.replaceFirst("^/api/v1/", "/").split("/");
    return steps.length > 1 ? steps[1] : "";
  }

  /** What the path names has to be the caller's own; what is not thought of is nobody's. */
  private void named(String what, MultivaluedMap<String, String> names) {
    String id = names.getFirst(names.containsKey("unit") ? "unit" : "id");
    boolean own =
        switch (what) {
          case "units" -> names.isEmpty() || owners.unit(id);
          case "rounds" -> names.isEmpty() || owners.rounds(id);
          case "replacement-plans" -> names.isEmpty() || owners.plan(id);
          case "exports" -> !OF_NO_CUSTOMER.contains(names.getFirst("kind"));
          // of nobody in particular
          case "refrigerants", "schemas" -> true;
          default -> names.isEmpty();
        };
    if (!own) {
      throw Problem.notFound(name(what) + " " + (id == null ? names.getFirst("kind") : id));
    }
  }

  /** As the answers to ids that there are not name it. */
  private static String name(String what) {
    return switch (what) {
      case "units" -> "unit";
      case "rounds" -> "plan of rounds";
      case "replacement-plans" -> "replacement plan";
      case "exports" -> "list of yours of the kind";
      default -> "such thing";
    };
  }

  /** A technician has no fleet and no list of it but that of a site. */
  private void technician(String what, MultiMap query) {
    switch (what) {
      case "units", "tasks" -> site(query);
      case "feed" -> own(query, "technician", caller.technician());
      case "rounds", "refrigerants", "visits", "schemas", "enter", "leave" -> {}
      default -> throw Problem.notFound(name(what));
    }
  }

  private static void own(MultiMap query, String parameter, String own) {
    String asked = query.get(parameter);
    boolean others = asked != null && !asked.isEmpty() && !asked.equals(own);
    query.set(parameter, others ? NOBODY : own);
  }

  /** One of the sites the technician goes to, or a unit there, is to be named. */
  private void site(MultiMap query) {
    String customer = query.get("customer");
    String site = query.get("site");
    String unit = query.get("unit");
    if (filled(unit) && owners.unit(unit)) {
      return;
    }
    if (filled(customer) && filled(site)) {
      if (!caller.reaches(customer, site)) {
        query.set("customer", NOBODY);
      }
    } else if (filled(unit)) {
      query.set("customer", NOBODY);
    } else {
      throw Problem.badField(
          filled(customer) ? "site" : "customer",
          null,
          "name customer and site, or the id of a unit, of your own rounds");
    }
  }

  private static boolean filled(String text) {
    return text != null && !text.isEmpty();
  }
}

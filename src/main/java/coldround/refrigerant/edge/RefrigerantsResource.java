package coldround.refrigerant.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Page;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.quantity.MeasureSystem;
import coldround.refrigerant.PhaseOutRule;
import coldround.refrigerant.Refrigerant;
import coldround.refrigerant.RefrigerantLaw;
import coldround.refrigerant.Refrigerants;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What is known about refrigerants: what they are, and what law says of them by when. */
@Path("/api/v1/refrigerants")
@Tag(name = "Refrigerants")
public class RefrigerantsResource {

  private final Refrigerants refrigerants;
  private final RefrigerantLaw law;
  private final Answers answers;

  @Inject
  RefrigerantsResource(Refrigerants refrigerants, RefrigerantLaw law, Answers answers) {
    this.refrigerants = refrigerants;
    this.law = law;
    this.answers = answers;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "listRefrigerants",
      summary = "All refrigerants with family, composition, safety group, GWP and phase-out rules")
  @APIResponse(
      responseCode = "200",
      description = "A page of them",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(type = SchemaType.ARRAY, implementation = RefrigerantView.class)))
  public Response list(
      @QueryParam("jurisdiction") String jurisdiction,
      @QueryParam("measures") String measures,
      @QueryParam("limit") String limit,
      @QueryParam("after") String after,
      @Context Request request,
      @Context UriInfo uri) {
    MeasureSystem system = Parameters.measures(measures);
    int most = Parameters.limit(limit);
    List<Refrigerant> all = refrigerants.all();
    int from = from(after, all);
    int to = Math.min(all.size(), from + most);
    String next = to < all.size() ? Parameters.cursor(all.get(to - 1).designation()) : null;
    List<RefrigerantView> items =
        all.subList(from, to).stream().map(r -> view(r, jurisdiction, system)).toList();
    return answers.list(new Page<>(items, next), request, uri);
  }

  @GET
  @Path("{designation}")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE, Role.SCHEDULER_CODE})
  @Operation(
      operationId = "getRefrigerant",
      summary = "One refrigerant by its designation in any usual spelling")
  @APIResponse(
      responseCode = "200",
      description = "The refrigerant",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = RefrigerantView.class)))
  public Response refrigerant(
      @PathParam("designation") String designation,
      @QueryParam("jurisdiction") String jurisdiction,
      @QueryParam("measures") String measures,
      @Context Request request) {
    MeasureSystem system = Parameters.measures(measures);
    Refrigerant refrigerant =
        refrigerants
            .find(designation)
            .orElseThrow(() -> Problem.notFound("refrigerant " + designation));
    return answers.read(view(refrigerant, jurisdiction, system), request);
  }

  private RefrigerantView view(Refrigerant refrigerant, String jurisdiction, MeasureSystem system) {
    boolean everywhere = jurisdiction == null || jurisdiction.isEmpty();
    List<PhaseOutRule> rules =
        everywhere ? law.rules(refrigerant) : law.rules(refrigerant, jurisdiction);
    return RefrigerantView.of(refrigerant, rules, system);
  }

  private static int from(String after, List<Refrigerant> all) {
    String place = Parameters.place(after);
    if (place.isEmpty()) {
      return 0;
    }
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).designation().equals(place)) {
        return i + 1;
      }
    }
    throw Parameters.badCursor(after);
  }
}

package coldround.replacement.edge;

import coldround.access.Role;
import coldround.http.Problem;
import coldround.http.Problem.FieldError;
import coldround.quantity.MeasureSystem;
import coldround.replacement.Economics;
import coldround.replacement.ReplacementPlan;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Where the limit and the main assumptions are moved, and the plan follows at once. */
@Path("/replacement")
@Produces(MediaType.TEXT_HTML)
public class PlanPage {

  // an answer at once is worth more here than the last hundredth of a percent
  private static final double SECONDS = 0.4;
  private static final int RUNS = 200;

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance plan(
        PlanForm form,
        Map<String, String> customers,
        String money,
        PlanReport.Told plan,
        List<FieldError> wrong,
        String kept);
  }

  private final PlanMaking making;
  private final PlanKeeping keeping;
  private final Economics economics;

  @Inject
  PlanPage(PlanMaking making, PlanKeeping keeping, Economics economics) {
    this.making = making;
    this.keeping = keeping;
    this.economics = economics;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(hidden = true)
  public Response look(@Context UriInfo uri, @QueryParam("kept") String kept) {
    PlanForm form = PlanForm.of(uri.getQueryParameters(), economics);
    if (form.customer().isEmpty()) {
      return page(200, form, null, List.of(), null);
    }
    try {
      ReplacementPlan plan = making.make(form.request(RUNS), SECONDS);
      PlanReport.Told told =
          PlanReport.told(plan, economics, making.names(), List.of(), MeasureSystem.US);
      return page(200, form, told, List.of(), kept);
    } catch (Problem problem) {
      return refused(form, problem);
    }
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response keep(MultivaluedMap<String, String> sent) {
    PlanForm form = PlanForm.of(sent, economics);
    try {
      PlanRequest asked = form.request(null);
      String id = keeping.keep(making.make(asked), asked.customers(), MeasureSystem.US).id();
      return Response.seeOther(URI.create("/replacement?" + form.query() + "&kept=" + id)).build();
    } catch (Problem problem) {
      return refused(form, problem);
    }
  }

  private Response refused(PlanForm form, Problem problem) {
    List<FieldError> wrong =
        problem.errors().isEmpty()
            ? List.of(new FieldError("plan", "", problem.getMessage()))
            : problem.errors();
    return page(problem.status(), form, null, wrong, null);
  }

  private Response page(
      int status, PlanForm form, PlanReport.Told plan, List<FieldError> wrong, String kept) {
    String money = economics.costs().currency().code();
    String page = Templates.plan(form, making.names(), money, plan, wrong, kept).render();
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(page)
        .build();
  }
}

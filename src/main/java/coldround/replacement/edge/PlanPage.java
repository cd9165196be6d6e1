package coldround.replacement.edge;

import coldround.access.Role;
import coldround.fleet.Today;
import coldround.http.Caller;
import coldround.http.OncePressed;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Wrong;
import coldround.quantity.MeasureSystem;
import coldround.replacement.Economics;
import coldround.replacement.PlanOwners;
import coldround.replacement.ReplacementPlan;
import coldround.replacement.budget.SolverProgram;
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
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Where the limit and the main assumptions are moved, and the plan follows at once. */
@Path("/replacement")
@Produces(MediaType.TEXT_HTML)
public class PlanPage {

  // an answer at once is worth more here than the last hundredth of a percent
  private static final double SECONDS = 0.3;
  private static final int RUNS = 200;

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance plan(
        PlanForm form,
        Map<String, String> customers,
        String money,
        PlanReport.Told plan,
        Wrong wrong,
        List<String> other,
        String kept);

    static native TemplateInstance made(List<Made> plans);
  }

  /** A plan that was kept, and the day it was made. */
  public record Made(String id, String day) {}

  private static final int SHOWN = 100;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  private final PlanMaking making;
  private final PlanKeeping keeping;
  private final Economics economics;
  private final PlanOwners owners;
  private final Today today;
  private final Caller caller;
  private final OncePressed presses;

  @Inject
  PlanPage(
      PlanMaking making,
      PlanKeeping keeping,
      Economics economics,
      PlanOwners owners,
      Today today,
      Caller caller,
      OncePressed presses) {
    this.making = making;
    this.keeping = keeping;
    this.economics = economics;
    this.owners = owners;
    this.today = today;
    this.caller = caller;
    this.presses = presses;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(hidden = true)
  public Response look(@Context UriInfo uri, @QueryParam("kept") String kept) {
    if (caller.isCustomer()) {
      return made();
    }
    PlanForm form = PlanForm.of(uri.getQueryParameters(), economics);
    if (form.customer().isEmpty()) {
      CompletableFuture.runAsync(SolverProgram::ready);
      return page(200, form, null, Wrong.NOTHING, null);
    }
    try {
      ReplacementPlan plan = making.make(form.request(RUNS), SECONDS);
      PlanReport.Told told = PlanReport.summary(plan, economics, making.names(), MeasureSystem.US);
      return page(200, form, told, Wrong.NOTHING, kept);
    } catch (Problem problem) {
      return refused(form, problem);
    }
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response keep(MultivaluedMap<String, String> sent) {
    Parameters.refuseNul(sent);
    PlanForm form = PlanForm.of(sent, economics);
    try {
      PlanRequest asked = form.request(null);
      ReplacementPlan plan = making.make(asked);
      String id =
          presses.id(
              sent.getFirst("once"),
              "replacement " + form.query(),
              () -> keeping.keep(plan, asked.customers(), MeasureSystem.US).id());
      return Response.seeOther(URI.create("/replacement?" + form.query() + "&kept=" + id)).build();
    } catch (Problem problem) {
      return refused(form, problem);
    }
  }

  /** Customers read what was made for them. */
  private Response made() {
    List<Made> plans =
        owners.of(caller.customer(), SHOWN).stream()
            .map(plan -> new Made(plan.id(), DAY.format(plan.at().atZone(today.usual()))))
            .toList();
    return html(200, Templates.made(plans));
  }

  private Response refused(PlanForm form, Problem problem) {
    return page(problem.status(), form, null, PlanForm.wrong(problem), null);
  }

  private Response page(int status, PlanForm form, PlanReport.Told plan, Wrong wrong, String kept) {
    String money = economics.costs().currency().code();
    return html(
        status,
        Templates.plan(
            form, making.names(), money, plan, wrong, wrong.besides(PlanForm.FIELDS), kept));
  }

  private static Response html(int status, TemplateInstance page) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(page.render())
        .build();
  }
}

package coldround.pages.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetNames;
import coldround.fleet.Today;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.http.Wrong;
import coldround.pages.Figures;
import coldround.pages.RoundsView;
import coldround.quantity.MeasureSystem;
import coldround.rounds.Rounds;
import coldround.rounds.Standing;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Plans of rounds: the list of them, and one as map, bars and stops. */
@Path("/rounds")
@Produces(MediaType.TEXT_HTML)
public class RoundsPages {

  private static final int SHOWN = 50;
  private static final int DAYS = 5;

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance rounds(
        List<Line> plans, String from, String to, Wrong wrong, List<String> other);

    static native TemplateInstance plan(RoundsView plan, boolean si);
  }

  /** One plan in the list. */
  public record Line(String id, String span, String state, String requested) {}

  private final Rounds rounds;
  private final Fleet fleet;
  private final Today today;

  @Inject
  RoundsPages(Rounds rounds, Fleet fleet, Today today) {
    this.rounds = rounds;
    this.fleet = fleet;
    this.today = today;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(hidden = true)
  public TemplateInstance list() {
    LocalDate from = today.usually().plusDays(1);
    String to = from.plusDays(DAYS - 1L).toString();
    return page(from.toString(), to, Wrong.NOTHING);
  }

  private TemplateInstance page(String from, String to, Wrong wrong) {
    List<Line> lines = rounds.latest(SHOWN).stream().map(this::line).toList();
    return Templates.rounds(lines, from, to, wrong, wrong.besides(List.of("from", "to")));
  }

  private Line line(Standing standing) {
    return new Line(
        standing.id(),
        Figures.days(standing.from(), standing.to()),
        standing.state().code(),
        Figures.day(standing.requested().atZone(today.usual()).toLocalDate()));
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response plan(
      @FormParam("from") String from, @FormParam("to") String to, @FormParam("once") String once) {
    try {
      LocalDate first = Parameters.date("from", from, today.usually());
      LocalDate last = Parameters.date("to", to, first.plusDays(DAYS - 1L));
      return Response.seeOther(URI.create("/rounds/" + rounds.plan(first, last, once))).build();
    } catch (Problem problem) {
      return Response.status(problem.status())
          .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
          .entity(page(from, to, Wrong.of(problem)).render())
          .build();
    }
  }

  @GET
  @Path("/{id}")
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(hidden = true)
  public TemplateInstance read(
      @PathParam("id") String id,
      @QueryParam("day") String day,
      @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    Rounds.Entry entry =
        rounds.find(id).orElseThrow(() -> Problem.notFound("plan of rounds " + id));
    LocalDate wanted = Parameters.date("day", day, null);
    RoundsView shown = RoundsView.of(entry, wanted, system, new FleetNames(fleet));
    return Templates.plan(shown, system == MeasureSystem.SI);
  }
}

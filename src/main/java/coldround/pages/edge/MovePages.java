package coldround.pages.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.Technician;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.MoveSheet;
import coldround.pages.RoundWords;
import coldround.quantity.MeasureSystem;
import coldround.rounds.ByHand;
import coldround.rounds.ByHand.Move;
import coldround.rounds.Moves;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
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
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Moving a stop by hand: the costs are shown before anything is changed. */
@Path("/rounds/{id}/moves")
@Produces(MediaType.TEXT_HTML)
public class MovePages {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance move(MoveSheet sheet, Places places, boolean si);
  }

  /** Where a stop may be put. */
  public record Places(List<Choice> technicians, List<Choice> days, List<Choice> positions) {

    static Places of(RoundPlan plan, List<Technician> technicians, Move move) {
      return new Places(
          technicians.stream()
              .map(t -> choice(t.code(), t.name(), t.code().equals(move.technician())))
              .toList(),
          plan.from()
              .datesUntil(plan.to().plusDays(1))
              .map(day -> choice(day.toString(), RoundWords.day(day), day.equals(move.day())))
              .toList(),
          positions(plan, move.position()));
    }

    private static List<Choice> positions(RoundPlan plan, int chosen) {
      int most = plan.rounds().stream().mapToInt(r -> r.stops().size()).max().orElse(0) + 1;
      return IntStream.rangeClosed(0, most)
          .mapToObj(
              at ->
                  choice(
                      String.valueOf(at),
                      at == ByHand.CHEAPEST ? "where it costs least" : "stop " + at,
                      at == chosen))
          .toList();
    }

    private static Choice choice(String value, String label, boolean chosen) {
      return new Choice(value, label.isEmpty() ? value : label, chosen);
    }
  }

  private final Rounds rounds;
  private final Moves moves;
  private final Fleet fleet;

  @Inject
  MovePages(Rounds rounds, Moves moves, Fleet fleet) {
    this.rounds = rounds;
    this.moves = moves;
    this.fleet = fleet;
  }

  @ServerExceptionMapper
  Response refused(Problem problem, UriInfo uri) {
    return problem.status() == 404
        ? RefusedPage.of(problem, "/rounds", "To the plans")
        : RefusedPage.of(
            problem, "/rounds/" + uri.getPathParameters().getFirst("id"), "To the plan");
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response ask(
      @PathParam("id") String id,
      @QueryParam("stop") String stop,
      @QueryParam("technician") String technician,
      @QueryParam("day") String day,
      @QueryParam("position") String position,
      @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    Move move = read(plan(entry(id)), stop, technician, day, position);
    return asked(id, move, system, false);
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(hidden = true)
  public Response take(
      @PathParam("id") String id,
      @FormParam("stop") String stop,
      @FormParam("technician") String technician,
      @FormParam("day") String day,
      @FormParam("position") String position,
      @FormParam("seen") String seen,
      @FormParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    Rounds.Entry entry = entry(id);
    Move move = read(plan(entry), stop, technician, day, position);
    try {
      moves.take(id, move, Parameters.whole("seen", seen, -1));
      return Response.seeOther(moved(id, move, system)).build();
    } catch (Problem problem) {
      if (problem.status() != 412) {
        throw problem;
      }
      // pressed twice, or two wanted the same: what was asked for is so
      return sheet(id, move, system, true).nothing()
          ? Response.seeOther(moved(id, move, system)).build()
          : asked(id, move, system, true);
    }
  }

  private Rounds.Entry entry(String id) {
    return rounds.find(id).orElseThrow(() -> Problem.notFound("plan of rounds " + id));
  }

  private static RoundPlan plan(Rounds.Entry entry) {
    return entry
        .plan()
        .orElseThrow(() -> Problem.conflict("There is no plan yet: look again in a second."));
  }

  private static java.net.URI moved(String id, Move move, MeasureSystem system) {
    UriBuilder page = UriBuilder.fromPath("/rounds/{id}").queryParam("day", move.day());
    if (system == MeasureSystem.SI) {
      page.queryParam("measures", "si");
    }
    return page.build(id);
  }

  private static Move read(
      RoundPlan plan, String stop, String technician, String day, String position) {
    RoundPlan.Round now = ByHand.round(plan, stop == null ? "" : stop);
    if (now == null) {
      throw Problem.conflict("The stop is no longer in this plan: look at it again.");
    }
    LocalDate wanted = Parameters.date("day", day, now.day());
    int at = Parameters.whole("position", position, ByHand.CHEAPEST);
    String who = technician == null || technician.isEmpty() ? now.technician() : technician;
    return new Move(stop, who, wanted, at);
  }

  private Response asked(String id, Move move, MeasureSystem system, boolean changed) {
    MoveSheet sheet = sheet(id, move, system, changed);
    Places places = Places.of(plan(entry(id)), fleet.technicians(), move);
    return Response.status(changed ? 409 : 200)
        .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
        .entity(Templates.move(sheet, places, system == MeasureSystem.SI).render())
        .build();
  }

  private MoveSheet sheet(String id, Move move, MeasureSystem system, boolean changed) {
    int revision = entry(id).standing().revision();
    return MoveSheet.of(id, revision, move, moves.tried(id, move), system, changed);
  }
}

package coldround.pages.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.RouteSheet;
import coldround.quantity.MeasureSystem;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import coldround.scoring.Scoring;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Task;
import coldround.upkeep.Upkeep;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Route sheets to print: one a technician and day, each on paper of its own. */
@Path("/rounds/{id}/sheet")
@Produces(MediaType.TEXT_HTML)
public class SheetPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance sheet(String id, List<RouteSheet> sheets);
  }

  private final Rounds rounds;
  private final Fleet fleet;
  private final Scoring scoring;
  private final Upkeep upkeep;
  private final ArrangementList arrangements;
  private final Today today;

  @Inject
  SheetPage(
      Rounds rounds,
      Fleet fleet,
      Scoring scoring,
      Upkeep upkeep,
      ArrangementList arrangements,
      Today today) {
    this.rounds = rounds;
    this.fleet = fleet;
    this.scoring = scoring;
    this.upkeep = upkeep;
    this.arrangements = arrangements;
    this.today = today;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @Operation(hidden = true)
  public TemplateInstance sheet(
      @PathParam("id") String id,
      @QueryParam("technician") String technician,
      @QueryParam("day") String day,
      @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    LocalDate only = Parameters.date("day", day, null);
    RoundPlan plan =
        rounds
            .find(id)
            .orElseThrow(() -> Problem.notFound("plan of rounds " + id))
            .plan()
            .orElseThrow(() -> Problem.conflict("There is no plan yet; ask again in a second."));
    List<RoundPlan.Round> wanted =
        plan.rounds().stream()
            .filter(round -> technician == null || round.technician().equals(technician))
            .filter(round -> only == null || round.day().equals(only))
            .toList();
    RouteSheet.Maker maker = new RouteSheet.Maker(known(wanted), upkeep.catalogue(), system);
    return Templates.sheet(id, wanted.stream().map(maker::sheet).toList());
  }

  private Map<String, RouteSheet.Known> known(List<RoundPlan.Round> wanted) {
    Set<String> units = new LinkedHashSet<>();
    for (RoundPlan.Round round : wanted) {
      round.stops().forEach(stop -> stop.call().jobs().forEach(job -> units.add(job.unit())));
    }
    Map<String, RouteSheet.Known> known = new HashMap<>();
    fleet.eachHistory(
        units,
        history -> {
          LocalDate asOf = today.at(history.site());
          List<Task> open =
              history.unit().inUse(asOf)
                  ? upkeep.plan(
                      scoring.assess(history, asOf),
                      asOf,
                      arrangements.of(List.of(history.unit().id())))
                  : List.of();
          known.put(history.unit().id(), new RouteSheet.Known(history, open));
        });
    return known;
  }
}

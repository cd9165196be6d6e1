package coldround.pages.edge;

import coldround.access.Role;
import coldround.fleet.Fleet;
import coldround.fleet.FleetNames;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.fleet.Visit;
import coldround.http.Kept;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.ScoreCurve;
import coldround.pages.UnitPictures;
import coldround.pages.UnitReport;
import coldround.pages.UnitView;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Assessment;
import coldround.scoring.LimitName;
import coldround.scoring.NextReadings;
import coldround.scoring.ScoreHistory;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
import coldround.upkeep.ArrangementList;
import coldround.upkeep.Upkeep;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** One unit: what it is, how it stands, what is due, and why. */
@Path("/units/{id}")
@Produces(MediaType.TEXT_HTML)
public class UnitPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance unit(
        UnitView unit, UnitPictures drawn, FleetNames names, boolean si, String fleet, String here);
  }

  // a score changes on some days of a year
  private static final int MOST_DAYS = 500;

  private final Fleet fleet;
  private final Scoring scoring;
  private final NextReadings next;
  private final Upkeep upkeep;
  private final ArrangementList arrangements;
  private final ScoringRules rules;
  private final ScoreHistory told;
  private final Today today;

  @Inject
  UnitPage(
      Fleet fleet,
      Scoring scoring,
      NextReadings next,
      Upkeep upkeep,
      ArrangementList arrangements,
      ScoringRules rules,
      ScoreHistory told,
      Today today) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.next = next;
    this.upkeep = upkeep;
    this.arrangements = arrangements;
    this.rules = rules;
    this.told = told;
    this.today = today;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @Kept
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE, Role.CUSTOMER_CODE})
  @Operation(hidden = true)
  public TemplateInstance unit(
      @PathParam("id") String id, @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    UnitHistory history = fleet.history(id).orElseThrow(() -> Problem.notFound("unit " + id));
    LocalDate asOf = today.at(history.site());
    Assessment assessment = scoring.assess(history, asOf);
    UnitView view = UnitView.of(report(history, assessment), system);
    UnitPictures drawn =
        UnitPictures.of(assessment, rules.limits().value(LimitName.EXCESS_LIMIT), system);
    boolean si = system == MeasureSystem.SI;
    String all = si ? "/?measures=si" : "/";
    return Templates.unit(view, drawn, new FleetNames(fleet), si, all, "/units/" + view.id());
  }

  /** Worked out for the days of the visits, and as it was told on the days since. */
  private List<ScoreCurve.Day> scores(UnitHistory history, Assessment now) {
    List<ScoreHistory.Entry> kept = told.entries(history.unit().id(), null, MOST_DAYS);
    LocalDate first = kept.isEmpty() ? now.asOf() : kept.get(kept.size() - 1).day();
    SortedMap<LocalDate, ScoreCurve.Day> days = new TreeMap<>();
    for (Visit visit : history.visits()) {
      if (visit.date().isBefore(first)) {
        double score = scoring.assess(history, visit.date()).condition().score();
        String what = "visit " + visit.number() + ", worked out afterwards";
        days.put(visit.date(), new ScoreCurve.Day(visit.date(), score, what));
      }
    }
    kept.forEach(
        entry -> days.put(entry.day(), new ScoreCurve.Day(entry.day(), entry.score(), "")));
    double score = now.condition().score();
    days.putIfAbsent(now.asOf(), new ScoreCurve.Day(now.asOf(), score, ""));
    return List.copyOf(days.values());
  }

  private UnitReport report(UnitHistory history, Assessment assessment) {
    return UnitReport.of(
        assessment,
        upkeep.plan(assessment, assessment.asOf(), arrangements.of(List.of(history.unit().id()))),
        next.of(history, assessment),
        scores(history, assessment),
        rules.limits().value(LimitName.EXCESS_LIMIT));
  }
}

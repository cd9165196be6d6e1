package coldround.pages.edge;

import coldround.fleet.Fleet;
import coldround.fleet.Today;
import coldround.fleet.UnitHistory;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.UnitPictures;
import coldround.pages.UnitReport;
import coldround.pages.UnitView;
import coldround.quantity.MeasureSystem;
import coldround.scoring.Assessment;
import coldround.scoring.LimitName;
import coldround.scoring.NextReadings;
import coldround.scoring.Scoring;
import coldround.scoring.ScoringRules;
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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** One unit: what it is, how it stands, what is due, and why. */
@Path("/units/{id}")
@Produces(MediaType.TEXT_HTML)
public class UnitPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance unit(
        UnitView unit, UnitPictures drawn, boolean si, String fleet, String here);
  }

  private final Fleet fleet;
  private final Scoring scoring;
  private final NextReadings next;
  private final Upkeep upkeep;
  private final ScoringRules rules;
  private final Today today;

  @Inject
  UnitPage(
      Fleet fleet,
      Scoring scoring,
      NextReadings next,
      Upkeep upkeep,
      ScoringRules rules,
      Today today) {
    this.fleet = fleet;
    this.scoring = scoring;
    this.next = next;
    this.upkeep = upkeep;
    this.rules = rules;
    this.today = today;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
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
    return Templates.unit(view, drawn, si, si ? "/?measures=si" : "/", "/units/" + view.id());
  }

  private UnitReport report(UnitHistory history, Assessment assessment) {
    return UnitReport.of(
        assessment,
        upkeep.tasks(assessment, assessment.asOf()),
        next.of(history, assessment),
        rules.limits().value(LimitName.EXCESS_LIMIT));
  }
}

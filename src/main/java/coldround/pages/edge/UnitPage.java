package coldround.pages.edge;

import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.UnitReport;
import coldround.pages.UnitReports;
import coldround.pages.UnitView;
import coldround.quantity.MeasureSystem;
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
import java.time.Clock;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** One unit: what it is, how it stands, what is due, and why. */
@Path("/units/{id}")
@Produces(MediaType.TEXT_HTML)
public class UnitPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance unit(UnitView unit, boolean si, String fleet, String here);
  }

  private final UnitReports reports;
  private final Clock clock;

  @Inject
  UnitPage(UnitReports reports, Clock clock) {
    this.reports = reports;
    this.clock = clock;
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
    UnitReport report =
        reports.report(id, clock.instant()).orElseThrow(() -> Problem.notFound("unit " + id));
    boolean si = system == MeasureSystem.SI;
    String here = "/units/" + report.history().unit().id();
    return Templates.unit(UnitView.of(report, system), si, si ? "/?measures=si" : "/", here);
  }
}

package coldround.pages.edge;

import coldround.access.Role;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.Paper;
import coldround.pages.ReaderNumbers;
import coldround.pages.RouteSheet;
import coldround.quantity.MeasureSystem;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Route sheets to print: one a technician and day, each on paper of its own. */
@Path("/rounds/{id}/sheet")
@Produces(MediaType.TEXT_HTML)
public class SheetPage {

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance sheet(
        String id, String query, Paper paper, List<RouteSheet> sheets);
  }

  private final RouteSheets sheets;

  @Inject
  SheetPage(RouteSheets sheets) {
    this.sheets = sheets;
  }

  @ServerExceptionMapper
  Response refused(Problem problem) {
    return RefusedPage.of(problem);
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(hidden = true)
  public TemplateInstance sheet(
      @PathParam("id") String id,
      @QueryParam("technician") String technician,
      @QueryParam("day") String day,
      @QueryParam("measures") String measures,
      @Context HttpHeaders headers,
      @Context UriInfo uri) {
    MeasureSystem system = Parameters.measures(measures);
    String query = uri.getRequestUri().getRawQuery();
    return Templates.sheet(
        id,
        query == null ? "" : "?" + query,
        Paper.of(ReaderNumbers.language(headers.getAcceptableLanguages())),
        sheets.of(id, technician, Parameters.date("day", day, null), system));
  }
}

package coldround.pages.edge;

import coldround.access.Role;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.Paper;
import coldround.pages.ReaderNumbers;
import coldround.pages.RouteSheet;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The same route sheets as a file for a printer or a phone without a network. */
@Path("/api/v1/rounds/{id}/sheet.pdf")
@Tag(name = "Rounds")
public class SheetPaper {

  private static final MediaType PDF = MediaType.valueOf("application/pdf");

  @CheckedTemplate
  static class Templates {
    static native TemplateInstance paper(List<RouteSheet> sheets);
  }

  private final RouteSheets sheets;

  @Inject
  SheetPaper(RouteSheets sheets) {
    this.sheets = sheets;
  }

  @GET
  @RolesAllowed({Role.PLANNER_CODE, Role.TECHNICIAN_CODE})
  @Operation(
      operationId = "printRouteSheets",
      summary = "Route sheets as PDF, one a technician and day, each on paper of its own",
      description =
          "Numbers are written as the language of Accept-Language writes them, and the paper is"
              + " that of its country: Letter where that is usual and where nothing is said, else"
              + " A4.")
  @APIResponse(
      responseCode = "200",
      description = "The sheets",
      content = @Content(mediaType = "application/pdf"))
  @APIResponse(
      responseCode = "400",
      description = "bad-request: the day is no date, or the measures are unknown",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "404",
      description = "not-found: no such plan, or no round of this technician and day in it",
      content = @Content(mediaType = "application/problem+json"))
  @APIResponse(
      responseCode = "409",
      description = "conflict: nothing is planned yet",
      content = @Content(mediaType = "application/problem+json"))
  public Response print(
      @Parameter(description = "of the plan") @PathParam("id") String id,
      @Parameter(description = "code; left out for all", example = "T1") @QueryParam("technician")
          String technician,
      @Parameter(description = "left out for all", example = "2026-05-04") @QueryParam("day")
          String day,
      @Parameter(description = "us or si") @QueryParam("measures") String measures,
      @Context HttpHeaders headers) {
    LocalDate only = Parameters.date("day", day, null);
    List<RouteSheet> made = sheets.of(id, technician, only, Parameters.measures(measures));
    if (made.isEmpty()) {
      throw Problem.notFound("round of this technician and day in the plan " + id);
    }
    Locale reader = ReaderNumbers.language(headers.getAcceptableLanguages());
    String sheet = Paper.of(reader).document(Templates.paper(made).render());
    return Response.ok(pdf(ReaderNumbers.of(reader).page(sheet)), PDF)
        .header(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE)
        .header("Content-Disposition", "attachment; filename=\"route-sheets-" + id + ".pdf\"")
        .build();
  }

  private static byte[] pdf(String html) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    // nothing is fetched: all that a sheet shows is in it
    builder.useUriResolver((base, uri) -> null);
    builder.withHtmlContent(html, null);
    builder.toStream(bytes);
    try {
      builder.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}

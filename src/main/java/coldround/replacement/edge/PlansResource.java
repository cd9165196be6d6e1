package coldround.replacement.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Dear;
import coldround.http.JsonBody;
import coldround.http.Parameters;
import coldround.http.Problem;
import coldround.pages.Paper;
import coldround.pages.ReaderNumbers;
import coldround.quantity.MeasureSystem;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The budget with a customer: which unit is replaced in which year, and why. */
@Path("/api/v1/replacement-plans")
@Tag(name = "Replacement")
public class PlansResource {

  private static final MediaType CSV = MediaType.valueOf("text/csv; charset=UTF-8");
  private static final MediaType PDF = MediaType.valueOf("application/pdf");
  private static final MediaType HTML = MediaType.valueOf("text/html; charset=UTF-8");

  private final PlanMaking making;
  private final PlanKeeping keeping;
  private final StoredPlans plans;
  private final Answers answers;
  private final JsonBody json;

  @Inject
  PlansResource(
      PlanMaking making, PlanKeeping keeping, StoredPlans plans, Answers answers, JsonBody json) {
    this.json = json;
    this.making = making;
    this.keeping = keeping;
    this.plans = plans;
    this.answers = answers;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @Dear
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "makeReplacementPlan",
      summary = "Make a replacement plan for customers under yearly limits; it is kept as made")
  @RequestBody(
      required = true,
      description = "Only customers must be said; what is left out is taken from the rule tables",
      content = @Content(schema = @Schema(implementation = PlanRequest.class)))
  @APIResponse(
      responseCode = "201",
      description = "The plan; Location says where it is kept",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = PlanView.class)))
  @APIResponse(
      responseCode = "400",
      description = "A field is wrong; errors[] names each: bad-request")
  @APIResponse(
      responseCode = "422",
      description =
          "No plan keeps to all that was asked, errors[] says which demands conflict; or a unit has"
              + " no price (no-replacement-cost), or there is no unit (nothing-to-plan): no-plan")
  public Response make(InputStream sent, @QueryParam("measures") String measures) {
    MeasureSystem system = Parameters.measures(measures);
    PlanRequest asked = json.read(JsonBody.bytes(sent), PlanRequest.class);
    PlanKeeping.Kept kept = keeping.keep(making.make(asked), asked.customers(), system);
    return Response.created(URI.create("/api/v1/replacement-plans/" + kept.id()))
        .type(MediaType.APPLICATION_JSON)
        .entity(kept.answer())
        .build();
  }

  @GET
  @Path("{id:[^.]+}")
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(operationId = "readReplacementPlan", summary = "A plan as it was made")
  @APIResponse(
      responseCode = "200",
      description = "The plan",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = PlanView.class)))
  public Response plan(@PathParam("id") String id, @Context Request request) {
    return answers.read(found(id).answer(), MediaType.APPLICATION_JSON_TYPE, request).build();
  }

  @GET
  @Path("{id:[^.]+}.csv")
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(operationId = "readReplacementPlanCsv", summary = "Its units as CSV")
  @APIResponse(
      responseCode = "200",
      description = "A row a unit",
      content = @Content(mediaType = "text/csv", schema = @Schema(type = SchemaType.STRING)))
  public Response sheet(@PathParam("id") String id, @Context Request request) {
    return named(answers.read(found(id).sheet(), CSV, request), id + ".csv");
  }

  @GET
  @Path("{id:[^.]+}.html")
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "readReplacementPlanHtml",
      summary = "The report for the customer",
      description =
          "Numbers are written as the language of Accept-Language writes them, and the paper is"
              + " that of its country: Letter where that is usual and where nothing is said, else"
              + " A4.")
  @APIResponse(
      responseCode = "200",
      description = "The report",
      content = @Content(mediaType = "text/html", schema = @Schema(type = SchemaType.STRING)))
  public Response report(
      @PathParam("id") String id, @Context Request request, @Context HttpHeaders headers) {
    byte[] report = report(id, headers).getBytes(StandardCharsets.UTF_8);
    return answers
        .read(report, HTML, request)
        .header(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE)
        .build();
  }

  /** With its numbers as the reader's language writes them, on the paper of its country. */
  private String report(String id, HttpHeaders headers) {
    String report = new String(found(id).report(), StandardCharsets.UTF_8);
    Locale reader = ReaderNumbers.language(headers.getAcceptableLanguages());
    return ReaderNumbers.of(reader).page(Paper.of(reader).document(report));
  }

  @GET
  @Path("{id:[^.]+}.pdf")
  @Dear
  @RolesAllowed({Role.PLANNER_CODE, Role.CUSTOMER_CODE})
  @Operation(
      operationId = "readReplacementPlanPdf",
      summary = "The report for the customer, PDF",
      description =
          "Numbers are written as the language of Accept-Language writes them, and the paper is"
              + " that of its country: Letter where that is usual and where nothing is said, else"
              + " A4.")
  @APIResponse(
      responseCode = "200",
      description = "The report",
      content =
          @Content(
              mediaType = "application/pdf",
              schema = @Schema(type = SchemaType.STRING, format = "binary")))
  public Response print(@PathParam("id") String id, @Context HttpHeaders headers) {
    Response.ResponseBuilder answer = Response.ok(pdf(report(id, headers)), PDF);
    return named(answer.header(HttpHeaders.VARY, HttpHeaders.ACCEPT_LANGUAGE), id + ".pdf");
  }

  private static Response named(Response.ResponseBuilder answer, String file) {
    return answer
        .header("Content-Disposition", "attachment; filename=\"replacement-plan-" + file + "\"")
        .build();
  }

  private StoredPlans.Stored found(String id) {
    return plans.find(id).orElseThrow(() -> Problem.notFound("replacement plan " + id));
  }

  private static byte[] pdf(String html) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useSVGDrawer(new BatikSVGDrawer());
    // nothing is fetched: all that the report shows is in it
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
